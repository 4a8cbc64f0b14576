using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Checks;

/// <summary>What is wrong with the experiment itself, if anything: each check looks at one thing.</summary>
public static class HealthChecks
{
    /// <summary>How many checks there are.</summary>
    public static int Count => All.Count;

    private static readonly IReadOnlyList<ILogCheck> All =
    [
        new FewLengths(), new CloseLengths(), new OneLengthOutings(), new OnePieceCarries(), new PiecesDiscounted(),
        new CurveUpsideDown(), new HullsDisagree(),
        Confounding.Order, Confounding.Direction, Confounding.Effort, Confounding.HeartRate, Confounding.Hull, Confounding.Blade,
            Confounding.Calendar,
        new Habituated(), new ManyExcluded(), new EffortMissing(), new HeartRateUnused(),
    ];

    private static readonly IReadOnlyList<ILogCheck> Misleading = [
        Confounding.Order, Confounding.Effort, new CurveUpsideDown(), new HullsDisagree()];

    /// <summary>
    /// What puts the answer itself in doubt, such as lengths tangled with something that moves the pace: nobody should stop on it.
    /// </summary>
    internal static IReadOnlyList<HealthCheck> Doubts(AnalysisInput question)
    {
        var log = new CheckedLog(question, [], 0, null);
        return [.. Misleading.Select(check => check.Look(log)).OfType<HealthCheck>()];
    }

    /// <summary>The checks that found something, in a fixed order; empty for an empty log.</summary>
    /// <param name="question">The log, and the hull and paddle asked for.</param>
    /// <param name="pieces">The pieces of that hull as the response curve shows them.</param>
    /// <param name="bestInches">The best length, not rounded to the shaft's steps, inches.</param>
    /// <param name="bestWithoutInches">
    /// The same without that piece, or null where it cannot be told; asked for a few pieces only. Null to skip the check.
    /// </param>
    /// <param name="heartRate">How heart rate went with length where the lengths were known; null where nothing tells.</param>
    internal static IReadOnlyList<HealthCheck> Of(
        AnalysisInput question, IReadOnlyList<AdjustedPiece> pieces, double bestInches, Func<Guid, double?>? bestWithoutInches = null,
            HeartRateSlope? heartRate = null)
    {
        var log = new CheckedLog(question, pieces, bestInches, bestWithoutInches) { HeartRate = heartRate };
        return [.. All.Select(check => check.Look(log)).OfType<HealthCheck>()];
    }
}

/// <summary>One thing that can be wrong with an experiment.</summary>
internal interface ILogCheck
{
    /// <summary>What is wrong, or null.</summary>
    HealthCheck? Look(CheckedLog log);
}
