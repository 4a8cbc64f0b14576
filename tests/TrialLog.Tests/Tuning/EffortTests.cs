using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Tuning;

/// <summary>Effort told, shown by heart rate, and hidden lengths: what must hold whatever the log.</summary>
public class EffortTests
{
    [Fact]
    public void A_heart_that_beats_faster_all_outing_long_changes_nothing()
    {
        AnalysisInput log = WithHeart(seed: 1);
        Same(log, Each(log, (rate, outing, _) => rate + 7 * outing), 1e-9);
    }

    [Fact]
    public void Lengths_mirrored_about_the_start_mirror_the_answer()
    {
        AnalysisInput log = WithHeart(seed: 2), mirrored = log with
        {
            Outings = [
                .. log.Outings.Select(outing =>
                outing with { Pieces = [
                .. outing.Pieces.Select(piece => piece with { Length = Length.FromInches(100 - piece.Length.Inches) })] })],
        };
        (Posterior one, Posterior other) = (Fit.Of(log).Posterior, Fit.Of(mirrored).Posterior);
        Assert.Equal(one.Mean, -other.Mean, 1e-3);
        Assert.Equal(one.Quantile(0.05), -other.Quantile(0.95), 2e-3);
    }

    [Fact]
    public void Another_unit_of_heart_rate_with_its_priors_changes_nothing()
    {
        AnalysisInput log = WithHeart(seed: 3);
        TuningSettings once = new(), twice = new()
        {
            HeartRateMedian = 2 * once.HeartRateMedian, HeartRatePerPointMean = 2 * once.HeartRatePerPointMean,
            HeartRatePerPointSpread = 2 * once.HeartRatePerPointSpread, HeartRateDriftMean = 2 * once.HeartRateDriftMean,
            HeartRateDriftSpread = 2 * once.HeartRateDriftSpread, HeartRateBendMean = 2 * once.HeartRateBendMean,
            HeartRateBendSpread = 2 * once.HeartRateBendSpread, HeartRatePerInchSpread = 2 * once.HeartRatePerInchSpread,
            HeartRatePerPointLeast = 2 * once.HeartRatePerPointLeast,
        };
        int least = log.Outings.SelectMany(outing => outing.Pieces).Min(piece => (int)piece.HeartRate!.Value.BeatsPerMinute);
        AnalysisInput doubled = Each(log, (rate, _, _) => 80 + 2 * (rate - least)) with { Settings = twice };
        Same(log, doubled, 1e-6);
    }

    [Theory]
    [InlineData("out of range")]
    [InlineData("stuck")]
    [InlineData("one an outing")]
    [InlineData("short pieces")]
    public void What_is_no_reading_is_as_none(string wrong)
    {
        AnalysisInput log = WithHeart(seed: 4);
        AnalysisInput odd = wrong switch
        {
            "out of range" => Each(log, (rate, _, piece) => piece % 2 == 0 ? 45 : 225),
            "stuck" => Each(log, (_, _, _) => 141),
            "one an outing" => Each(log, (rate, _, piece) => piece == 2 ? rate : null),
            _ => Shorter(log),
        };
        AnalysisInput none = Each(wrong == "short pieces" ? odd : log, (_, _, _) => null);
        Same(none, odd, 1e-12);
        Assert.Null(Fit.Of(odd).Effort!.HeartRate);
    }

    /// <summary>
    /// Two rates as far apart as what is believed of the drift says to the last digit: nothing is left of them to say how hard a piece was
    /// pulled, which an analysis has to bear.
    /// </summary>
    [Fact]
    public void Rates_that_the_place_in_the_outing_explains_say_nothing()
    {
        AnalysisInput log = WithHeart(seed: 5);
        AnalysisInput odd = Each(
            log with { Outings = [.. log.Outings.Take(2).Select(outing => outing with { Pieces = [.. outing.Pieces.Take(3)] })] },
            static (_, _, piece) => piece == 1 ? null : 130 + 3 * (piece / 2));
        Posterior posterior = Fit.Of(odd).Posterior;
        Assert.InRange(posterior.Quantile(0.05), -10, posterior.Mean);
        Assert.InRange(posterior.Quantile(0.95), posterior.Mean, 10);
    }

    [Fact]
    public void Untold_effort_has_the_spread_that_the_design_was_tried_with()
    {
        (double mean, double sd) = new EffortPrior(TuningSettings.Default).UntoldLogSpread();
        Assert.Equal(0.69, mean, 0.02);
        Assert.Equal(0.68, sd, 0.02);
    }

    [Fact]
    public void The_thirds_of_what_a_beat_says_weigh_alike_and_rise()
    {
        IReadOnlyList<EffortThird> thirds = new EffortPrior(TuningSettings.Default).Thirds(20);
        Assert.Equal(3, thirds.Count);
        Assert.True(thirds[0].Rho < thirds[1].Rho && thirds[1].Rho < thirds[2].Rho);
        Assert.InRange(thirds[1].Rho, 0.3, 0.4);
        Assert.All(thirds, third => Assert.InRange(third.Share, 0.3, 0.7));
    }

