using CsCheck;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.TestData.OddLogs;
using TrialLog.Tests.Tuning.Assessments;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Tuning;

/// <summary>What must hold of an answer whatever the log.</summary>
public class TunerLawsTests
{
    private static readonly Gen<Row[]> Logs =
        Gen.Select(Gen.Int[0, 5], Gen.Int[-12, 12], Gen.Double[-4, 4], Gen.Int[8, 16], static (outing, quarters, percent, halves) =>
            new Row(outing, 50 + quarters / 4.0, percent, halves / 2.0)).Array[1, 24];

    [Fact]
    public void Making_every_length_and_the_start_longer_makes_the_answer_longer_by_as_much() =>
        Gen.Select(Logs, Gen.Int[-8, 8]).Sample((rows, quarters) =>
        {
            double longer = quarters / 4.0;
            AnalysisInput question = LogOf.Rows(rows);
            Analysis before = Tuner.Analyse(question), after = Tuner.Analyse(Longer(question, longer));
            Assert.Equal(before.Best.Length.PlusInches(longer), after.Best.Length);
            Assert.Equal(before.Best.LikelyLow.PlusInches(longer), after.Best.LikelyLow);
            Assert.Equal(before.Best.LikelyHigh.PlusInches(longer), after.Best.LikelyHigh);
            Assert.Equal(before.GainLeftPercent, after.GainLeftPercent, 1e-6);
            Assert.Equal(before.Card.Lengths.Select(length => length.PlusInches(longer)), after.Card.Lengths);
        }, iter: 25);

    [Fact]
    public void The_order_in_which_outings_were_entered_does_not_matter() =>
        Logs.Sample(rows =>
        {
            AnalysisInput question = LogOf.Rows(rows);
            Same(Tuner.Analyse(question), Tuner.Analyse(question with { Outings = [.. question.Outings.Reverse()] }));
        }, iter: 15);

    [Fact]
    public void Excluded_pieces_do_not_matter() =>
        Gen.Select(Logs, Gen.Int[1, 3]).Sample((rows, each) =>
        {
            AnalysisInput excluded = LogOf.Rows(rows.Select((row, at) => at % (each + 1) == 0 ? row with { Excluded = "wash" } : row));
            AnalysisInput gone = excluded with
            {
                Outings = [
                    .. excluded.Outings.Select(
                    outing => outing with { Pieces = [.. outing.Pieces.Where(piece => piece.ExcludedBecause is null)] })],
            };
            Same(Tuner.Analyse(excluded), Tuner.Analyse(gone));
        }, iter: 15);

    /// <summary>
    /// With the curvature and the spreads given, more of the same never makes the length less sure. Without, it may: it can tell that the
    /// curve is flatter than thought, and JAGS then widens, too.
    /// </summary>
    [Fact]
    public void With_only_the_length_unknown_the_same_outings_again_never_widen_the_range() =>
        Logs.Sample(rows =>
        {
            AnalysisInput once = LogOf.Rows(rows) with
            {
                Settings = new()
                {
                    CurvatureLogSpread = 1e-5, FlatShare = 0, SkewSpread = 0, DurationSpreadInches = 1e-6,
                    OutingLogSpread = 1e-5, PieceLogSpread = 1e-5, DegreesOfFreedom = double.PositiveInfinity, StartOutlierShare = 0
                },
            };
            Assert.True(PosteriorWidth(Doubled(once, "again")) <= PosteriorWidth(once) + 1e-6);
        }, iter: 15, seed: "0000KPuUrQb2");

    [Theory]
    [InlineData(1)]
    [InlineData(92)]
    public void A_healthy_log_four_times_over_narrows_the_range_by_more_than_a_third(int seed)
    {
        // Of the log made with 92 a curve without bounds on its lopsidedness could not be told from one that is a cliff on one side: there
        // the range grew from 1.22 in to 1.48 in. JAGS, with what was then believed of the start length: from 1.18 to 0.32.
        AnalysisInput once = LogOf.Rows(LogOf.Healthy(outings: 4, seed));
        Assert.True(PosteriorWidth(Doubled(Doubled(once, "again"), "and again")) < 0.65 * PosteriorWidth(once));
    }

    [Fact]
    public void Odd_logs_get_an_answer_that_hangs_together() =>
        Assert.All(Enumerable.Range(1, 300), number => Assert.Null(OddLog.Problem(OddLog.Of(number))));

