using System.Text.RegularExpressions;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Screens.Paint;
using TrialLog.Tests.Plots;
using TrialLog.Tests.Reports;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Checks;
using TrialLog.Tuning.Classical;

namespace TrialLog.Tests.Application;

/// <summary>Every sentence of the program is printed here, to be read aloud, and held to the house's style.</summary>
public partial class WordingTests(ITestOutputHelper output)
{
    private const int MostWordsOfAHeadline = 45, MostWordsOfASentence = 32;

    // 0.005% is the price of an outing, as it was chosen.
    [GeneratedRegex(
        @"\b(reckon|mend|mended|of late|hardly|regardless|tells most|lies beyond|goes no longer|failed|give or take|sessions?)\b"
            + @"|\b(?<word>\w{2,}) \k<word>\b|\(\)| [.,;]"
            + @"|±|0\.00(?!5%)|[0-9] %|[0-9] [¼½¾⅛⅜⅝⅞]|\bin in\b|  |\{|\bNaN\b|∞", RegexOptions.IgnoreCase)]
    private static partial Regex Banned();

    private static Analysis Sample(LengthUnit unit = LengthUnit.Inches) =>
        SampleContents.Of(8, unit: unit).Analysis with { PiecesInHull = 32 };

    private static IEnumerable<(string Name, Analysis Analysis)> Answers()
    {
        foreach (LengthUnit unit in Enum.GetValues<LengthUnit>())
        {
            Analysis settled = Sample(unit)
                with
            { Standing = Standing.Settled, Why = [StandingReason.NothingWorthwhileLeft], OutingsToGo = new(0, 0, 0) };
            Analysis testing = settled
                with
            {
                Standing = Standing.Testing,
                Why = [StandingReason.ChanceTooHigh, StandingReason.TestingPays],
                ProbabilityWorthwhileLeft = 0.32,
                OutingsToGo = new(2, 1, 4),
                Best = settled.Best with { LikelyHigh = Length.FromInches(51.3) }
            };
            GoalEvent goal = new() { HullId = settled.Hull.Id, Distance = Distance.FromMetres(16_000) };
            yield return ("settled", settled);
            yield return ("settled for a race, wide", settled
                with
            { Paddler = settled.Paddler with { Goal = goal }, Best = settled.Best with { LikelyHigh = Length.FromInches(51.3) } });
            yield return ("settled for a time", settled
                with
            { Paddler = settled.Paddler with { Goal = new() { HullId = settled.Hull.Id, Time = PieceTime.FromSeconds(5400) } } });
            yield return ("flat", settled with { Standing = Standing.Flat, Why = [StandingReason.HardlyMatters], Flat = true });
            yield return ("testing", testing);
            yield return ("testing, long", testing with { OutingsToGo = new(30, 30, 30) });
            yield return ("testing, perhaps long",
                testing with { OutingsToGo = new(5, 2, 30), Paddler = testing.Paddler with { Goal = goal } });
            yield return ("testing, not swapping", testing with { OutingsToGo = new(6, 3, 9), OutingsToGoIfSwapping = new(2, 1, 4) });
            yield return ("testing, flat", testing with { Flat = true });
            yield return ("testing, one day", testing with { Why = [StandingReason.OneDayOnly] });
            yield return ("testing, nothing shorter", testing with { Why = [StandingReason.NothingShorterTried] });
            yield return ("testing, nothing longer", testing with { Why = [StandingReason.NothingLongerTried] });
            yield return ("testing pays", testing with { Why = [StandingReason.TestingPays] });
            yield return ("beyond the paddle", testing with { Ideal = new(testing.Paddle.Longest.PlusInches(1), 0.2, 0.3) });
            yield return ("short of the paddle", testing with { Ideal = new(testing.Paddle.Shortest.PlusInches(-1), 0.2, 0.3) });
            yield return ("never paddled here", settled
                with
            { PiecesInHull = 0, Why = [StandingReason.NotPaddledHere], Standing = Standing.Testing, CurrentIsUsual = false });
            yield return ("nothing logged",
                testing with { Pieces = 0, Outings = 0, PiecesInHull = 0, CurrentIsUsual = false, Why = [StandingReason.NothingLogged] });
            yield return ("crews only", testing with { Standing = Standing.CannotTell, Why = [StandingReason.LargeCrewsOnly] });
            ShortPieces tooShort = new(Distance.FromMetres(1000), 0.06, Distance.FromMetres(3000), 105);
            yield return ("pieces too short", testing with
            {
                Standing = Standing.CannotTell,
                Why = [StandingReason.PiecesTooShort],
                TooShort = tooShort,
                Paddler = testing.Paddler with { Goal = goal },
            });
            yield return ("testing, pieces too short",
                testing with
                {
                    TooShort = tooShort with { LongEnough = null, Minutes = null },
                    Paddler = testing.Paddler with { Goal = goal }
                });
            yield return ("testing, costs more than it wins",
                testing with { Why = [StandingReason.ChanceTooHigh, StandingReason.CostsMoreThanItWins] });
            foreach ((StandingReason why, HealthCheck check) in new[]
            {
                (StandingReason.OneLengthAnOuting, new HealthCheck("one-length-outings") { Count = 88, Of = 88 }),
                (StandingReason.OrderTangled, new HealthCheck("order-tangled") { Longer = true }),
                (StandingReason.EffortTangled, new HealthCheck("effort-tangled")),
                (StandingReason.CurveUpsideDown, new HealthCheck("curve-upside-down")),
                (StandingReason.HullsDisagree,
                    new HealthCheck("hulls-disagree") { Hull = "OC1", OtherHull = "OC6", Inches = 49, OtherInches = 53 }),
            })
                yield return ($"cannot tell: {why}", testing with { Standing = Standing.CannotTell, Why = [why], Checks = [check] });
            StandingSoreness pain = new(Soreness.FromPoints(5), new(2026, 5, 1), new(2026, 5, 3));
            yield return (
                "sore",
                testing with
                {
                    Standing = Standing.Sore,
                    Why = [StandingReason.StillSore],
                    Soreness = pain,
                    SorenessLimit = Length.FromInches(49.75),
                    TopHandOverhead = true
                });
            yield return ("sore everywhere",
                testing with { Standing = Standing.Sore, Soreness = pain, SorenessLimit = Length.FromInches(48.9), SoreEverywhere = true });
            yield return ("sore, nothing open",
                testing with { Standing = Standing.Sore, Soreness = pain, SorenessLimit = testing.Paddle.Shortest.PlusInches(-1) });
            yield return (
                "fixed",
                testing with
                {
                    Paddle = testing.Paddle with { Shortest = testing.Paddle.Longest },
                    FixedPaddle = new(0.1, 6, 0.3, testing.Paddle)
                });
            yield return ("fixed, as good",
                testing with { Paddle = testing.Paddle with { Shortest = testing.Paddle.Longest }, FixedPaddle = new(0, 0.2, 0.02, null) });
            yield return ("squad, heart rate, blind", testing with
            {
                LearntFromSquad = new(5, -1.2, 0.5, StartLengthBasis.SeatedReach),
                Effort = new(0.6, true, 2, null, testing.Best),
            });
        }
    }

