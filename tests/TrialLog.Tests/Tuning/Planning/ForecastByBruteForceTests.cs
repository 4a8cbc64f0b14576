using MathNet.Numerics.Distributions;
using TrialLog.Domain.Log;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;
using TrialLog.Tuning.Planning;

namespace TrialLog.Tests.Tuning.Planning;

/// <summary>
/// The forecast simulates seasons by shortcuts. Here they are paddled in full: truths drawn from what is believed, pieces with all their
/// noise, the whole model fitted after each outing, the real planner's cards, until the real rule says stop.
/// </summary>
public class ForecastByBruteForceTests
{
    private const int Seasons = 40, Most = 14;

    [Fact]
    public void Its_range_holds_about_as_many_full_seasons_as_it_says()
    {
        AnalysisInput input = LogOf.Rows(LogOf.Healthy(outings: 1));
        AssessedFit assessed = AssessedFit.Of(input);
        OutingsToGo said = Forecast.Of(assessed, CardPlanner.Plan(assessed), swaps: true);
        int[] took = [.. Enumerable.Range(0, Seasons).AsParallel().AsOrdered().Select(season => Took(input, assessed.Fit, season))];
        string seen = $"said {said.Median} ({said.Low} to {said.High}), took {string.Join(" ", took.Order())}";

        Assert.True(took.Count(outings => outings >= said.Low && outings <= said.High) >= 0.7 * Seasons, seen);
        Assert.True(took.Count(outings => outings <= said.Median) >= 0.3 * Seasons, seen);
        Assert.True(took.Count(outings => outings >= said.Median) >= 0.3 * Seasons, seen);
    }

    private static int Took(AnalysisInput input, Fit fit, int season)
    {
        Random random = new(season);
        (PosteriorComponent truth, double best) = Draw(fit.Posterior, random);
        double skew = Math.Clamp(Normal.Sample(random, truth.Skew, Math.Sqrt(truth.SkewVariance)), -0.6, 0.6),
            scale = Math.Exp(fit.Posterior.LogPiece.Quantile(0.02 + 0.96 * random.NextDouble()));
        for (int outing = 1; outing <= Most; outing++)
        {
            TrialCard card = CardOf(input);
            double day = Normal.Sample(random, 0, 2.5);
            input = input with { Outings = [.. input.Outings, Paddled(card, outing)] };
            if (AssessedFit.Of(input).Says.DiminishingReturns)
                return outing;

            Outing Paddled(TrialCard planned, int number) => Named(number, LogOf.Rows(planned.Lengths.Select((length, order) =>
            {
                double away = fit.Alignment.Align(length, input.Hull, input.Paddle.Blade) - best;
                double loss = fit.Posterior.Share * truth.Curvature * (away * away + skew * away * Math.Abs(away));
                return new Row(number, length.Inches, day - 0.3 * order - loss + StudentT.Sample(random, 0, scale, 4));
            })).Outings[0]);
        }

        return Most + 1;
    }

    /// <summary>Each outing is made as a log of its own, so its pieces have the names of the first.</summary>
    private static Outing Named(int number, Outing outing) => outing with
    {
        Pieces = [.. outing.Pieces.Select(piece => piece with { Id = new Guid(number, (short)piece.Order, 1, new byte[8]) })],
    };

    private static TrialCard CardOf(AnalysisInput input)
    {
        AssessedFit assessed = AssessedFit.Of(input);
        return CardWriter.Of(assessed, CardPlanner.Plan(assessed));
    }

    private static (PosteriorComponent Truth, double Best) Draw(Posterior posterior, Random random)
    {
        double share = random.NextDouble();
        foreach (PosteriorComponent part in posterior.Components)
        {
            share -= part.Weight;
            if (share <= 0)
                return (part, Normal.Sample(random, part.Card, Math.Sqrt(part.CardVariance)));
        }

        throw new InvalidOperationException("The weights of a posterior add up to less than one.");
    }
}
