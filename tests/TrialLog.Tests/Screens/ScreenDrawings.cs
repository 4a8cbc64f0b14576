using Terminal.Gui.Input;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Tests.Plots;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Checks;

namespace TrialLog.Tests.Screens;

/// <summary>Every screen as it was looked at and found good, at the smallest size and at a roomy one.</summary>
[Collection(nameof(ScreensTests))]
public sealed class ScreenDrawings : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-screens-").FullName;

    [Theory]
    [InlineData(1, "home", 80, 24)]
    [InlineData(1, "home", 140, 45)]
    [InlineData(2, "enter", 80, 24)]
    [InlineData(2, "enter", 140, 45)]
    [InlineData(3, "logbook", 80, 24)]
    [InlineData(3, "logbook", 140, 45)]
    [InlineData(4, "curve", 80, 24)]
    [InlineData(4, "curve", 140, 45)]
    [InlineData(5, "progress", 80, 24)]
    [InlineData(5, "progress", 140, 45)]
    [InlineData(6, "body", 80, 24)]
    [InlineData(6, "body", 140, 45)]
    [InlineData(7, "squad", 80, 24)]
    [InlineData(7, "squad", 140, 45)]
    public void A_screen_looks_as_it_did(int number, string name, int columns, int rows) =>
        Compare(number, name, columns, rows, "LANG=C.UTF-8");

    [Theory]
    [InlineData(1, "home-ascii")]
    [InlineData(3, "logbook-ascii")]
    [InlineData(4, "curve-ascii")]
    [InlineData(7, "squad-ascii")]
    public void Where_the_terminal_has_only_ASCII_a_screen_uses_nothing_else(int number, string name)
    {
        string shown = Compare(number, name, 80, 24, "LANG=C");
        Assert.All(shown, glyph => Assert.True(glyph is '\n' or (>= ' ' and <= '~'), $"“{glyph}” is not ASCII"));
    }

    /// <summary>The first screen by where the search stands: the verdict first and whole, the cautions on lines of their own.</summary>
    [Theory]
    [InlineData("testing", 80, 24)]
    [InlineData("settled", 80, 24)]
    [InlineData("flat", 80, 24)]
    [InlineData("cannot-tell", 80, 24)]
    [InlineData("sore", 80, 24)]
    [InlineData("nothing-yet", 80, 24)]
    [InlineData("settled", 140, 45)]
    [InlineData("testing", 200, 60)]
    public void Home_looks_as_it_did(string standing, int columns, int rows)
    {
        string path = Path.Combine(_folder, "logbook.db");
        SampleLog.Write(path);
        Analysis? answer = null;
        using var terminal = new AtTheTerminal(path, columns, rows, "LANG=C.UTF-8",
            SampleLog.Known with { Analyse = question => answer = As(standing, SampleLog.Known.Analyse(question)) });
        string text = string.Join(' ', terminal.Lines.Select(line => line.Trim()));
        Assert.Contains(Verdict.Headline(answer!), text);
        Assert.Contains(Cautions.Water, text);
        StoredDrawing.Matches("Screens", $"home-{standing}-{columns}x{rows}", terminal.Shown);
    }

    /// <summary>Neither a long name nor a card that a partner holds takes a row from the verdict or from a caution.</summary>
    [Theory]
    [InlineData("testing")]
    [InlineData("settled")]
    [InlineData("flat")]
    [InlineData("cannot-tell")]
    [InlineData("sore")]
    [InlineData("nothing-yet")]
    public void The_verdict_and_the_cautions_are_whole_with_a_long_name_and_a_blind_card(string standing)
    {
        string path = Path.Combine(_folder, "logbook.db");
        SampleLog.Write(path);
        using (LogbookFile logbook = LogbookFile.Open(path))
        {
            Analysis drawn = As(standing, DrawnSample.Of(LengthUnit.Inches));
            Paddler ilse = logbook.Paddlers().Single(paddler => paddler.Name == "Ilse Maro");
            logbook.Change("Named them at length", log =>
            {
                log.Put(ilse with { Name = "Ilse-Margarethe van der Oosterkamp-Lindqvist of Tarrow Sound" });
                log.Put(SampleLog.Reed with { Name = "Reed 44, the long adjustable one with the blue grip" });
                log.Put(new GivenCard
                {
                    Id = new Guid(0x77, 0, 0, new byte[8]), PaddlerId = ilse.Id, HullId = StandardHulls.All[0].Id,
                    PaddleId = SampleLog.Reed.Id, GivenAt = new DateTimeOffset(2026, 11, 25, 9, 0, 0, TimeSpan.Zero), Blind = true,
                    Card = drawn.Card, Best = drawn.Best.Length, LikelyLow = drawn.Best.LikelyLow, LikelyHigh = drawn.Best.LikelyHigh,
                    GainLeftPercent = 0.3, DiminishingReturns = false, Outings = drawn.Outings, Pieces = drawn.Pieces,
                    AsOfChange = 1,
                });
            });
        }

        foreach ((int columns, int rows) in new[] { (80, 24), (80, 20) })
        {
            Analysis? answer = null;
            using var terminal = new AtTheTerminal(path, columns, rows, "LANG=C.UTF-8",
                SampleLog.Known with { Analyse = question => answer = As(standing, SampleLog.Known.Analyse(question)) });
            string text = string.Join(' ', terminal.Lines.Skip(2).Select(line => line.Trim()));
            Assert.Contains(Verdict.Headline(answer!), text);
            Assert.Contains(Cautions.Water, text);
            Assert.All(Cautions.Own(answer!), caution => Assert.Contains(caution, text));
            // Whose log it is, in which hull and with which paddle, is told of each.
            Assert.Matches(" Ilse-Mar.*… · OC1 · Reed 44.* ", terminal.Lines[1]);
            // What the partner holds is not told, be it only in what is drawn of the card.
            if (standing is "testing" or "nothing-yet")
                terminal.Shows("  A ").ShowsNot("┠");
        }
    }

    [Fact]
    public void A_settled_answer_leads_to_its_order_sheet_without_another_screen_before()
    {
        string path = Path.Combine(_folder, "logbook.db");
        SampleLog.Write(path);
        using var terminal = new AtTheTerminal(
            path, analyses: SampleLog.Known with { Analyse = question => As("settled", SampleLog.Known.Analyse(question)) });
        terminal.Type("o").Shows("Order sheet (to");
    }

    /// <summary>A message of two lines, as in ASCII, takes its rows from the middle.</summary>
    [Theory]
    [InlineData("LANG=C.UTF-8")]
    [InlineData("TRIALLOG_ASCII=1")]
    public void A_long_message_covers_no_caution(string environment)
    {
        string path = Path.Combine(_folder, "logbook.db");
        SampleLog.Write(path);
        using var terminal = new AtTheTerminal(path, environment: environment,
            analyses: SampleLog.Known with { Analyse = question => As("settled", SampleLog.Known.Analyse(question)) });
        terminal.Shows("\n coach.\n").Type("r").Shows("\n coach.\n Noted:");
        terminal.Press(Key.F6).ShowsNot("Noted:").Shows("\n coach.\n");
    }

    [Fact]
    public void The_explanation_looks_as_it_did()
    {
        using AtTheTerminal terminal = Terminal(80, 24, "LANG=C.UTF-8");
        terminal.Press(Key.F1);
        StoredDrawing.Matches("Screens", "explanation-80x24", terminal.Shown);
    }

    internal static Analysis As(string standing, Analysis analysis) => standing switch
    {
        "settled" =>
            analysis
            with
            { Standing = Standing.Settled, Why = [], ProbabilityWorthwhileLeft = 0.03, OutingsToGo = new OutingsToGo(0, 0, 0) },
        "flat" =>
            analysis with
            {
                Standing = Standing.Flat,
                Flat = true,
                Why = [],
                ProbabilityWorthwhileLeft = 0.02,
                OutingsToGo = new OutingsToGo(0, 0, 0)
            },
        "cannot-tell" => analysis with
        {
            Standing = Standing.CannotTell,
            Why = [StandingReason.OneLengthAnOuting],
            Checks = [new HealthCheck("one-length-outings") { Count = 12, Of = 12 }],
        },
        "sore" =>
            SampleLog.Sore(analysis, new StandingSoreness(Soreness.FromPoints(5), new DateOnly(2026, 11, 20), new DateOnly(2026, 11, 22))),
        "nothing-yet" =>
            analysis with { Outings = 0, Pieces = 0, PiecesInHull = 0, CurrentIsUsual = false, Why = [StandingReason.NothingLogged] },
        _ => analysis,
    };

    private string Compare(int number, string name, int columns, int rows, string environment)
    {
        using AtTheTerminal terminal = Terminal(columns, rows, environment);
        terminal.Type(number.ToString());
        StoredDrawing.Matches("Screens", $"{name}-{columns}x{rows}", terminal.Shown);
        return terminal.Shown;
    }

    private AtTheTerminal Terminal(int columns, int rows, string environment)
    {
        string path = Path.Combine(_folder, "logbook.db");
        SampleLog.Write(path);
        return new AtTheTerminal(path, columns, rows, environment, SampleLog.Known);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
