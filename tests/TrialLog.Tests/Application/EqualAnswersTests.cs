using System.Text.Json;
using CsCheck;
using TrialLog.Application.Logging;
using TrialLog.Application.Reporting;
using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Screens.Base;
using TrialLog.Screens.Next;
using TrialLog.Screens.Paint;
using TrialLog.Screens.Squads;
using TrialLog.Tests.Commands;
using TrialLog.Tests.Tuning;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Application;

/// <summary>
/// One log, one answer: for the same hull and paddle every surface tells the same standing, best length, stop, likely range and verdict, as
/// far as it shows the thing.
/// </summary>
public class EqualAnswersTests
{
    private const int Solo = 0, Six = 2;

    private static readonly Gen<AnalysisInput> Logs = Gen.Select(
        Gen.Select(Gen.Int[1, 6], Gen.Int[0, 3], Gen.Int[0, 100_000]), Gen.Int[-6, 6], Gen.Double[0, 1.2], Gen.Double[0.1, 1.5],
            Gen.Int[0, 11],
        static (shape, best, curvature, noise, odd) =>
            Drawn(shape.Item1, shape.Item2, new Random(shape.Item3), 50 + best / 4.0, curvature, noise, odd));

    [Fact]
    public void Every_surface_gives_one_answer_to_one_log() => Logs.Sample(SaysOneThing, iter: 15);

    [Fact]
    public void Nothing_logged() => Is(Standing.Testing, StandingReason.NothingLogged, LogOf.Rows());

    [Fact]
    public void Settled() => Is(Standing.Settled, StandingReason.NothingWorthwhileLeft, LogOf.Rows(Mirrored(8, 0.8)));

    [Fact]
    public void Lengths_tangled_with_the_order() => Is(Standing.CannotTell, StandingReason.OrderTangled, LogOf.Rows(
        from outing in Enumerable.Range(0, 6)
        from one in Enumerable.Range(0, 4)
        select new Row(outing, 49 + one * 0.5, 2 * Math.Sin(outing) - one * 0.5 + 0.2 * Math.Sin(5 * outing + 2 * one))));

    [Fact]
    public void Six_seat_crews_only() =>
        Is(Standing.CannotTell, StandingReason.LargeCrewsOnly,
            In(Six, LogOf.Rows(Mirrored(3, 0.8).Select(row => row with { Hull = Six }))));

    [Fact]
    public void A_hull_never_paddled() => Is(Standing.Testing, StandingReason.NotPaddledHere, In(Six, LogOf.Rows(Mirrored(8, 0.8))));

    [Fact]
    public void One_length_an_outing() => Is(Standing.CannotTell, StandingReason.OneLengthAnOuting, LogOf.Rows(
        from outing in Enumerable.Range(0, 8)
        from one in (int[])[0, 1]
        select new Row(
            outing, 49 + outing % 5 * 0.5, Math.Sin(3 * outing))));

    [Fact]
    public void Pieces_too_short_for_a_long_race()
    {
        AnalysisInput input = LogOf.Rows(Mirrored(14, 0.8));
        var race = new GoalEvent { HullId = input.Hull.Id, Distance = Distance.FromMetres(42_000) };
        Is(Standing.CannotTell, StandingReason.PiecesTooShort, input with { Paddler = input.Paddler with { Goal = race } });
    }

    [Fact]
    public void Sore() => Is(Standing.Sore, StandingReason.StillSore, Hurting(LogOf.Rows(Mirrored(8, 0.8)), from: 50));

    [Fact]
    public void Sore_and_cleared_since()
    {
        AnalysisInput input = Hurting(LogOf.Rows(Mirrored(8, 0.8)), from: 50);
        var cleared = new SorenessClearance
        {
            Id = Guid.NewGuid(), PaddlerId = input.Paddler.Id, Date = new DateOnly(2026, 5, 30),
            By = "Tova Lind"
        };
        Is(Standing.Settled, StandingReason.NothingWorthwhileLeft, input with { SorenessClearances = [cleared] });
    }

    [Fact]
    public void A_fixed_paddle()
    {
        AnalysisInput few = Paddled(4), many = Paddled(14);
        Is(Standing.Testing, StandingReason.ChanceTooHigh, Fixed(few, 51));
        Is(Standing.Settled, StandingReason.NothingWorthwhileLeft,
            Fixed(With(many, many.Paddle with { Blade = many.Paddles[1].Blade }), 51));

        static AnalysisInput Paddled(int outings) => LogOf.Rows(Mirrored(outings, 0.8).Select(row => row with { Paddle = 1 }));
    }

    [Fact]
    public void A_paddle_that_ends_before_the_best_length()
    {
        AnalysisInput input = LogOf.Rows(Mirrored(8, 0.8).Select(row => row with { Paddle = 1 }));
        SaysOneThing(With(input, input.Paddle with { Longest = Length.FromInches(47.5) }));
    }

