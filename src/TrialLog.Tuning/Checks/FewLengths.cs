using TrialLog.Domain.Values;

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
            1 => new("few-lengths") { Count = 1, Of = log.Counted.Count, Inches = log.Counted[0].LengthInches },
            2 => new("few-lengths") { Count = 2, Of = log.Counted.Count },
            _ => null,
        };
    }
}
