using System.Collections;
using System.Reflection;
using CsCheck;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Tuning.Assessments;

/// <summary>Whoever asks, one log means one thing.</summary>
public class AssessmentLaws
{
    private static readonly Gen<Row[]> Logs =
        Gen.Select(Gen.Int[0, 5], Gen.Int[-10, 10], Gen.Double[-3, 3], Gen.Int[10, 14], Gen.Int[0, 8],
            static (outing, quarters, percent, halves, hull) =>
            new Row(outing, 50 + quarters / 4.0, percent, halves / 2.0) { Hull = outing == 5 && hull < 3 ? hull : 0 }).Array[1, 24];

    /// <summary>The body's sheet and the first card say the same of a length that nobody has tried.</summary>
    [Theory]
    [InlineData(49)]
    [InlineData(50)]
    public void Before_any_outing_the_likely_range_is_that_of_the_start_length(double inches)
    {
        AnalysisInput input = LogOf.Rows();
        Paddler paddler = input.Paddler with { KnownLength = Length.FromInches(inches) };
        Analysis analysis = Tuner.Analyse(input with { Paddler = paddler });
        (Length low, Length high) = StartBelief.LikelyRange(StartLength.Of(paddler));
        Assert.Equal(low.Inches, analysis.Best.LikelyLow.Inches, 0.1);
        Assert.Equal(high.Inches, analysis.Best.LikelyHigh.Inches, 0.1);
    }

    [Fact]
    public void Carry_and_progress_say_what_an_analysis_says_of_the_same_hull_and_paddle() =>
        Gen.Select(Logs, Gen.Bool, Gen.Int[0, 6]).Sample((rows, swaps, sore) =>
        {
            AnalysisInput input = LogOf.Rows(rows);
            input = input with
            {
                Paddler = input.Paddler with { SwapsOnWater = swaps },
                Outings = [.. input.Outings.Select((outing, at) => at != 2 ? outing : outing with
                {
                    Pieces = [.. outing.Pieces.Select(piece => piece with { Soreness = Soreness.FromPoints(sore) })],
                })],
                Today = input.Outings.Max(outing => outing.Date),
            };
            Analysis analysis = Tuner.Analyse(input);
            IReadOnlyList<Hull> hulls = [input.Hulls[2], input.Hull];
            Alike(analysis, Tuner.Carry(input, hulls, input.Paddles)
                .Single(one => one.Hull.Id == input.Hull.Id && one.Paddle.Id == input.Paddle.Id));
            Alike(analysis, Tuner.Progress(input)[^1].Then);
        }, iter: 30);

    [Fact]
    public void A_log_whose_lengths_are_tangled_with_the_order_is_nowhere_ready_to_race()
    {
        // The longer length mostly late, in so many outings that chance alone would end the search.
        double[] card = [48.75, 49.5, 51.25, 50.25, 51];
        Row[] rows = [.. from outing in Enumerable.Range(0, 24)
                         from at in Enumerable.Range(0, 5)
                         select new Row(outing, card[at],
                             -0.3 * at - 0.4 * (card[at] - 50) * (card[at] - 50) + 0.5 * Math.Sin(7 * outing + 3 * at))];
        AnalysisInput input = LogOf.Rows(rows);
        Analysis analysis = Tuner.Analyse(input);
        Assessment carried = Tuner.Carry(input, [input.Hull], [input.Paddle]).Single();
        Assert.True(analysis.ProbabilityWorthwhileLeft < input.Settings.StopBelow, $"{analysis.ProbabilityWorthwhileLeft}");
        Assert.Equal((Standing.CannotTell, false), (carried.Standing, carried.DiminishingReturns));
        Assert.Contains(StandingReason.OrderTangled, carried.Why);
        Alike(analysis, carried);
    }

    [Fact]
    public void In_range_and_free_of_soreness_the_length_to_have_is_the_best_setting() =>
        Logs.Sample(rows =>
        {
            Analysis analysis = Tuner.Analyse(LogOf.Rows(rows));
            if (analysis.InRange)
                Assert.Equal(analysis.Best.Length, analysis.Ideal.Length);
            else
                Assert.Contains(analysis.Best.Length, (Length[])[analysis.Paddle.Shortest, analysis.Paddle.Longest]);
        }, iter: 20);

    /// <summary>Compares all that an assessment says, whatever else the two are.</summary>
    internal static void Alike(Assessment first, Assessment second)
    {
        foreach (PropertyInfo fact in typeof(Assessment).GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(fact => fact.Name != "EqualityContract"))
            Same(fact.GetValue(first), fact.GetValue(second), fact.Name);
    }

    private static void Same(object? first, object? second, string name)
    {
        if (first is IEnumerable some and not string && second is IEnumerable others)
            Assert.Equal(some.Cast<object>(), others.Cast<object>());
        else if (first is BestLength && second is BestLength)
            foreach (PropertyInfo fact in typeof(BestLength).GetProperties(BindingFlags.Public | BindingFlags.Instance))
                Same(fact.GetValue(first), fact.GetValue(second), $"{name}.{fact.Name}");
        else
            Assert.True(Equals(first, second), $"{name}: {first} and {second}");
    }
}