    private static void Is(Standing standing, StandingReason why, AnalysisInput input)
    {
        Analysis analysis = Tuner.Analyse(input with { Today = new DateOnly(2026, 6, 1) });
        Assert.True(standing == analysis.Standing && analysis.Why.Contains(why), $"{analysis.Standing}: {string.Join(' ', analysis.Why)}");
        SaysOneThing(input);
    }

    private static void SaysOneThing(AnalysisInput input)
    {
        using var program = new TestProgram();
        using (LogbookFile logbook = LogbookFile.Open(program.Store))
        {
            logbook.Change("Put a log", log =>
            {
                log.Put(input.Paddler);
                foreach (Paddle paddle in input.Paddles)
                    log.Put(paddle);
                foreach (Outing outing in input.Outings)
                    log.Put(outing);
                foreach (SorenessClearance clearance in input.SorenessClearances)
                    log.Put(clearance);
            });
        }

        string[] about = ["--hull", input.Hull.Name, "--paddle", input.Paddle.Name];
        var said = new Said(JsonDocument.Parse(program.Must(["next", .. about, "--json"])).RootElement, input.Paddler.Unit);
        Text(program.Must(["next", .. about]), said);
        Squad(JsonDocument.Parse(program.Must(["next", "--squad", .. about, "--json"])).RootElement.EnumerateArray().Single(), said);
        Carried(JsonDocument.Parse(program.Must(["transfer", .. about, "--json"])).RootElement.GetProperty("lengths").EnumerateArray()
            .Single(), said);
        Ordered(JsonDocument.Parse(program.Must(["order-sheet", .. about, "--json"])).RootElement.GetProperty("lines").EnumerateArray()
            .Single(), said);
        using LogbookFile read = LogbookFile.Open(program.Store);
        var workspace = new Workspace(read, program.Clock);
        Chosen chosen = workspace.Choose(null, input.Hull.Name, input.Paddle.Name);
        Analysis found = Analyses.OfTheTuning.Analyse(
            LogState.Load(workspace, new LogVersion(read), new KeptDrafts(workspace), chosen).Input!);
        Home(found, said);
        Rows(workspace, chosen, found, said);
        Report(PrepareReport.Of(workspace, chosen, withNotes: false, forThePaddler: true), said);
    }

    private static void Text(string text, Said said)
    {
        string line = Line(text);
        Assert.Contains(Line(said.Verdict), line);
        Assert.Contains(said.BestFigure, line);
        // A fixed paddle has a card only where another is there to test it against.
        bool anyway = line.Contains("If you want to test anyway", StringComparison.Ordinal);
        Assert.True(said.Fixed ? said.Stop || !anyway : said.Stop == anyway);
        Assert.Equal(said.Standing == "sore", line.Contains("When it no longer hurts", StringComparison.Ordinal));
    }

    private static void Squad(JsonElement row, Said said)
    {
        string[] same =
        [
            "standing", "why", "to_do", "diminishing_returns", "flat", "best", "verdict", "gain_left_pct", "outings_to_go",
                "fixed_paddle", "checks",
            "cautions",
        ];
        foreach (string name in same)
            Assert.True(JsonElement.DeepEquals(said.Root.GetProperty(name), row.GetProperty(name)),
                $"{name}: {said.Root.GetProperty(name)} / {row.GetProperty(name)}");
    }

    private static void Carried(JsonElement row, Said said)
    {
        Assert.Equal(said.Stop, row.GetProperty("diminishing_returns").GetBoolean());
        Assert.Equal((said.Low, said.High), (row.GetProperty("likely_low_in").GetDouble(), row.GetProperty("likely_high_in").GetDouble()));
        // What to have is what to paddle, unless it hurts or the paddle ends sooner.
        if (said.Standing == "sore")
            Assert.True(said.Best <= row.GetProperty("soreness_ceiling_in").GetDouble());
        else if (said.Fixed || row.GetProperty("in_range").GetBoolean())
            Assert.Equal(said.BestToHave, row.GetProperty("length_in").GetDouble());
        else
            Assert.Contains(said.Best, (double[])[row.GetProperty("shortest_in").GetDouble(), row.GetProperty("longest_in").GetDouble()]);
    }

    private static void Ordered(JsonElement line, Said said)
    {
        Assert.Equal(said.Stop, line.GetProperty("diminishing_returns").GetBoolean());
        Assert.Equal((said.Low, said.High),
            (line.GetProperty("likely_low_in").GetDouble(), line.GetProperty("likely_high_in").GetDouble()));
        if (said.Standing == "sore")
            Assert.Equal(JsonValueKind.Null, line.GetProperty("cut_to_in").ValueKind);
        else if (said.InRange)
            Assert.Equal(said.BestToHave, line.GetProperty("cut_to_in").GetDouble());
        string risk = line.GetProperty("risk").GetString()!;
        Assert.Equal(said.Stop, !risk.StartsWith("Better test first", StringComparison.Ordinal)
            && !risk.StartsWith("Do not order", StringComparison.Ordinal));
    }

