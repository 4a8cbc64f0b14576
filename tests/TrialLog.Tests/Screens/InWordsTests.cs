using Terminal.Gui.Input;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Commands;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Screens;

/// <summary>What is drawn is also said; and what must not be seen is neither drawn nor said.</summary>
[Collection(nameof(ScreensTests))]
public sealed class InWordsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-screens-").FullName;

    private string Logbook => Path.Combine(_folder, "logbook.db");

    [Theory]
    [InlineData(1, "Best length: 49¾ in")]
    [InlineData(3, "6 outings with 24 pieces, from 7 November 2026 to 22 November 2026.")]
    [InlineData(4, "By the middle line nothing from 49 to 50½ in costs more than 0.3%.")]
    [InlineData(5, "A search ends below a chance of 2%")]
    [InlineData(6, "Start length")]
    [InlineData(7, "Tova Lind in OC1")]
    public void One_key_says_in_words_what_any_screen_shows(int screen, string said)
    {
        SampleLog.Write(Logbook);
        using var terminal = new AtTheTerminal(Logbook, 120, 45, analyses: SampleLog.Known);
        terminal.Type($"{screen}").Type("v").Shows("in words").Shows(said).Press(Key.Esc).ShowsNot("in words:");
    }

    [Fact]
    public void The_same_sentences_are_printed_without_screens()
    {
        SampleLog.Write(Logbook);
        using var program = new TestProgram();
        string printed = program.Must("--store", Logbook, "--plain", "--paddler", "Tova Lind");
        foreach (
            string part in new[] { "Tova Lind, OC1 with Reed 44", "The curve", "Progress", "The season",
            "1 outing with 4 pieces", "Squad" })
            Assert.Contains(part, printed);
        Assert.DoesNotContain(printed, glyph => glyph is >= '\u2800' and < '\u2900');
    }

    [Fact]
    public void The_season_and_one_outing_at_a_time_stand_behind_a_key()
    {
        SampleLog.Write(Logbook);
        using var terminal = new AtTheTerminal(Logbook, analyses: SampleLog.Known with { Analyse = WithPiecesOfTheLog });
        terminal.Type("5k").Shows("6 outings with 24 pieces").Shows("22 Nov");
        terminal.Type("4b").Shows("22 November 2026. 1:").Press(Key.CursorLeft).Shows("19 November 2026. 1:").Type("b").Shows("▘ pieces");
    }

    [Fact]
    public void A_blind_card_shows_letters_everywhere_and_saves_the_lengths_behind_them()
    {
        SampleLog.Write(Logbook);
        string partner = Path.Combine(_folder, "partner.txt");
        using var terminal = new AtTheTerminal(Logbook, 100, 30);
        terminal.Type("c").Type("blind").Press(Key.Enter).Shows("Into which file?");
        for (int letter = 0; letter < "partner.txt".Length; letter++)
            terminal.Press(Key.Backspace);
        terminal.Type(partner).Press(Key.Enter).Shows("your partner sets the paddle");
        GivenCard card = terminal.Workspace.Logbook.Cards().Single(given => given.Blind);
        Assert.Contains("For the partner alone", File.ReadAllText(partner));
        string[] lengths = [.. card.Card.Lengths.Distinct().Select(length => length.ToText()[..^3])];
        Assert.All(lengths, length => terminal.ShowsNot($" {length} in  "));
        terminal.Type("v").Shows("Your partner sets the lengths").Press(Key.Esc);
        terminal.Press(Key.Enter);
        foreach (Length _ in card.Card.Lengths)
            terminal.Type("5:34").Press(Key.Enter, Key.Enter);
        terminal.Shows("1 A").Press(Key.S.WithCtrl).Shows("Saved the outing");
        Outing saved = terminal.Workspace.Logbook.Outings().Single(outing => outing.Date == new DateOnly(2026, 11, 25));
        Assert.True(saved.Blind);
        Assert.Equal(card.Card.Lengths, saved.Pieces.OrderBy(piece => piece.Order).Select(piece => piece.Length));
    }

    [Fact]
    public void A_decision_noted_on_the_screen_is_listed_there_and_stands_beside_the_answer()
    {
        SampleLog.Write(Logbook);
        using var terminal = new AtTheTerminal(Logbook, 100, 40, analyses: SampleLog.Known);
        terminal.Type("6").Type("e").Type("decision").Press(Key.Enter).Press(Key.CursorRight, Key.S.WithCtrl).Shows("Noted.");
        terminal.Shows("Decisions").Shows("Ordered 49¾ in on 25 November 2026.");
        terminal.Type("1").Shows("Ordered 49¾ in on 25 November 2026.").Type("3").Type("u").Type("6").ShowsNot("Decisions");
    }

    [Fact]
    public void A_measure_that_is_emptied_is_forgotten()
    {
        SampleLog.Write(Logbook);
        using var terminal = new AtTheTerminal(Logbook, analyses: SampleLog.Known);
        terminal.Type("6").Type("m").Shows("Overhead reach, sitting").Shows("Arm span");
        terminal.Press(Key.End, Key.Backspace, Key.Backspace, Key.Backspace, Key.Backspace, Key.S.WithCtrl).Shows("Saved the measures");
        Assert.Null(terminal.Workspace.Logbook.Paddlers().Single(paddler => paddler.Name == "Ilse Maro").Body.SeatedReach);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_settled_paddle_offers_to_race_and_order_its_length_unless_it_is_fixed(bool isFixed)
    {
        SampleLog.Write(Logbook);
        if (isFixed)
        {
            using LogbookFile logbook = LogbookFile.Open(Logbook);
            Paddle reed = logbook.Paddles().Single();
            logbook.Change("Cut it", log => log.Put(reed with { Shortest = reed.Longest }));
        }

        using var terminal = new AtTheTerminal(Logbook, 140, 45, analyses: SampleLog.Known with
        {
            Analyse = question => SampleLog.Known.Analyse(question) with
            {
                Paddle = question.Paddle,
                Standing = TrialLog.Tuning.Assessments.Standing.Settled,
                Why = [],
            },
        });
        Assert.Equal(!isFixed, terminal.KeyLine.Contains("order sheet", StringComparison.Ordinal));
        Assert.Equal(!isFixed, terminal.KeyLine.Contains("race it", StringComparison.Ordinal));
    }

    private static TrialLog.Tuning.Assessments.Analysis WithPiecesOfTheLog(TrialLog.Tuning.AnalysisInput question)
    {
        TrialLog.Tuning.Assessments.Analysis known = SampleLog.Known.Analyse(question);
        return known with
        {
            Curve = known.Curve with
            {
                Pieces = [.. question.Outings.SelectMany(outing => outing.Pieces.Select(piece =>
                    new TrialLog.Tuning.Model.AdjustedPiece(piece.Id, outing.Id, piece.Length, -0.2, 1)))],
            },
        };
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
