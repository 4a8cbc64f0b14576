using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Wording;

namespace TrialLog.Tuning.Checks;

/// <summary>One or two lengths cannot show where a curve peaks.</summary>
internal sealed class FewLengths : ILogCheck
{
    private const int EnoughPieces = 4;

    public HealthCheck? Look(CheckedLog log)
    {
        if (log.Counted.Count < EnoughPieces)
            return null;
        // Settings closer than a tenth of an inch are the same setting, read twice.
        double[] lengths = [.. log.Counted.Select(piece => Math.Round(piece.LengthInches, 1)).Distinct()];
        return lengths.Length switch
        {
            1 => new("few-lengths", $"All {log.Counted.Count} pieces are at one length, {log.Say(log.Counted[0].LengthInches)}, so they cannot say how speed depends on length; paddle a longer and a shorter one."),
            2 => new("few-lengths", "Two lengths show which way is faster, not where the best lies; paddle a third."),
            _ => null,
        };
    }
}