    private static void Home(Analysis found, Said said)
    {
        HomeText home = HomeText.Of(found);
        Assert.Equal(
            said.Verdict,
            string.Join(' ', [home.Headline, .. home.Beside.Where(line => !line.StartsWith("Warning: ", StringComparison.Ordinal))]));
        Assert.Equal(said.BestFigure,
            string.Join(' ', home.Figures.Take(said.BestFigures).Select(static figure => $"{figure.Label} {figure.Value}")));
        Assert.Equal(
            said.Standing switch { "sore" => Tone.Caution, "cannot-tell" => Tone.Now, "testing" => Tone.Strong, _ => Tone.Best },
            home.Look);
        Assert.True(!home.ShowsCard || said.Standing == "testing");
        Assert.True(home.Large is null || home.Large == Say.Length(Length.FromInches(said.Best), said.Unit));
        Assert.Contains(said.Verdict, HomeText.Why(found));
    }

    private static void Rows(Workspace workspace, Chosen chosen, Analysis found, Said said)
    {
        SquadRow sheet = SquadReview.Look(workspace, chosen.Hull.Name, chosen.Paddle.Name).Rows.Single();
        SquadPaddler one = SquadState.Read(workspace).Paddlers.Single() with { Chosen = chosen };
        SquadRow screen = new SquadState([one]).Rows(_ => found, workspace.Today).Single();
        foreach (SquadRow row in (SquadRow[])[sheet, screen])
        {
            Assert.Equal(said.Standing == "sore", row.IsSore);
            string word = SquadWords.Standing(row), week = SquadWords.ThisWeek(row);
            if (row.IsSore)
            {
                Assert.StartsWith("sore", word);
                continue;
            }

            Assert.Equal(said.Fixed ? "fixed" : said.Standing.Replace('-', ' '), word);
            Assert.Equal(said.Stop || said.Fixed, row.IsFinished);
            Assert.Equal(said.Stop && !said.Fixed, week.StartsWith("race ", StringComparison.Ordinal));
            Assert.Equal((said.Low, said.High), (Rounded(row.Analysis!.Best.LikelyLow), Rounded(row.Analysis.Best.LikelyHigh)));
            string best = Say.Length(Length.FromInches(said.Best), said.Unit);
            string likely = Say.Range(Length.FromInches(said.Low), Length.FromInches(said.High), said.Unit);
            Assert.EndsWith(best, SquadWords.NowToBest(row));
            Assert.StartsWith(SquadWords.Likely(row).Replace("–", " to ", StringComparison.Ordinal), likely);
        }
    }

    private static void Report(ReportContents contents, Said said)
    {
        Document page = ReportDocument.Of(contents);
        Section answer = page.Sections[0];
        Assert.Equal(PlainText.Line(said.Verdict), answer.Blocks.OfType<Paragraph>().Single(paragraph => paragraph.Answers).Text);
        IEnumerable<Fact> best = answer.Blocks.OfType<Facts>().Single().Items.Take(said.BestFigures);
        Assert.Equal(said.BestFigure, string.Join(' ', best.Select(static fact => $"{fact.Label} {fact.Value}")));
        Assert.Contains(Line(said.Verdict), Line(PaddlerReport.ToMarkdown(contents).Replace("\\", "", StringComparison.Ordinal)));
        Assessment carried = contents.Carried.Single(
            one => one.Hull.Id == contents.Analysis.Hull.Id && one.Paddle.Id == contents.Analysis.Paddle.Id);
        Agrees(carried);
        Agrees(contents.Progress[^1].Then);

        void Agrees(Assessment one)
        {
            Assert.Equal(said.Standing.Replace("-", "", StringComparison.Ordinal), one.Standing.ToString().ToLowerInvariant());
            Assert.Equal(said.Stop, one.DiminishingReturns);
            Assert.Equal((said.Best, said.Low, said.High),
                (Rounded(one.Best.Length), Rounded(one.Best.LikelyLow), Rounded(one.Best.LikelyHigh)));
        }
    }

    /// <summary>What <c>next --json</c> says, to which everything else is held.</summary>
    private sealed record Said(JsonElement Root, LengthUnit Unit)
    {
        public string Standing => Root.GetProperty("standing").GetString()!;

        public string Verdict => Root.GetProperty("verdict").GetString()!;

        public bool Stop => Root.GetProperty("diminishing_returns").GetBoolean();

        public double Best => Root.GetProperty("best").GetProperty("length_in").GetDouble();

