using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// One way to see the pieces, to be fitted and added to the others by its evidence: what effort does to heart rate and speed is not known.
/// </summary>
/// <param name="Table">The pieces with the columns that follow from it.</param>
/// <param name="Settings">The priors that follow from it.</param>
internal sealed record EffortVariant(PieceTable Table, TuningSettings Settings);

/// <summary>
/// Effort as a number that nobody sees: told by the paddler, shown by heart rate. Without heart rate, untold effort widens what is believed
/// of the spread of pieces. With it, pieces that beat faster than their place and length explain are not called fast only for that; three
/// values of ρ = b/k, what a beat more says of speed, are fitted side by side. The derivation is in docs/model.md.
/// </summary>
internal sealed class EffortModel
{
    /// <summary>Name of the column whose coefficient is q.</summary>
    public const string HeartRateColumn = "heart rate";

    private readonly PieceTable _table;
    private readonly TuningSettings _settings;
    private readonly IReadOnlyList<EffortThird> _thirds;

    private EffortModel(PieceTable table, TuningSettings settings, EffortPrior prior, HeartRateFit? heartRate)
    {
        (_table, _settings, HeartRate) = (table, settings, heartRate);
        _thirds = heartRate is null ? [] : prior.Thirds(heartRate.Variance);
        Variants = heartRate is null ? [WithoutHeartRate(prior)]
            : [.. _thirds.Select(third => With(third, third.PerBeat * third.PerBeat + third.PerBeatVariance))];
        UntoldSd = heartRate is null ? null : prior.MeanUntold(heartRate.Variance);
    }

    /// <summary>Heart rate's own fit; null where the log has none that counts.</summary>
    public HeartRateFit? HeartRate { get; }

    /// <summary>
    /// E[ω | V], the spread of effort that was not told, CR10 points; null without heart rate, since nothing else shows it.
    /// </summary>
    public double? UntoldSd { get; }

    /// <summary>What to fit.</summary>
    public IReadOnlyList<EffortVariant> Variants { get; }

    /// <summary>The model of a log.</summary>
    public static EffortModel Of(PieceTable table, TuningSettings settings)
    {
        EffortPrior prior = new(settings);
        return new(table, settings, prior, HeartRateFit.Of(table, settings, prior));
    }

    /// <summary>The variants once more, the doubts about drift and lean counted by what a beat says of speed as fitted.</summary>
    /// <param name="perBeatSquares">E[q²] of each variant.</param>
    public IReadOnlyList<EffortVariant> Again(IReadOnlyList<double> perBeatSquares) =>
        [.. _thirds.Select((third, at) => With(third, perBeatSquares[at]))];

    private EffortVariant WithoutHeartRate(EffortPrior prior)
    {
        TuningSettings settings = _settings;
        // Whoever tells the number that was asked for every time tells nothing: how far the truth strayed is then in the noise.
        if (!_table.Effort.Varies)
        {
            (double mean, double sd) = prior.UntoldLogSpread();
            settings = settings with { PieceMedian = Math.Exp(mean), PieceLogSpread = sd };
        }

        bool blind = _table.Outings.Any(outing => outing.Blind), seen = _table.Outings.Any(outing => !outing.Blind);
        if (!blind || !seen)
            return new(_table, settings);
        double[] lean = [.. HeartRateFit.ColumnsOf(_table)[3]];
        return new(
            _table.With(Covariates.Of([.. _table.PlainCovariates, new("lean", lean, 0, settings.LeanSpread * settings.LeanSpread)]),
            _table.KnownVariance), settings);
    }

    private EffortVariant With(EffortThird third, double perBeatSquare)
    {
        HeartRateFit fit = HeartRate!;
        double perBeat = -Math.Sqrt(perBeatSquare), perLean = third.Rho * (1 - third.Share), untold = 1 - third.Share;
        double[] signs = [perBeat, perBeat, perBeat, perLean];
        string[] names = ["order", "bend", "length", "lean"];
        double Added(int a, int b) => signs[a] * signs[b] * fit.Covariance[a, b];
        double[] heart = HeartRateFit.Within(_table, [.. fit.Readings.Select((rate, i) => rate - fit.Expected[i])], fit.Readings);
        List<Covariate> columns =
        [
            .. _table.PlainCovariates.Select(column => column.Name switch
            {
                "order" => column with { Variance = column.Variance + Added(0, 0) },
                "effort" => column with { Mean = column.Mean * untold, Variance = Math.Pow(_settings.ToldEffortSpread * untold, 2) + 0.01 },
                _ => column,
            }),
            new(HeartRateColumn, heart, third.PerBeat, third.PerBeatVariance),
            new("bend", fit.Columns[1], 0, Added(1, 1)),
            new("length", fit.Columns[2], 0, Added(2, 2)),
            new("lean", fit.Columns[3], perLean * fit.LeanMean, Added(3, 3)),
        ];
        Dictionary<(string, string), double> covariances = [];
        for (int a = 0; a < names.Length; a++)
            for (int b = 0; b < a; b++)
                covariances[(names[a], names[b])] = Added(a, b);
        double unread = perBeatSquare * fit.Variance;
        return new(
            _table.With(Covariates.Of(columns, covariances),
                [.. _table.KnownVariance.Select((known, i) => double.IsNaN(fit.Readings[i]) ? known + unread : known)]),
            _settings with { PieceMedian = Math.Exp(third.LogSpreadMean), PieceLogSpread = third.LogSpreadSd });
    }
}
