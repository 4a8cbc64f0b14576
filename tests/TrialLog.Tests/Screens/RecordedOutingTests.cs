using Terminal.Gui.Input;
using TrialLog.Application.Next;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Formats.Fit;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Screens;

/// <summary>
/// Recorded outings at the keyboard beyond one plain file: several, the same as one in the log, led by the watch, damaged.
/// </summary>
[Collection(nameof(ScreensTests))]
public sealed class RecordedOutingTests : IDisposable
{
    private static readonly Guid Ilse = new(1, 0, 0, new byte[8]);

    private static readonly OutingPlan Plan = new()
    {
        Start = new DateTimeOffset(2026, 5, 9, 9, 0, 0, TimeSpan.FromHours(-10)), Speeds = [3, 3.05, 3.02, 3], Watch = WatchFaults.None,
    };

    private static readonly SimulatedOuting Morning = Simulator.Run(Plan, 5);

    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-recorded-").FullName;

    [Fact]
    public void Several_files_are_shown_each_with_its_picture_and_taken_up_one_after_the_other()
    {
        Write("one.fit", Fit());
        Write("two.fit", Fit(days: 1));
        Write("three.gpx", "<gpx><trk>"u8.ToArray());
        using AtTheTerminal terminal = Logbook();
        terminal.Type("i").Type(Path.Combine(_folder, "*.fit") + "; " + Path.Combine(_folder, "three.gpx")).Press(Key.Enter)
            .WaitFor("2 outings to look at").Shows("2026-05-09 09:00").Shows("2026-05-10 09:00").Shows("4 pieces").Shows("✗ ")
            .Shows("three.gpx");
        Assert.Equal(2, terminal.Lines.Count(line => line.Contains("m/s", StringComparison.Ordinal)));
        terminal.Type("/two").Shows("▸ 2 ").Press(Key.Esc, Key.CursorUp).Shows("▸ 1 ");
        terminal.Press(Key.CursorDown, Key.Enter).Shows("two.fit · 2026-05-10").Press(Key.F9).Shows("Saved the outing of 2026-05-10");

        // The other is still there, also after another screen; left out or left, it is gone.
        terminal.Press(new Key('4').WithAlt).Type("3").Type("i").Shows("one.fit").Press(Key.Esc).Type("i").Shows("Import which file?");
        Assert.Equal(7, Outings(terminal).Count);
    }

    [Fact]
    public void Of_two_outings_in_one_file_one_is_left_out_and_the_other_saved()
    {
        List<RecordedPoint> both = [.. Morning.Recorded, .. Morning.Recorded.Select(p => p with { Time = p.Time + 86400 })];
        using AtTheTerminal terminal = Logbook();
        Open(terminal, Write("both.fit", FitWriter.Activity(both, [], Morning.Offset)), "2 outings to look at");
        terminal.Type("x").Shows("1 outing to look at").Type("u").Shows("2 outings to look at").Type("x").Press(Key.Enter)
            .Shows("2026-05-10 09:00").Press(Key.F9)
            .Shows("Saved the outing of 2026-05-10");
        Assert.Equal(7, Outings(terminal).Count);
    }

    [Fact]
    public void A_recording_is_laid_over_the_outing_that_was_typed_by_hand()
    {
        using AtTheTerminal terminal = Logbook(typed: [333, 328, 331, 334]);
        Open(terminal, Write("one.fit", Fit()));
        terminal.Shows("The log has an outing of that time").Press(Key.F9).Shows("The log has an outing of that time").Type("e")
            .Type("lay").Press(Key.Enter)
            .Shows("Laid over the outing of 2026-05-09");
        Outing over = Assert.Single(Outings(terminal), outing => outing.Date == new DateOnly(2026, 5, 9));
        Assert.Equal([333, 328, 331, 334], over.Pieces.Select(piece => piece.Time.Seconds));
        Assert.All(over.Pieces, piece => Assert.Equal(TimedBy.Hand, piece.TimedBy));
        Assert.All(over.Pieces, piece => Assert.NotNull(piece.HeartRate));
        terminal.Type("u").Shows("Undone");
        Assert.All(
            Outings(terminal).Single(outing => outing.Date == new DateOnly(2026, 5, 9)).Pieces, piece => Assert.Null(piece.HeartRate));
    }