        public double Low => Root.GetProperty("best").GetProperty("likely_low_in").GetDouble();

        public double High => Root.GetProperty("best").GetProperty("likely_high_in").GetDouble();

        public bool Fixed => Root.GetProperty("fixed_paddle").ValueKind != JsonValueKind.Null;

        public double BestToHave => Fixed ? Root.GetProperty("fixed_paddle").GetProperty("best_in").GetDouble() : Best;

        /// <summary>Whether the paddle reaches the best length, as far as the verdict says.</summary>
        public bool InRange => !Verdict.Contains("is the longest", StringComparison.Ordinal)
            && !Verdict.Contains("is the shortest", StringComparison.Ordinal);

        public string BestFigure => Standing == "sore" ? $"Length for now {Say.Length(Length.FromInches(Best), Unit)}"
            : (Fixed ? $"This paddle {Say.Length(Length.FromInches(Best), Unit)}, fixed " : "")
                + $"Best length {Say.Length(Length.FromInches(BestToHave), Unit)}, likely " +
                $"{Say.Range(Told(Low), Told(High), Unit)} (9 times in 10)";

        /// <summary>How many figures that is: a fixed paddle's own length comes first.</summary>
        public int BestFigures => Fixed && Standing != "sore" ? 2 : 1;

        // Told in inches with four digits, a range of whole millimetres would lie beside the half centimetre that it is rounded at.
        private Length Told(double inches) =>
            Unit == LengthUnit.Centimetres ? Length.FromMillimetres(Math.Round(inches * 25.4)) : Length.FromInches(inches);
    }

    private static AnalysisInput Drawn(int outings, int shape, Random random, double best, double curvature, double noise, int odd)
    {
        List<Row> rows = [];
        for (int outing = 0; outing < outings; outing++)
        {
            double level = 4 * random.NextDouble(), middle = 50 + random.Next(-3, 4) / 4.0;
            int hull = odd == 1 ? Six : odd == 2 && outing % 2 == 1 ? random.Next(StandardHulls.All.Count) : Solo;
            double[] lengths = shape switch
            {
                0 => [middle - 1, middle + 1, middle + 1, middle - 1],
                1 => [middle - 1, middle - 0.5, middle, middle + 0.5],
                2 => [middle, middle],
                _ => [.. Enumerable.Range(0, random.Next(1, 6)).Select(_ => 50 + random.Next(-8, 9) / 4.0)],
            };
            rows.AddRange(lengths.Select(inches => new Row(
                outing, inches, level - curvature * (inches - best) * (inches - best) + noise * (random.NextDouble() - 0.5),
                    random.Next(5) == 0 ? null : 5.5 + random.Next(3) / 2.0)
            {
                Hull = hull, Paddle = odd == 3 ? 1 : 0,
            }));
        }

        AnalysisInput input = LogOf.Rows(rows);
        return odd switch
        {
            1 or 4 => In(Six, input),
            3 => Fixed(input, 50 + random.Next(-4, 5) / 4.0),
            5 => Hurting(input, 50),
            6 => input with { Paddler = input.Paddler with { SwapsOnWater = false } },
            7 => input with { Paddler = input.Paddler with { Unit = LengthUnit.Centimetres } },
            8 => With(
                input, input.Paddle
                with
                { Shortest = Length.FromInches(48), Longest = Length.FromInches(52), Step = Length.FromInches(0.5) }),
            _ => input,
        };
    }

    private static IEnumerable<Row> Mirrored(int outings, double curvature) =>
        from outing in Enumerable.Range(0, outings)
        from one in (int[])[0, 1, 2, 3]
        let inches = 50 + ((outing + (one is 0 or 3 ? 0 : 1)) % 2 == 0 ? -1.25 : 1.25)
        select new Row(
            outing, inches, 3 * Math.Sin(outing) - curvature * (inches - 50) * (inches - 50) + 0.3 * Math.Sin(7 * outing + 3 * one));

    private static AnalysisInput In(int hull, AnalysisInput input) => input with { Hull = StandardHulls.All[hull] };

    private static AnalysisInput Fixed(AnalysisInput input, double inches) =>
        With(input, input.Paddle with { Shortest = Length.FromInches(inches), Longest = Length.FromInches(inches) });

    private static AnalysisInput With(AnalysisInput input, Paddle paddle) =>
        input with { Paddle = paddle, Paddles = [paddle, .. input.Paddles.Skip(1)] };

    private static AnalysisInput Hurting(AnalysisInput input, double from) => input with
    {
        Outings = [.. input.Outings.Select(outing => outing with
        {
            Pieces = [.. outing.Pieces.Select(piece => piece with { Soreness = Soreness.FromPoints(piece.Length.Inches >= from ? 5 : 1) })],
        })],
    };

    private static double Rounded(Length length) => Math.Round(length.Inches, 4);

    private static string Line(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
