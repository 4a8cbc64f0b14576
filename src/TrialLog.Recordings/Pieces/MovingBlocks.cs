using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Cuts the track at rests and at turns.</summary>
internal static class MovingBlocks
{
    // No sources for these: chosen for seated paddling, and shown by the simulated outings to find the pieces.
    private const double RestShare = 0.4;
    private const int SpeedWindow = 2;
    private const int ShortestRest = 5;
    private const int TurnWindow = 10;
    private const double TurnCosine = 0.5;
    private const double TurnZoneCosine = 0.7071;
    private const double ShortestMove = 5;

    /// <summary>A usual paddling speed in this recording: the upper fifth of the speeds above 1 m/s; null where nothing moved.</summary>
    public static double? UsualSpeed(Track track)
    {
        float[] speeds = Array.FindAll(track.Speed, s => s > 1 && s < Piece.FastestMetresPerSecond);
        if (speeds.Length == 0)
            return null;
        Array.Sort(speeds);
        return speeds[speeds.Length * 4 / 5];
    }

    /// <summary>Stretches of at least <paramref name="shortest"/> seconds without a rest and without a turn.</summary>
    public static List<Stretch> Find(Track track, double usualSpeed, int shortest)
    {
        bool[] moving = Moving(track, usualSpeed);
        bool[] turning = Turning(track);
        var found = new List<Stretch>();
        int start = -1;
        for (int i = 0; i <= track.Count; i++)
        {
            bool inside = i < track.Count && moving[i] && !turning[i];
            bool broken = i > 0 && i < track.Count && track.Part[i] != track.Part[i - 1];
            if (start >= 0 && (!inside || broken))
            {
                if (i - 1 - start >= shortest)
                    found.Add(new Stretch(start, i - 1));
                start = -1;
            }

            if (inside && start < 0)
                start = i;
        }

        return found;
    }

    /// <summary>Rests of at least so many seconds, in order.</summary>
    public static List<Stretch> Rests(Track track, double usualSpeed, int shortest)
    {
        bool[] moving = Moving(track, usualSpeed);
        var rests = new List<Stretch>();
        for (int i = 0, start = -1; i <= track.Count; i++)
        {
            bool resting = i < track.Count && !moving[i] && (i == 0 || start < 0 || track.Part[i] == track.Part[i - 1]);
            if (resting)
            {
                start = start < 0 ? i : start;
                continue;
            }

            if (start >= 0 && i - 1 - start >= shortest)
                rests.Add(new Stretch(start, i - 1));
            start = -1;
        }

        return rests;
    }

    private static bool[] Moving(Track track, double usualSpeed)
    {
        var moving = new bool[track.Count];
        int slowSince = -1;
        // The more the positions wander, the longer the way over which a speed is told.
        int window = SpeedWindow + (int)Math.Min(4, 8 * track.Wander);
        for (int i = 0; i < track.Count; i++)
        {
            double speed = track.Speed[i];
            int from = i - window, to = i + window;
            if (track.Unbroken(from, to) && track.Seconds[to] - track.Seconds[from] <= 2 * window)
                speed = track.Between(from, to).Length / (2 * window);
            moving[i] = Math.Max(speed, Math.Min(track.Speed[i], speed + 0.5)) >= RestShare * usualSpeed
                && track.Speed[i] <= Piece.FastestMetresPerSecond;
            if (!moving[i])
                slowSince = slowSince < 0 ? i : slowSince;
            else if (slowSince >= 0)
            {
                // A moment's slowness, such as a wave, is no rest.
                if (slowSince > 0 && i - slowSince < ShortestRest)
                    Array.Fill(moving, true, slowSince, i - slowSince);
                slowSince = -1;
            }
        }

        return moving;
    }

    private static bool[] Turning(Track track)
    {
        var turning = new bool[track.Count];
        int zone = -1;
        double sharpest = 1;
        for (int i = TurnWindow; i < track.Count; i++)
        {
            double cosine = Cosine(track, i);
            if (cosine < TurnZoneCosine)
            {
                zone = zone < 0 ? i : zone;
                sharpest = Math.Min(sharpest, cosine);
            }
            else if (zone >= 0)
            {
                if (sharpest < TurnCosine)
                    Array.Fill(turning, true, zone, i - zone);
                (zone, sharpest) = (-1, 1);
            }
        }

        return turning;
    }

    // Of the angle between where the craft came from and where it went.
    private static double Cosine(Track track, int at)
    {
        int before = at - TurnWindow, after = at + TurnWindow;
        if (!track.Unbroken(before, after))
            return 1;
        Heading came = track.Between(before, at), went = track.Between(at, after);
        return came.Length < ShortestMove || went.Length < ShortestMove ? 1 : came.Cosine(went);
    }
}