    [Fact]
    public void A_recording_is_not_laid_over_an_outing_whose_pieces_took_another_time()
    {
        using AtTheTerminal terminal = Logbook(typed: [333, 228, 331, 334]);
        Open(terminal, Write("one.fit", Fit()));
        terminal.Type("e").Type("lay").Press(Key.Enter).Shows("Piece 2 of the outing").Shows("3:48");
        Assert.All(
            Outings(terminal).Single(outing => outing.Date == new DateOnly(2026, 5, 9)).Pieces, piece => Assert.Null(piece.HeartRate));
    }

    [Fact]
    public void Each_piece_takes_its_own_effort_and_a_number_that_does_not_fit_is_asked_about()
    {
        using AtTheTerminal terminal = Logbook();
        Open(terminal, Write("one.fit", Fit()));
        terminal.Press(Key.Enter, Key.CursorDown).Type("6, 6.5, 7").Press(Key.S.WithCtrl)
            .Shows("3 efforts typed, but 4 pieces that count").Press(Key.F9)
            .Shows("3 efforts typed");
        terminal.Press(Key.Enter, Key.CursorDown, Key.End).Type(", 6").Press(Key.S.WithCtrl).ShowsNot("efforts typed").Press(Key.F9)
            .Shows("Saved the outing");
        Assert.Equal([6, 6.5, 7, 6], Outings(terminal).Single(outing => outing.Date == new DateOnly(2026, 5, 9)).Pieces
            .Select(piece => piece.Effort!.Value.Points));
    }

