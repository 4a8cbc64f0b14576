using TrialLog.Recordings.Pieces;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.TestData.Recordings.Simulation;

/// <summary>Paddles a plan and records it on a faulty watch.</summary>
internal static class Simulator
{
    /// <summary>The outing; the same plan and seed give the same one.</summary>
    public static SimulatedOuting Run(OutingPlan plan, int seed)
    {
        var random = new Random(seed);
        var paddler = new SimulatedPaddler(plan, random);
        var pieces = new List<TruePiece>();
        var presses = new List<double>();
        double easy = plan.EasyShare * plan.Speeds.Average();

        paddler.Rest(20);
        paddler.Easy(plan.WarmUp, easy);
        if (!plan.StraightFromWarmUp)
            paddler.Rest(60);
        foreach (double speed in plan.Speeds)
        {
            // The way home after one out: the current then runs against.
            bool home = plan.Shape == OutingShape.Alternating && pieces.Count % 2 == 1;
            if (pieces.Count > 0)
                paddler.Rest(plan.Rest);
            double from = paddler.Now;
            List<(double Start, double End, double Speed)> legs = [paddler.Leg(plan.Leg, speed)];
            if (plan.Shape == OutingShape.RoundTrips)
            {
                paddler.TurnAbout(speed);
                legs.Add(paddler.Leg(plan.Leg, speed));
            }

            double current = plan.Shape == OutingShape.RoundTrips ? 0 : home ? -plan.Current : plan.Current;
            pieces.Add(
                new TruePiece(from, paddler.Now, legs.Average(l => l.Speed),
                [.. legs.Select(l => (l.Start, l.End))])
                { OverGround = legs.Average(l => l.Speed) + current });
            presses.AddRange([from, pieces[^1].End]);
            Between(plan, paddler, speed, random);
        }

        paddler.Rest(60);
        paddler.Easy(plan.WarmUp, easy);
        paddler.Rest(20);
        double start = paddler.Points[0].Time;
        List<RecordedPoint> noisy = Watch.Noisy(paddler.Points, plan.Watch, random);
        return new SimulatedOuting
        {
            True = paddler.Points,
            Noisy = noisy,
            Recorded = Watch.Spoil(noisy, plan.Watch, random),
            Pieces = pieces,
            Presses = plan.Laps ? [.. presses.Select(p => start + p + random.Next(-1, 2))] : [],
            Laps = plan.Programmed ? Laps(pieces, start, paddler.Now, random) : null,
            Current = plan.Current,
            Offset = plan.Start.Offset,
        };
    }

    // The paddler goes within some seconds of the signal, and the watch's own distance ends the step about where the piece ends.
    private static List<WrittenLap> Laps(List<TruePiece> pieces, double start, double lasts, Random random)
    {
        var laps = new List<WrittenLap>();
        double from = start;
        foreach (TruePiece piece in pieces)
        {
            double go = Math.Floor(start + piece.Start - random.Next(0, 4)), stop = Math.Ceiling(start + piece.End + random.Next(-1, 3));
            laps.Add(new WrittenLap(from, go, laps.Count == 0 ? 0 : 1, laps.Count == 0 ? 2 : 1, laps.Count));
            laps.Add(new WrittenLap(go, stop, 2, 0, laps.Count));
            from = stop;
        }

        laps.Add(new WrittenLap(from, start + lasts, 0, 3, laps.Count));
        return laps;
    }

    // From the end of a piece to where the next begins, but for the rest before it.
    private static void Between(OutingPlan plan, SimulatedPaddler paddler, double speed, Random random)
    {
        if (plan.Shape == OutingShape.InARow)
            return;
        if (plan.Shape == OutingShape.EasyReturn)
        {
            paddler.Rest(plan.PauseBeforeReturn ?? random.Next(3, 50));
            paddler.TurnAbout(0.8 * speed);
            paddler.EasyWay(plan.Leg, plan.ReturnShare * speed);
            paddler.TurnAbout(0.8 * speed);
            return;
        }

        if (plan.Rest < 60)
        {
            paddler.ComeAbout();
            return;
        }

        paddler.Rest(plan.Rest / 3);
        paddler.Easy(12, 0.4 * speed);
        paddler.TurnAbout(0.8 * speed);
    }
}
