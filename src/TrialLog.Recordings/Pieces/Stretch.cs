namespace TrialLog.Recordings.Pieces;

/// <summary>A stretch of the track between two of its points, both in the same unbroken part.</summary>
/// <param name="First">Index of its first point.</param>
/// <param name="Last">Index of its last point.</param>
internal readonly record struct Stretch(int First, int Last)
{
    /// <summary>Seconds it lasts: the track has a point a second.</summary>
    public int Seconds => Last - First;
}
