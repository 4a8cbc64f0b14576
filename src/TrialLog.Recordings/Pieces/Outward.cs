using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Which of the pieces one way went out and which back.</summary>
internal static class Outward
{
    private const double Clearly = 0.5;

    /// <summary>
    /// The pieces with their courses: out is the direction whose pieces end farther from the launch than they begin; where one launches in
    /// the middle of the stretch neither does clearly, and out is the way of the first.
    /// </summary>
    public static IReadOnlyList<PieceProposal> Named(Track track, IReadOnlyList<PieceProposal> pieces)
    {
        List<PieceProposal> oneWay = [.. pieces.Where(p => p.Kept && IsOneWay(p))];
        if (oneWay.Count == 0)
            return pieces;
        Heading axis = Way(oneWay[0]);
        double away = 0, all = 0;
        foreach (PieceProposal piece in oneWay)
        {
            away += (track.Between(0, At(piece.End)).Length - track.Between(0, At(piece.Start)).Length) * Math.Sign(
                Way(piece).Cosine(axis));
            all += piece.Distance.Metres;
        }

        bool firstWayIsOut = away > -Clearly * all;
        return [
            .. pieces.Select(
            p => IsOneWay(p) ? p with { Course = Way(p).Cosine(axis) >= 0 == firstWayIsOut ? Course.Out : Course.Back } : p)];

        int At(TimeSpan time) => Math.Min(track.IndexAt(time.TotalSeconds), track.Count - 1);
        Heading Way(PieceProposal piece) => track.Between(At(piece.Start), At(piece.End));
    }

    private static bool IsOneWay(PieceProposal piece) => piece.Course is Course.Out or Course.Back;
}
