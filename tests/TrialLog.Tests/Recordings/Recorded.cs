using TrialLog.Recordings;
using TrialLog.Recordings.Pieces;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.Tests.Recordings;

/// <summary>Simulated outings, recorded and read back.</summary>
internal static class Recorded
{
    public static RecordedOuting Read(SimulatedOuting outing) =>
        RecordingReader.Read(new MemoryStream(FitWriter.Activity(outing.Recorded, outing.Presses, outing.Offset)), "simulated.fit");

    public static RecordedOuting Read(OutingPlan plan, int seed = 5) => Read(Simulator.Run(plan, seed));

    /// <summary>Straight and steady at that speed, then the same way home: positions every second, no noise.</summary>
    public static List<RecordedPoint> OutAndBack(double outSpeed, double backSpeed, double metres, Func<int, bool>? lost = null)
    {
        var points = new List<RecordedPoint>();
        double latitude = 12.3, longitude = -150.6, time = 1_777_000_000;
        void Go(double north, double seconds)
        {
            for (int i = 0; i < seconds; i++, time++)
            {
                if (lost?.Invoke(points.Count) != true)
                    points.Add(new RecordedPoint(time, latitude, longitude, 140, 60));
                (latitude, longitude) = Water.Moved(latitude, longitude, north, 0);
            }
        }

        Go(0, 60);
        Go(outSpeed, metres / outSpeed);
        Go(0.3, 10);
        Go(-backSpeed, metres / backSpeed);
        Go(0, 60);
        return points;
    }

    public static RecordedOuting Read(IReadOnlyList<RecordedPoint> points) =>
        RecordingReader.Read(new MemoryStream(FitWriter.Activity(points, [], null)), "made.fit");
}