    [Fact]
    public void To_a_coach_every_sentence_speaks_of_the_paddler_by_name()
    {
        var coach = new Voice("Tova Lind");
        foreach ((string name, Analysis found) in Answers())
        {
            // Cards of two lengths and of three, on both sides of the best and on one.
            foreach (double[] lengths in new[] { new[] { 49.0, 51.0 }, [49, 50, 51], [40, 42], [40, 41, 42] })
            {
                Analysis analysis = found with { Card = found.Card with { Lengths = [.. lengths.Select(Length.FromInches)] } };
                string[] said = [Verdict.Of(analysis, coach), Verdict.ToDo(analysis, coach), CardReason.Of(analysis, coach),
                    .. Cautions.Of(analysis, coach), .. Answer.Figures(analysis, coach).Select(figure => figure.Value),
                    .. Checks().Select(check => Warnings.Of(check, analysis, coach)), .. RestFirst.Page(analysis, coach) ?? [],
                    BlindWords.ForThePaddler(analysis.Card, coach), Answer.Going(analysis, coach) ?? ""];
                Assert.All(said, sentence => Assert.False(
                    System.Text.RegularExpressions.Regex.IsMatch(sentence, @"\b[Yy]ou(r|rs)?\b"), $"{name}: {sentence}"));
                Assert.DoesNotMatch(@"\d, \d+[¼½¾]? against", string.Join(' ', said));
            }
        }
    }