    [Fact]
    public void A_lean_on_length_shows_as_a_slope_and_heart_rate_takes_most_of_it_away()
    {
        double with = 0, without = 0;
        int clear = 0;
        for (int seed = 10; seed < 20; seed++)
        {
            AnalysisInput log = WithHeart(seed, outings: 10, lean: 0.25);
            Fit fit = Fit.Of(log);
            clear += fit.Effort!.HeartRate!.Slope!.IsClear ? 1 : 0;
            with += fit.Posterior.Mean / 10;
            without += Fit.Of(Each(log, (_, _, _) => null)).Posterior.Mean / 10;
        }

        // The truth is at 0.25 in; a lean of 0.25 points an inch is worth 0.75 % an inch.
        Assert.True(Math.Abs(with - 0.25) < 0.6 * Math.Abs(without - 0.25), $"{with} with heart rate, {without} without");
        Assert.True(clear >= 6, $"{clear}");
    }

    [Fact]
    public void Blind_outings_beside_seen_ones_pull_the_answer_their_way_without_heart_rate()
    {
        AnalysisInput log = Each(WithHeart(seed: 5, outings: 12, lean: 0.3, blindEvery: 2), (_, _, _) => null);
        AnalysisInput taken = log with { Outings = [.. log.Outings.Select(outing => outing with { Blind = false })] };
        AnalysisInput alone = log with { Outings = [.. log.Outings.Where(outing => outing.Blind)] };
        double blind = Fit.Of(alone).Posterior.Mean, told = Fit.Of(log).Posterior.Mean, untold = Fit.Of(taken).Posterior.Mean;
        Assert.True(Math.Abs(told - blind) < Math.Abs(untold - blind), $"{blind} blind, {told} told, {untold} untold");
    }

    /// <summary>Mirrored outings about a best length of 50.25 in; effort always told as 6 while it strays and may lean on length.</summary>
    /// <summary>Effort is the paddler's word alone until heart rate counts or two outings had hidden lengths.</summary>
    [Fact]
    public void An_answer_rests_on_told_effort_until_heart_rate_or_hidden_lengths_show_it()
    {
        AnalysisInput heart = WithHeart(seed: 5, outings: 8), hidden = WithHeart(seed: 5, outings: 8, blindEvery: 3);
        Assert.False(Tuner.Analyse(heart).OnToldEffort);
        Assert.True(Tuner.Analyse(Each(heart, (_, _, _) => null)).OnToldEffort);
        Assert.False(Tuner.Analyse(Each(hidden, (_, _, _) => null)).OnToldEffort);
        Assert.True(Tuner.Analyse(Each(hidden with { Outings = [.. hidden.Outings.Take(4)] }, (_, _, _) => null)).OnToldEffort);
    }

    private static AnalysisInput WithHeart(int seed, int outings = 6, double lean = 0, int blindEvery = 0)
    {
        var random = new Random(seed);
        Dictionary<int, List<int>> rates = [];
        List<Row> rows = [];
        for (int j = 0; j < outings; j++)
        {
            double level = 2.5 * Noise(), heart = 145 + 4 * Noise();
            bool blind = blindEvery > 0 && j % blindEvery == 1;
            rates[j] = [];
            foreach (double step in (double[])(j % 2 == 0 ? [-1, 1, 1, -1] : [1, -1, -1, 1]))
            {
                double effort = 0.5 * Noise() + (blind ? 0 : lean * step);
                rows.Add(new(j, 50 + step, level - 0.4 * (step - 0.25) * (step - 0.25) + 3 * effort + 0.7 * Noise()));
                rates[j].Add((int)Math.Round(heart + 9 * effort + 1.5 * rates[j].Count + 2 * Noise()));
            }
        }

        AnalysisInput log = LogOf.Rows(rows);
        return Each(
            log with { Outings = [.. log.Outings.Select((outing, j) => outing with { Blind = blindEvery > 0 && j % blindEvery == 1 })] },
            (_, outing, piece) => rates[outing][piece]);

        double Noise() => MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
    }

    private static AnalysisInput Shorter(AnalysisInput log) => log with
    {
        Outings = [
            .. log.Outings.Select(outing =>
            outing with { Pieces = [
            .. outing.Pieces.Select(
            piece => piece with { Distance = Distance.FromMetres(500), Time = PieceTime.FromSeconds(piece.Time.Seconds / 2) })] })],
    };

    /// <summary>The same log with other heart rates, by rate, outing and piece.</summary>
    private static AnalysisInput Each(AnalysisInput log, Func<int, int, int, int?> rate) => log with
    {
        Outings = [.. log.Outings.Select((outing, j) => outing with
        {
            Pieces = [.. outing.Pieces.Select((piece, i) => piece with
            {
                HeartRate = rate((int)(piece.HeartRate?.BeatsPerMinute ?? 0), j, i) is { } beats
                    ? HeartRate.FromBeatsPerMinute(beats) : null,
            })],
        })],
    };

    private static void Same(AnalysisInput one, AnalysisInput other, double within)
    {
        (Posterior a, Posterior b) = (Fit.Of(one).Posterior, Fit.Of(other).Posterior);
        Assert.Equal(a.Mean, b.Mean, within);
        Assert.Equal(a.Quantile(0.05), b.Quantile(0.05), within);
        Assert.Equal(a.LeastLoss, b.LeastLoss, within);
    }
}