    [Fact]
    public void The_turn_is_offered_where_a_piece_is_cut_in_two_and_what_was_done_is_undone_step_by_step()
    {
        using AtTheTerminal terminal = Logbook();
        Open(terminal, Write("one.fit", Fit()));
        string whole = Here(terminal);
        terminal.Type("-").Shows("it turns or slows down there").Press(Key.Enter).Shows("The card has 4 pieces, the recording shows 5");
        Assert.Contains("out", Here(terminal));
        terminal.Press(Key.Enter).Press([.. Enumerable.Repeat(Key.Backspace, 40)]).Type("49,49,50,50,49").Press(Key.S.WithCtrl)
            .ShowsNot("recording shows 5").Type("e").Type("typed").Press(Key.Enter).Press([.. Enumerable.Repeat(Key.Backspace, 20)])
            .Type("7:30 9:00").Press(Key.Enter);
        terminal.Type("u").Type("u").Shows("The card has 4 pieces, the recording shows 5").Type("u");
        Assert.Equal(whole, Here(terminal));
        terminal.Type("u").Shows("There is nothing to undo.");
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_recording_of_the_cards_own_workout_is_saved_by_one_key_with_letters_until_then_where_the_card_is_blind(bool blind)
    {
        using AtTheTerminal terminal = Logbook(blind: blind);
        TrialCard card = terminal.Workspace.Logbook.Cards(Ilse).MaxBy(given => given.GivenAt)!.Card;
        SimulatedOuting outing = Simulator.Run(Plan with { Speeds = [3, 3.02, 3], Programmed = true }, 5);
        IReadOnlyList<(string, int)> steps =
        [
            .. WatchWorkout.Steps(card, LengthUnit.Inches, blind).Select(step => (step.Name, step.Kind switch
            {
                WorkoutStepKind.Piece => 0, WorkoutStepKind.Rest => 1, WorkoutStepKind.WarmUp => 2, _ => 3,
            })),
        ];
        // The second piece was skipped on the watch.
        WrittenLap[] laps = [.. outing.Laps!.Select(lap => lap.Step < 3 ? lap : lap with { Step = lap.Step + 2 })];
        Open(terminal, Write("led.fit", FitWriter.Activity(outing.Recorded, [], outing.Offset, laps: laps, steps: steps)));
        if (blind)
            terminal.Shows(" A").Shows(" B").ShowsNot("49¼ in").ShowsNot("50¾ in");
        terminal.Press(Key.F9).Shows("Saved the outing");
        Assert.Equal(new[] { card.Lengths[0], card.Lengths[2], card.Lengths[3] },
            Outings(terminal).Single(logged => logged.Date == new DateOnly(2026, 5, 9)).Pieces.Select(piece => piece.Length));
    }

    [Fact]
    public void What_is_whole_of_a_file_whose_end_is_missing_is_offered()
    {
        using AtTheTerminal terminal = Logbook();
        Open(terminal, Write("cut.fit", Fit()[..^2000]));
        terminal.Shows("The end of the file is missing").Press(Key.F9).Shows("The end of the file is missing");
        terminal.Type("y").ShowsNot("Take what is whole?").Press(Key.F9).Shows("Saved the outing");
    }

    [Fact]
    public void What_else_the_recording_knows_is_a_key_away_and_its_start_can_be_typed()
    {
        using AtTheTerminal terminal = Logbook();
        Open(terminal, Write("one.fit", Fit()));
        terminal.Type("v").Shows("one.fit in words").Shows("1.00").Shows("stopwatch does not").Shows("Current along the course")
            .Shows("Speed by quarters").Shows("strokes a minute").Shows("at equal speed").Press(Key.Esc).Shows("m/s")
            .Press(Key.F2).Shows("What do you want to do?").Type("split").Press(Key.Enter).Shows("it turns or slows down there")
                .Press(Key.Esc);
        terminal.Type("e").Type("began").Press(Key.Enter).Press([.. Enumerable.Repeat(Key.Backspace, 20)]).Type("2026-05-08 08:30")
            .Press(Key.Enter)
            .Shows("one.fit · 2026-05-08 08:30").Press(Key.F9).Shows("Saved the outing of 2026-05-08");
    }

    private static byte[] Fit(int days = 0) => FitWriter.Activity(
        [.. Morning.Recorded.Select(p => p with { Time = p.Time + 86400 * days })], [], Morning.Offset);

    private static IReadOnlyList<Outing> Outings(AtTheTerminal terminal) => terminal.Workspace.Logbook.Outings(Ilse);

    private static string Here(AtTheTerminal terminal) => terminal.Lines.Single(line => line.StartsWith(" ▸ ", StringComparison.Ordinal));

    private static void Open(AtTheTerminal terminal, string file, string shows = "distance") =>
        terminal.Type("i").Type(file).Press(Key.Enter).WaitFor(shows);

    private string Write(string name, byte[] contents)
    {
        string path = Path.Combine(_folder, name);
        File.WriteAllBytes(path, contents);
        return path;
    }

    private AtTheTerminal Logbook(bool blind = false, IReadOnlyList<double>? typed = null)
    {
        string path = Path.Combine(_folder, "logbook.db");
        SampleLog.Write(path);
        AtTheTerminal terminal = new AtTheTerminal(path, 100, 30, analyses: SampleLog.Known).Type("3");
        // The card was given before the day of the recordings, or its lengths would not be theirs.
        foreach (GivenCard card in terminal.Workspace.Logbook.Cards(Ilse))
            terminal.Workspace.Logbook.Note("Gave the card earlier", writer => writer.Put(
                card with { GivenAt = new DateTimeOffset(2026, 5, 1, 12, 0, 0, TimeSpan.Zero), Blind = blind }));
        if (typed is not null)
            terminal.Workspace.Logbook.Change("Typed the outing", writer => writer.Put(Outings(terminal)[0] with
            {
                Id = new Guid(99, 0, 0, new byte[8]),
                Date = new DateOnly(2026, 5, 9),
                Pieces = [.. Outings(terminal)[0].Pieces.Zip(typed, (piece, seconds) => piece with
                {
                    Id = Guid.NewGuid(), Time = PieceTime.FromSeconds(seconds),
                })],
            }));
        return terminal;
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