    [Fact]
    public void A_card_is_mirrored_within_reach_and_within_the_step_limit() =>
        Logs.Sample(rows =>
        {
            AnalysisInput question = LogOf.Rows(rows);
            IReadOnlyList<Length> lengths = Tuner.Analyse(question).Card.Lengths;
            Assert.Equal(lengths, lengths.Reverse());
            Assert.InRange(lengths.Distinct().Count(), 2, 3);
            Assert.All(lengths, length => Assert.True(question.Paddle.Reaches(length)));
            Assert.True(lengths.Max().InchesMoreThan(lengths.Min()) <= 2 * question.Settings.StepLimitInches + 1e-9);
        }, iter: 25);

    [Fact]
    public void Whoever_cannot_swap_on_the_water_gets_one_length_an_outing() =>
        Logs.Sample(rows =>
        {
            AnalysisInput question = LogOf.Rows(rows);
            question = question with { Paddler = question.Paddler with { SwapsOnWater = false } };
            Assert.Single(Tuner.Analyse(question).Card.Lengths.Distinct());
        }, iter: 15);

    [Fact]
    public void However_many_threads_ask_the_answer_is_the_same_to_the_last_digit()
    {
        AnalysisInput[] questions = [.. Enumerable.Range(1, 8).Select(seed => LogOf.Rows(LogOf.Healthy(outings: 5, seed)))];
        Analysis[] alone = [.. questions.Select(Tuner.Analyse)], together = new Analysis[questions.Length];
        Parallel.For(0, questions.Length, at => together[at] = Tuner.Analyse(questions[at]));
        for (int at = 0; at < questions.Length; at++)
            Same(alone[at], together[at]);
    }

    [Fact]
    public void The_last_point_of_progress_is_what_an_analysis_says()
    {
        AnalysisInput question = LogOf.Rows(LogOf.Healthy(outings: 5));
        IReadOnlyList<ProgressPoint> progress = Tuner.Progress(question);
        Analysis analysis = Tuner.Analyse(question);
        Assert.Equal(6, progress.Count);
        AssessmentLaws.Alike(analysis, progress[^1].Then);
    }

    [Fact]
    public void A_longer_blade_carries_the_same_answer_as_much_longer()
    {
        AnalysisInput question = LogOf.Rows(LogOf.Healthy());
        IReadOnlyList<Assessment> carried = Tuner.Carry(question, [question.Hull], question.Paddles);
        Assert.Equal(2, carried[1].Ideal.Length.InchesMoreThan(carried[0].Ideal.Length), 9);
        // The rule for blades is itself not sure: the pieces were paddled with the other one.
        Assert.True(carried[1].Ideal.WithinQuarterInch < carried[0].Ideal.WithinQuarterInch);
    }

    private static AnalysisInput Longer(AnalysisInput question, double inches)
    {
        Paddle paddle = Stretched(question.Paddle);
        return question with
        {
            Paddler = question.Paddler with { KnownLength = question.Paddler.KnownLength!.Value.PlusInches(inches) },
            Paddle = paddle,
            Paddles = [.. question.Paddles.Select(Stretched)],
            Outings = [
                .. question.Outings.Select(outing => outing
                with { Pieces = [.. outing.Pieces.Select(piece => piece with { Length = piece.Length.PlusInches(inches) })] })],
        };

        Paddle Stretched(Paddle one) => one with { Shortest = one.Shortest.PlusInches(inches), Longest = one.Longest.PlusInches(inches) };
    }

    private static void Same(Analysis a, Analysis b)
    {
        Assert.Equal(a.Best.Length, b.Best.Length);
        Assert.Equal(a.Best.WithinQuarterInch, b.Best.WithinQuarterInch);
        Assert.Equal(a.GainLeftPercent, b.GainLeftPercent);
        Assert.Equal(a.ProbabilityWorthwhileLeft, b.ProbabilityWorthwhileLeft);
        Assert.Equal(a.OutingsToGo, b.OutingsToGo);
        Assert.Equal(a.Card.Lengths, b.Card.Lengths);
        Assert.Equal(a.Curve.Points, b.Curve.Points);
        Assert.Equal(Verdict.Of(a), Verdict.Of(b));
    }

    private static double PosteriorWidth(AnalysisInput question)
    {
        Posterior posterior = Fit.Of(question).Posterior;
        return posterior.Quantile(0.95) - posterior.Quantile(0.05);
    }

    private static AnalysisInput Doubled(AnalysisInput question, string label) =>
        question
            with
        {
            Outings = [.. question.Outings,
            .. question.Outings.Select(outing => outing with { Id = Again(outing.Id, label), Label = outing.Label + label })]
        };

    private static Guid Again(Guid id, string label)
    {
        byte[] bytes = id.ToByteArray();
        bytes[15] += (byte)label.Length;
        return new(bytes);
    }
}
