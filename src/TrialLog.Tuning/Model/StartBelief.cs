using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>What is believed of the best length before any piece, from a start length alone.</summary>
public static class StartBelief
{
    private const double Within = 0.9;

    /// <summary>
    /// The central 90 % range of the best length around a start length. It is the prior of every analysis, with its share of paddlers whose
    /// start length is further off than its spread allows, so that the body's sheet and the first card say the same.
    /// </summary>
    public static (Length Low, Length High) LikelyRange(StartLength start)
    {
        NormalMixture belief = Around(start.SpreadInches, new TuningSettings());
        double low = belief.Quantile(0.5 - 0.5 * Within);
        return (start.Length.PlusInches(Math.Max(low, -start.Length.Inches)), start.Length.PlusInches(-low));
    }

    /// <summary>The shares of the prior and how many times its spread each has: those whose start length suits, and the others.</summary>
    internal static (double Share, double Factor)[] Components(TuningSettings settings) => settings.StartOutlierShare > 0
        ? [(1 - settings.StartOutlierShare, 1), (settings.StartOutlierShare, settings.StartOutlierFactor)]
        : [(1, 1)];

    private static NormalMixture Around(double spreadInches, TuningSettings settings)
    {
        (double Share, double Factor)[] components = Components(settings);
        return new(
            [.. components.Select(part => part.Share)], [.. components.Select(_ => 0.0)],
                [.. components.Select(part => part.Factor * spreadInches)]);
    }
}