    private static IEnumerable<(string Name, string Text)> Sentences()
    {
        foreach ((string name, Analysis analysis) in Answers())
        {
            foreach (Voice voice in new[] { Voice.ToThePaddler, new Voice("Tova Lind") })
            {
                yield return (name, Verdict.Of(analysis, voice));
                yield return (name, Verdict.ToDo(analysis, voice));
                foreach ((string label, string value) in Answer.Figures(analysis, voice))
                    yield return (name, $"{label}: {value}");
                if (Answer.Going(analysis, voice) is { } going)
                    yield return (name, going);
                foreach (string caution in Cautions.Of(analysis, voice))
                    yield return (name, caution);
                yield return (name, CardReason.Of(analysis, voice));
            }

            yield return (name, Answer.CardHeading(analysis));
        }

        Analysis any = Sample();
        foreach (HealthCheck check in Checks())
            yield return (check.Name, Warnings.Of(check, any));
        foreach (HealthCheck check in Checks())
            yield return (check.Name, Warnings.Of(check, any, new Voice("Tova Lind")));
        yield return ("no warnings", Warnings.None);
        yield return ("rest first", RestFirst.Later);
        yield return ("rest first", RestFirst.NoOrder);
        foreach (OutingsToGo toGo in new OutingsToGo[] { new(0, 0, 0), new(2, 2, 2), new(2, 1, 4), new(5, 2, 30), new(30, 30, 30) })
            yield return ("outings to go", Say.OutingsToGo(toGo));
        foreach (DecisionKind kind in Enum.GetValues<DecisionKind>())
        {
            Decision decision = new()
            {
                Id = Guid.Empty, PaddlerId = Guid.Empty, HullId = Guid.Empty, PaddleId = Guid.Empty,
                Length = Length.FromInches(49.25), Kind = kind, Date = new(2026, 5, 3), By = "Tova Lind", Because = "It settled."
            };
            yield return ("decision", DecisionWords.Sentence(decision, LengthUnit.Inches));
            foreach (int since in new[] { 0, 1, 5 })
                foreach (double now in new[] { 48.5, 49.25, 50 })
                    yield return ("decision", DecisionWords.After(decision, since, Length.FromInches(now), LengthUnit.Inches));
        }

        foreach ((string name, string text) in SentencesOfOnePlace())
            yield return (name, text);
    }

    // What is said in one place only: of measures, steering, effort, a card of three lengths, pictures and the classical view.
    private static IEnumerable<(string Name, string Text)> SentencesOfOnePlace()
    {
        var tova = new Voice("Tova Lind");
        foreach (Measuring measuring in Measuring.All)
            foreach (string step in measuring.Steps)
                yield return ($"to measure: {measuring.What}", step);
        foreach (string advice in
            SteeringWords.Advice(large: true).Concat(SteeringWords.Advice(large: false)).Concat(SteeringWords.Cautions))
            yield return ("steering", advice);
        foreach (HealthCheck check in Checks())
            yield return ("warnings in brief", Warnings.Brief(check.Name));
        foreach (Voice voice in new[] { Voice.ToThePaddler, tova })
            yield return ("effort", EffortWords.Provisional(voice));
        yield return ("rest first", RestFirst.Of(new StandingSoreness(Soreness.FromPoints(6), new(2026, 3, 22), new(2026, 3, 22)))!);
        Analysis testing = SampleContents.Of(4).Analysis;
        foreach (double[] lengths in new[] { new[] { 49.0, 51, 51, 49 }, [49, 50, 51, 51, 50, 49], [49, 50, 51, 49, 50, 51, 49, 50, 51] })
            yield return ("a card", CardReason.Of(testing with { Card = SampleContents.Card(lengths) }));
        CardOption Option(int pieces, int outings) => new(
            pieces, Distance.FromMetres(1000), 10 * pieces, 0.1, new(outings, outings - 1, outings + 2));
        Analysis withOptions = testing with
        {
            OutingsToGo = new(5, 3, 8),
            CardOptions = [Option(4, 5), Option(6, 5), Option(8, 3), Option(10, 6)],
        };
        foreach (string more in Answer.MorePieces(withOptions))
            yield return ("more pieces", more);
        foreach (string line in PictureWords.Progress(SampleContents.Of(6).Progress, 0.3, LengthUnit.Inches)
            .Concat(PictureWords.Season([], LengthUnit.Inches))
            .Concat(PictureWords.Season(SampleContents.Of(1).Outings, LengthUnit.Inches))
            .Concat(PictureWords.Season([.. SampleContents.Of(6).Outings.Select((outing, at) =>
                at == 5 ? outing with { Blind = true, Pieces = [.. outing.Pieces.Take(1)] } : outing)], LengthUnit.Inches)))
            yield return ("pictures", line);
        foreach (ClassicalFit fit in Fits())
            yield return ("classical view", ClassicalWords.Of(fit, SampleContents.Solo, LengthUnit.Inches));
    }

