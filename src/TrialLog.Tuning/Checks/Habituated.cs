namespace TrialLog.Tuning;

/// <summary>Nearly all experience at one length: what one is used to goes better at first than it deserves.</summary>
internal sealed class Habituated : ILogCheck
{
    private const int EnoughPieces = 8;

    /// <summary>Share of the pieces at one length from which the others count as hardly tried. Chosen.</summary>
    private const double NearlyAll = 0.8;

    public HealthCheck? Look(CheckedLog log)
    {
        if (log.Counted.Count < EnoughPieces)
            return null;
        CheckedPiece usual = log.Counted.MaxBy(piece => Near(log, piece))!;
        int near = Near(log, usual);
        return near >= NearlyAll * log.Counted.Count && near < log.Counted.Count
            ? new("habituated", $"{near} of {log.Counted.Count} pieces are at about {log.Say(usual.LengthInches)}; a length one is used to goes better at first than it deserves, so give the others a fair share.")
            : null;
    }

    private static int Near(CheckedLog log, CheckedPiece to) =>
        log.Counted.Count(piece => Math.Abs(piece.Aligned - to.Aligned) <= 0.125 + 1e-9);
}
