using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Checks;

/// <summary>Heart rates that were noted and do not count: whoever wore a strap should know that it told nothing.</summary>
internal sealed class HeartRateUnused : ILogCheck
{
    private const int Enough = 4;

    /// <summary>Share of the readings from which it is worth a word. Chosen.</summary>
    private const double Many = 0.5;

    public HealthCheck? Look(CheckedLog log)
    {
        int noted = 0, unused = 0;
        foreach (IGrouping<Guid, CheckedPiece> outing in log.Counted.GroupBy(piece => piece.Outing.Id))
        {
            CheckedPiece[] pieces = [.. outing];
            double[] readings = HeartRateFit.ReadingsOf([.. pieces.Select(piece => piece.Piece)]);
            for (int i = 0; i < pieces.Length; i++)
                if (pieces[i].Piece.HeartRate is not null)
                    (noted, unused) = (noted + 1, unused + (double.IsNaN(readings[i]) ? 1 : 0));
        }

        return noted >= Enough && unused >= Many * noted ? new("heart-rate-unused") { Count = unused, Of = noted } : null;
    }
}