    private static IEnumerable<ClassicalFit> Fits()
    {
        ClassicalFit any = SampleContents.Of(6).Classical!;
        foreach (NoFit why in Enum.GetValues<NoFit>())
            yield return any with { NoFit = why, Lengths = 2, Effects = 6, Pieces = 5, Outings = 2 };
        yield return any with { NoFit = NoFit.FewLengths, Lengths = 1 };
        foreach (FiellerShape shape in Enum.GetValues<FiellerShape>())
        {
            yield return any with { Vertex = any.Vertex! with { Shape = shape } };
            yield return any with { Vertex = any.Vertex! with { Shape = shape }, VertexInches = null };
        }

        yield return any with
        {
            Omitted =
            [
                new("order", Omitted.NotTold), new("effort", Omitted.PartlyTold, 3, 24), new("distance", Omitted.NeverVaried),
                new("wind", Omitted.Inseparable),
            ],
        };
    }

    private static IEnumerable<HealthCheck> Checks() =>
    [
        new("few-lengths") { Count = 1, Of = 12, Inches = 50 }, new("few-lengths") { Count = 2, Of = 12 },
            new("close-lengths") { Inches = 0.5 },
        new("one-length-outings") { Count = 88, Of = 88 }, new("one-length-outings") { Count = 78, Of = 88 },
        new("one-piece-carries") { Piece = (new(2026, 5, 3), 2), Inches = 0.4, Longer = true },
        new("pieces-discounted") { Count = 1, Of = 36, Piece = (new(2024, 6, 17), 1) },
            new("pieces-discounted") { Count = 3, Of = 36, Piece = (new(2024, 6, 17), 1) },
        new("curve-upside-down"), new("hulls-disagree") { Hull = "OC1", OtherHull = "OC6", Inches = 49, OtherInches = 53 },
        new("order-tangled") { Longer = true }, new("course-tangled"), new("effort-tangled"), new("calendar-tangled") { Longer = true },
            new("hull-tangled"),
        new("blade-tangled") { Hull = "OC1" }, new("habituated") { Count = 30, Of = 36, Inches = 50 },
            new("many-excluded") { Count = 9, Of = 36 },
        new("effort-missing") { Count = 9, Of = 36 }, new("effort-missing") { Count = 36, Of = 36 },
            new("heart-rate-unused") { Count = 9, Of = 12 }, new("heart-rate-unused") { Count = 12, Of = 12 },
            new("heart-rate-tangled") { Longer = true },
    ];

    [Fact]
    public void Every_sentence_keeps_to_the_style_of_the_house()
    {
        var wrong = new List<string>();
        foreach ((string name, string text) in Sentences().Distinct())
        {
            output.WriteLine($"[{name}] {text}");
            if (Banned().Match(text) is { Success: true } banned)
                wrong.Add($"“{banned.Value}” in: {text}");
            foreach (string sentence in Regex.Split(text, @"(?<=[.?!]) (?=\p{Lu})"))
            {
                if (Lines.Words(sentence).Count() > MostWordsOfASentence)
                    wrong.Add($"{Lines.Words(sentence).Count()} words: {sentence}");
                if (sentence.Length > 0 && char.IsLower(sentence[0]) && text != sentence && !text.Contains(": ", StringComparison.Ordinal))
                    wrong.Add($"begins small: {sentence}");
            }
        }

        Assert.Empty(wrong);
    }

    /// <summary>Every sentence once, as somebody has read it: what a change does to the wording shows as a difference to read.</summary>
    [Fact]
    public void Every_sentence_reads_as_it_was_read_aloud() => StoredDrawing.Matches("Application", "sentences", string.Join('\n',
        Sentences().DistinctBy(sentence => sentence.Text).GroupBy(sentence => sentence.Name)
            .Select(said => $"[{said.Key}]\n{string.Join('\n', said.Select(sentence => sentence.Text))}\n")));

    [Fact]
    public void The_answer_comes_first_and_is_short()
    {
        Assert.All(Answers(), answer =>
        {
            foreach (Voice voice in new[] { Voice.ToThePaddler, new Voice("Tova Lind") })
            {
                string headline = Verdict.Headline(answer.Analysis, voice);
                Assert.True(Lines.Words(headline).Count() <= MostWordsOfAHeadline, $"{Lines.Words(headline).Count()} words: {headline}");
                Assert.EndsWith(".", headline);
                Assert.True(voice.Name is null || !Regex.IsMatch(Verdict.Of(answer.Analysis, voice), @"\b[Yy]ou(r|)\b")
                    || answer.Analysis.Standing == Standing.CannotTell, headline);
            }
        });
    }

