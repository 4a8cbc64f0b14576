using TrialLog.Domain.Log;
using TrialLog.Recordings;
using TrialLog.Recordings.Pieces;
using TrialLog.Recordings.Tracks;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.TestData.Recordings.Simulation;

/// <summary>How well the pieces found in one simulated outing agree with the truth.</summary>
/// <param name="True">Pieces paddled.</param>
/// <param name="Found">Pieces found that count.</param>
/// <param name="EdgeErrors">Found less true time of every start and end, seconds; empty if the number is wrong.</param>
/// <param name="SpeedErrors">Found less true speed of every piece in percent; empty if the number is wrong.</param>
/// <param name="CurrentErrors">Found less true current along the course, m/s, of every round trip.</param>
/// <param name="WatchErrors">The speed error in percent of one who knows the legs exactly and takes the watch's word for where they began
/// and ended.</param>
internal sealed record OutingScore(
    int True, int Found,
    IReadOnlyList<double> EdgeErrors, IReadOnlyList<double> SpeedErrors, IReadOnlyList<double> CurrentErrors,
    IReadOnlyList<double> WatchErrors);

/// <summary>Scores found pieces against true ones.</summary>
internal static class Scoring
{
    /// <summary>Writes the outing as a FIT file, reads it back, and scores the pieces found.</summary>
    public static OutingScore Score(SimulatedOuting outing)
    {
        byte[] file = FitWriter.Activity(outing.Recorded, outing.Presses, outing.Offset);
        RecordedOuting read = RecordingReader.Read(new MemoryStream(file), "simulated.fit");
        // The recording counts from its first position, which a dropout can have taken.
        double lead = Math.Max(0, outing.Recorded.Min(p => p.Time) - outing.True[0].Time);
        return Score(outing, read, lead);
    }

    private static OutingScore Score(SimulatedOuting outing, RecordedOuting read, double lead)
    {
        IReadOnlyList<PieceProposal> kept = read.Kept;
        double[] watch = [.. outing.Pieces.Select(p => WatchError(outing, p))];
        var edges = new List<double>();
        var speeds = new List<double>();
        var currents = new List<double>();
        if (kept.Count == outing.Pieces.Count)
        {
            for (int i = 0; i < kept.Count; i++)
            {
                TruePiece piece = outing.Pieces[i];
                edges.Add(lead + kept[i].Start.TotalSeconds - piece.Start);
                edges.Add(lead + kept[i].End.TotalSeconds - piece.End);
                speeds.Add(100 * (kept[i].MetresPerSecond / piece.OverGround - 1));
                if (piece.RoundTrip && kept[i].CurrentMetresPerSecond is double current)
                    currents.Add(current - outing.Current);
                if (piece.RoundTrip != (kept[i].Course == Course.RoundTrip))
                    return new OutingScore(outing.Pieces.Count, -1, [], [], [], watch);
            }
        }

        return new OutingScore(outing.Pieces.Count, kept.Count, edges, speeds, currents, watch);
    }

    // Positions averaged over a few seconds at either end, as smoothing does; the same truth and the same average of legs.
    private static double WatchError(SimulatedOuting outing, TruePiece piece)
    {
        double sum = piece.Legs.Average(leg =>
        {
            int from = (int)leg.Start + 2, to = (int)leg.End - 3;
            return ((Mean(outing.Noisy, to) - Mean(outing.Noisy, from)).Norm - (Mean(outing.True, to) - Mean(outing.True, from)).Norm) / (
                to - from);
        });
        return 100 * sum / piece.Speed;
    }

    private static Point3 Mean(IReadOnlyList<RecordedPoint> points, int at)
    {
        Point3 sum = default;
        for (int i = at - 2; i <= at + 2; i++)
            sum += Ellipsoid.ToCartesian(points[i].Latitude, points[i].Longitude);
        return 0.2 * sum;
    }
}
