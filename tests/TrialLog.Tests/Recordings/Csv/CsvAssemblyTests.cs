using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Recordings.Csv;

public class CsvAssemblyTests
{
    private static readonly string[] Season =
    [
        "Ilse Maro,2026-05-01,,,OC1,Long,49.25,1000,5:32,6,2,first",
        "Ilse Maro,2026-05-01,,,OC1,Long,50.75,1000,5:35,6,2,",
        "Ilse Maro,2026-05-08,,,OC1,Long,50.75,1000,5:33,6,3,",
        "Ilse Maro,2026-05-08,,,OC1,Long,49.25,1000,5:31,6,3,",
    ];

    [Fact]
    public void A_first_file_brings_its_paddler_and_paddle_with_it_and_says_what_it_assumed()
    {
        CsvAdditions additions = Files.Import(Files.Rows(Season), KnownLog.Fresh);
        Paddle paddle = Assert.Single(additions.Paddles);
        Assert.Equal(("Ilse Maro", 0), (Assert.Single(additions.Paddlers).Name, additions.Hulls.Count));
        Assert.Equal((Length.FromInches(47), Length.FromInches(53)), (paddle.Shortest, paddle.Longest));
        Assert.Equal("4 pieces in 2 outings added.", additions.Says());
        Assert.Equal([[1, 2], [1, 2]], additions.NewOutings.Select(outing => outing.Pieces.Select(piece => piece.Order).ToArray()));
        Assert.Contains(
            additions.Warnings, warning =>
            warning.StartsWith("New paddle “Long”: 47 in to 53 in in steps of ¼ in, blade 18½ in (what the file does not say is assumed",
            StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_piece_with_another_paddle_is_no_duplicate()
    {
        string[] row = ["Ilse Maro,2026-05-01,,1,OC1,Long,49.25,1000,5:32,6,2,", "Ilse Maro,2026-05-02,,1,OC1,Short,49.25,1000,5:31,6,2,"];
        KnownLog log = KnownLog.Fresh.Plus(Files.Import(Files.Rows(row), KnownLog.Fresh));
        CsvAdditions again = Files.Import(Files.Rows(row), log);
        Assert.Equal((2, 0), (again.PiecesAlreadyThere, again.RefusedRows));
        CsvAdditions other = Files.Import(Files.Rows("Ilse Maro,2026-05-01,,1,OC1,Short,49.25,1000,5:32,6,2,"), log);
        Assert.Equal(0, other.PiecesAlreadyThere);
        Assert.Contains("piece 1 in that outing with other values", Assert.Single(other.Problems).Reason);
    }

    [Theory]
    [InlineData("Ilse Mro", "OC1", "Long", "paddler")]
    [InlineData("Ilse Maro", "oc-1", "Long", "hull")]
    [InlineData("Ilse Maro", "OC1", "Lonng", "paddle")]
    public void A_slip_in_a_known_name_is_refused_and_starts_nothing_new(string paddler, string hull, string paddle, string column)
    {
        KnownLog log = KnownLog.Fresh.Plus(Files.Import(Files.Rows(Season), KnownLog.Fresh));
        CsvAdditions additions = Files.Import(
            Files.Rows([.. Season, $"{paddler},2026-05-15,,,{hull},{paddle},50,1000,5:30,6,3,"]), log, skipBad: true);
        CsvProblem problem = Assert.Single(additions.Problems);
        Assert.Equal((6, column), (problem.Line, problem.Column));
        Assert.True(additions.AddsNothing);
    }

    [Fact]
    public void Two_names_much_alike_are_two_once_the_logbook_has_both_or_the_file_describes_them()
    {
        string[] two = [.. Season, "Ilsa Maro,2026-05-01,,,OC1,Long,49.25,1000,5:40,6,2,"];
        KnownLog log = KnownLog.Fresh.Plus(Files.Import(Files.Rows(two), KnownLog.Fresh));
        Assert.Equal(2, log.Paddlers.Count);
        Assert.Equal("1 piece in 1 outing added; 5 pieces were there already.",
            Files.Import(Files.Rows([.. two, "Ilsa Maro,2026-05-08,,,OC1,Long,49.25,1000,5:40,6,2,"]), log).Says());
        KnownLog onlyIlse = log
            with
        { Paddlers = [log.Paddlers[0]], Outings = [.. log.Outings.Where(outing => outing.PaddlerId == log.Paddlers[0].Id)] };
        Assert.Equal("Ilsa Maro", Assert.Single(Files.Import(Files.Export(log), onlyIlse).Paddlers).Name);
    }

    [Fact]
    public void A_file_that_has_grown_adds_only_what_is_new()
    {
        KnownLog log = KnownLog.Fresh.Plus(Files.Import(Files.Rows(Season), KnownLog.Fresh));
        CsvAdditions again = Files.Import(Files.Rows([.. Season,
            "ILSE MARO,2026-05-08,,,oc1,long,50,1000,5:30,6,3,appended", "Ilse Maro,2026-05-15,,,OC1,Long,50,1000,5:30,6,3,"]), log);
        Assert.Equal("2 pieces in 2 outings added; 4 pieces were there already.", again.Says());
        Assert.Equal([1, 2, 3], Assert.Single(again.GrownOutings).Pieces.Select(piece => piece.Order));
        Assert.Empty(again.Paddlers.Concat<object>(again.Paddles));
    }

    [Fact]
    public void A_row_is_known_again_after_its_piece_was_edited_in_the_logbook()
    {
        KnownLog log = KnownLog.Fresh.Plus(Files.Import(Files.Rows(Season), KnownLog.Fresh));
        KnownLog edited = log with
        {
            Outings = [.. log.Outings.Select(outing => outing with
            {
                Date = outing.Date.AddDays(1), Label = "moved",
                    Pieces = [.. outing.Pieces.Select(piece => piece with { Time = PieceTime.Parse("6:00"), Order = piece.Order + 5 })],
            })],
        };
        Assert.True(Files.Import(Files.Rows(Season), edited).AddsNothing);
    }

    [Fact]
    public void An_export_edited_outside_is_not_taken_back_silently()
    {
        KnownLog log = KnownLog.Fresh.Plus(Files.Import(Files.Rows(Season), KnownLog.Fresh));
        CsvAdditions additions = Files.Import(Files.Export(log).Replace("5:35", "5:34"), log);
        Assert.True(additions.AddsNothing);
        Assert.Contains("it was not changed", Assert.Single(additions.Warnings));
    }

    [Fact]
    public void The_same_row_twice_is_refused_unless_the_pieces_are_numbered()
    {
        CsvProblem problem = Assert.Single(Files.Import(Files.Rows([.. Season, Season[1]]), KnownLog.Fresh).Problems);
        Assert.Equal(6, problem.Line);
        Assert.Contains("the same as line 3", problem.Reason);
        string numbered = Files.Rows(Season[1].Replace(",,,OC1", ",,1,OC1"), Season[1].Replace(",,,OC1", ",,2,OC1"));
        Assert.Equal(2, Files.Import(numbered, KnownLog.Fresh).PiecesAdded);
    }

    [Fact]
    public void A_piece_number_twice_in_an_outing_is_refused_in_the_file_and_against_the_logbook()
    {
        string first = Season[0].Replace(",,,OC1", ",,1,OC1"), other = Season[1].Replace(",,,OC1", ",,1,OC1");
        CsvProblem problem = Assert.Single(Files.Import(Files.Rows(first, other), KnownLog.Fresh).Problems);
        Assert.Equal((3, "piece"), (problem.Line, problem.Column));
        Assert.Contains("on line 2 already", problem.Reason);

        KnownLog log = KnownLog.Fresh.Plus(Files.Import(Files.Rows(first), KnownLog.Fresh));
        Assert.Contains("The logbook has a piece 1", Assert.Single(Files.Import(Files.Rows(other), log).Problems).Reason);
    }

    [Fact]
    public void Pieces_without_a_number_take_the_numbers_that_are_free()
    {
        string file = Files.Rows(Season[0], Season[1].Replace(",,,OC1", ",,1,OC1"), Season[0].Replace("5:32", "5:40"),
            Season[0].Replace("5:32", "5:50"));
        Outing outing = Assert.Single(Files.Import(file, KnownLog.Fresh).NewOutings);
        Assert.Equal([("5:35", 1), ("5:32", 2), ("5:40", 3), ("5:50", 4)],
            outing.Pieces.Select(piece => (piece.Time.ToString(), piece.Order)));
    }

    [Fact]
    public void One_wrong_row_adds_nothing_and_skipping_it_adds_the_rest()
    {
        string file = Files.Rows([.. Season, Season[3].Replace("5:31", "0:31")]);
        CsvAdditions strict = Files.Import(file, KnownLog.Fresh), skipping = Files.Import(file, KnownLog.Fresh, skipBad: true);
        Assert.True(strict.AddsNothing);
        Assert.Equal((1, 6), (strict.RefusedRows, Assert.Single(strict.Problems).Line));
        Assert.Equal("4 pieces in 2 outings added; 1 row left out.", skipping.Says());
        Assert.Equal(strict.Problems, skipping.Problems);
    }

    [Fact]
    public void Nothing_is_added_for_the_sake_of_a_row_that_was_left_out()
    {
        KnownLog log = KnownLog.Fresh.Plus(Files.Import(Files.Rows(Season), KnownLog.Fresh));
        CsvAdditions additions = Files.Import(Files.Rows("Stray,2026-05-20,,,OC1,Long,60,1000,5:30,6,3,"), log, skipBad: true);
        Assert.True(additions.AddsNothing);
        Assert.Contains("outside the range of paddle “Long”, 47 in to 53 in", Assert.Single(additions.Problems).Reason);
    }

    [Fact]
    public void A_range_that_the_file_states_holds_for_its_rows()
    {
        string file =
            "date,hull,paddle,length_in,distance_m,time,paddle_shortest_in,paddle_longest_in\n2026-05-01,OC1,Long,52,1000,5:32,48,51.5\n";
        Assert.Contains("48 in to 51½ in", Assert.Single(Files.Import(file, KnownLog.Fresh).Problems).Reason);
    }

    [Fact]
    public void An_outing_has_one_hull()
    {
        CsvProblem problem = Assert.Single(Files.Import(Files.Rows(
            "Ilse Maro,2026-05-01,race,,OC1,Long,50,1000,5:32,6,2,", "Ilse Maro,2026-05-01,race,,OC6,Long,50,1000,4:32,6,2,"),
                KnownLog.Fresh).Problems);
        Assert.Equal((3, "hull"), (problem.Line, problem.Column));
        Assert.Equal(2, Files.Import(Files.Rows(
            "Ilse Maro,2026-05-01,,,OC1,Long,50,1000,5:32,6,2,", "Ilse Maro,2026-05-01,,,OC6,Long,50,1000,4:32,6,2,"),
                KnownLog.Fresh).NewOutings.Count);
    }

    [Fact]
    public void Conditions_that_differ_within_an_outing_are_kept_in_the_notes_of_the_piece()
    {
        CsvAdditions additions = Files.Import(Files.Rows(Season[0], Season[1].Replace(",6,2,", ",6,4,")), KnownLog.Fresh);
        Outing outing = Assert.Single(additions.NewOutings);
        Assert.Equal((Beaufort.FromNumber(2), "wind: 4"), (outing.Wind, outing.Pieces[1].Notes));
        Assert.Contains(additions.Warnings, warning => warning.Contains("Line 3: wind: 4 differs", StringComparison.Ordinal));
    }

    [Fact]
    public void What_a_row_does_not_say_is_taken_from_the_logbook_where_only_one_thing_can_be_meant()
    {
        const string file = "date,hull,length_in,distance_m,time\n2026-05-20,OC1,50,1000,5:32\n";
        CsvAdditions first = Files.Import(file, KnownLog.Fresh);
        Assert.Equal((CsvAssembly.UnnamedPaddler, CsvAssembly.UnnamedPaddle),
            (Assert.Single(first.Paddlers).Name, Assert.Single(first.Paddles).Name));

        KnownLog one = KnownLog.Fresh.Plus(Files.Import(Files.Rows(Season), KnownLog.Fresh));
        Assert.Equal(one.Paddlers[0].Id, Assert.Single(Files.Import(file, one).NewOutings).PaddlerId);

        KnownLog two = one.Plus(Files.Import(Files.Rows(Season[0].Replace("Ilse Maro", "Bram Okello")), one));
        Assert.Equal("paddler", Assert.Single(Files.Import(file, two).Problems).Column);
        CsvAdditions told = CsvAssembly.Assemble(Files.Read(file), two, Files.Options with { Paddler = "bram okello" });
        Assert.Equal(two.Paddlers[1].Id, Assert.Single(told.NewOutings).PaddlerId);

        KnownLog twoPaddles = one.Plus(Files.Import(Files.Rows(Season[0].Replace("Long", "Short").Replace("05-01", "05-03")), one));
        Assert.Equal("paddle", Assert.Single(Files.Import(file, twoPaddles).Problems).Column);
    }

    [Fact]
    public void Measures_fill_gaps_but_change_nothing_that_is_known()
    {
        KnownLog log = KnownLog.Fresh.Plus(Files.Import(Files.Rows(Season), KnownLog.Fresh));
        const string header = "paddler,date,hull,paddle,length_in,distance_m,time,seated_reach_in,seat_height_in,blade_length_in\n";
        CsvAdditions additions = Files.Import(header + "Ilse Maro,2026-05-20,OC1,Long,50,1000,5:32,50.5,9,19\n", log);
        Assert.Equal(Length.FromInches(50.5), Assert.Single(additions.Paddlers).Body.SeatedReach);
        Assert.Equal((StandardHulls.All[0].Id, Length.FromInches(9)), (additions.Hulls[0].Id, additions.Hulls[0].SeatHeight));
        Assert.Empty(additions.Paddles);
        Assert.Contains(
            additions.Warnings, warning =>
            warning.Contains("blade_length_in 19 of paddle “Long” is left aside; the logbook has 18.5", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("=cmd()")]
    [InlineData("'=cmd()")]
    [InlineData("+1")]
    [InlineData("-x")]
    [InlineData("@sum(a1)")]
    [InlineData("''@")]
    public void No_exported_cell_of_text_starts_a_formula(string name)
    {
        KnownLog log = KnownLog.Fresh.Plus(
            Files.Import(Files.Rows(Season[0].Replace("Ilse Maro", "'" + name).Replace("first", "'" + name)), KnownLog.Fresh));
        Assert.Equal((name, name), (log.Paddlers[0].Name, log.Outings[0].Pieces[0].Notes));
        Assert.DoesNotContain(Files.Export(log).Split('\n', ','), cell => cell.Length > 0 && "=+-@".Contains(cell[0]));
    }
}
