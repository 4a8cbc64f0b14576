using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Recordings;
using TrialLog.Tuning;
using TrialLog.Tuning.Information;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Tuning;

/// <summary>What is known of a piece's error before the model looks at it.</summary>
public class KnownErrorTests
{
    [Theory]
    [InlineData(100, 1.8)]
    [InlineData(300, 1.8)]
    [InlineData(750, 1.3)]
    [InlineData(1000, 0.6)]
    [InlineData(2000, 0.2)]
    [InlineData(9000, 0.2)]
    public void A_watch_errs_by_distance(double metres, double percent) =>
        Assert.Equal(percent, Math.Sqrt(KnownError.Variance(TimedBy.Watch, metres, metres / 3, TuningSettings.Default)), 1e-9);

    [Fact]
    public void A_watch_errs_the_less_the_further_it_goes()
    {
        double[] variances = [
            .. Enumerable.Range(0, 200).Select(k => KnownError.Variance(TimedBy.Watch, 300 + 10 * k, 100 + 3 * k, TuningSettings.Default))];
        Assert.Equal(variances.OrderDescending(), variances);
    }

    [Fact]
    public void A_piece_that_errs_more_tells_less()
    {
        AnalysisInput sure = LogOf.Rows(LogOf.Healthy()), unsure = sure with
        {
            Outings = [
                .. sure.Outings.Select(
                outing => outing with { Pieces = [.. outing.Pieces.Select(piece => piece with { SpeedErrorPercent = 3 })] })],
        };
        Assert.True(Width(unsure) > 1.3 * Width(sure));

        static double Width(AnalysisInput input)
        {
            Posterior posterior = Fit.Of(input).Posterior;
            return posterior.Quantile(0.95) - posterior.Quantile(0.05);
        }
    }

    [Fact]
    public void A_piece_to_come_errs_as_the_recordings_so_far_have_told()
    {
        AnalysisInput log = LogOf.Rows(LogOf.Healthy());
        Assert.Equal(0.5, Known(Recorded(0.5)), 1e-9);
        Assert.Equal(3, Known(Recorded(3)), 1e-9);
        // Without a word of its own a kilometre by watch errs by 0.6 %; a half as long one errs the more, whatever the recordings say.
        Assert.Equal(0.6, Known(Timed(log, null)), 1e-9);
        Assert.True(Known(Recorded(0.5) with { ThisOuting = new() { Distance = Distance.FromMetres(500) } }) > 0.9);

        AnalysisInput Recorded(double percent) => Timed(log, percent);

        static AnalysisInput Timed(AnalysisInput input, double? percent) => input with
        {
            Outings = [.. input.Outings.Select(outing => outing with
            {
                Pieces = [.. outing.Pieces.Select(piece => piece with { TimedBy = TimedBy.Watch, SpeedErrorPercent = percent })],
            })],
        };

        static double Known(AnalysisInput input)
        {
            PieceTable table = Fit.Of(input).Table;
            return Math.Sqrt(TrialForm.Of(input, table, Comparisons.Of(table).Count).KnownVariance(TuningSettings.Default));
        }
    }
}