    [Fact]
    public void While_it_hurts_only_rest_is_spoken_of()
    {
        foreach ((_, Analysis analysis) in Answers().Where(answer => answer.Analysis.Standing == Standing.Sore))
        {
            string all = string.Join(' ', Answer.Figures(analysis).Select(figure => $"{figure.Label} {figure.Value}")
                .Append(Verdict.Of(analysis)).Append(CardReason.Of(analysis)));
            Assert.StartsWith("Rest first", Verdict.Of(analysis));
            Assert.DoesNotContain("best", all, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("outings to go", all, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("faster", all, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void Every_check_has_a_sentence_and_words_of_its_own()
    {
        string[] names = [.. Checks().Select(check => check.Name).Distinct()];
        Assert.Equal(HealthChecks.Count, names.Length);
        Assert.All(names, name => Assert.True(Warnings.Knows(name), name));
    }

    [Theory]
    [InlineData(0.3, "0.30%")]
    [InlineData(0.0765, "0.08%")]
    [InlineData(0.004, "under 0.01%")]
    [InlineData(0.9949, "0.99%")]
    [InlineData(0.996, "1.0%")]
    [InlineData(2.25, "2.3%")]
    [InlineData(-0.85, "−0.85%")]
    public void A_share_of_speed_has_two_decimals_below_one_and_one_above(double percent, string text) =>
        Assert.Equal(text, Say.Percent(percent));

    [Theory]
    [InlineData(0.004, "under 1%")]
    [InlineData(0.04, "4%")]
    [InlineData(0.0196, "1.9%")]
    [InlineData(0.05, "5%")]
    [InlineData(0.32, "32%")]
    [InlineData(0.999, "over 99%")]
    public void A_chance_is_never_rounded_onto_the_line_at_which_a_search_stops(double chance, string text) =>
        Assert.Equal(text, Say.Chance(chance));

    [Fact]
    public void Lengths_read_as_a_paddler_writes_them_and_ranges_round_outwards()
    {
        Assert.Equal("49¼ in", Say.Length(Length.FromInches(49.25), LengthUnit.Inches));
        Assert.Equal("125.1 cm", Say.Length(Length.FromInches(49.25), LengthUnit.Centimetres));
        Assert.Equal("49 1/16 in", Say.Length(Length.FromInches(49.0625), LengthUnit.Inches));
        Assert.Equal("48¼ to 50¾ in", Say.Range(Length.FromInches(48.3), Length.FromInches(50.6), LengthUnit.Inches));
        Assert.Equal("48¼ to 50¾ in", Say.Range(Length.FromInches(48.25), Length.FromInches(50.75), LengthUnit.Inches));
        Assert.Equal("122.5 to 129 cm", Say.Range(Length.FromInches(48.3), Length.FromInches(50.6), LengthUnit.Centimetres));
        Assert.Equal("49¼, 50¾, 50¾, 49¼ in", Say.Order(new[] { 49.25, 50.75, 50.75, 49.25 }.Select(Length.FromInches), LengthUnit.Inches));
        Assert.Equal("125.1, 128.9 cm", Say.Order(new[] { 49.25, 50.75 }.Select(Length.FromInches), LengthUnit.Centimetres));
        Assert.Equal("5:33 /km", Say.Pace(Distance.FromMetres(1000), PieceTime.FromSeconds(332.5)));
    }

    /// <summary>The card, the page, the order sheet and the screen tell one gain in one way: 0.08%, not also 0.1%.</summary>
    [Fact]
    public void One_gain_reads_the_same_wherever_it_is_told()
    {
        Analysis analysis = Sample();
        analysis = analysis with { GainLeftPercent = 0.0765, ProbabilityWorthwhileLeft = 0.04 };
        string[] told =
        [
            Verdict.Of(analysis with { Standing = Standing.Settled, Why = [StandingReason.NothingWorthwhileLeft] }), Verdict.Of(analysis),
            Answer.GainLeft(analysis), Answer.ShortGainLeft(analysis),
            .. Answer.Figures(analysis).Select(figure => figure.Value),
        ];
        string[] percents = [.. told.SelectMany(text => Regex.Matches(text, @"0\.[0-9]+%").Select(match => match.Value)).Distinct()];
        Assert.Equal(["0.08%", "0.3%"], percents.Order());
    }

    [Fact]
    public void No_line_parts_a_number_from_its_unit()
    {
        const string text = "It costs 0.07% of 16 km, about 4 s in 1 h 44 min, at 49 1/16 in or 126.4 cm.";
        for (int width = 8; width < 80; width++)
        {
            Assert.All(Lines.Of(text, width), line => Assert.DoesNotMatch(@"^(%|km|s\b|h\b|min|cm|1/16)", line));
            Assert.Equal(text, string.Join(' ', Lines.Of(text, width)));
            Assert.Equal(Lines.Of(text, width), WordWrap.Lines(text, width));
        }
    }
}
