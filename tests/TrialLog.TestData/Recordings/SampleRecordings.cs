using TrialLog.Domain.Log;
using TrialLog.Recordings.Pieces;
using TrialLog.TestData.Recordings.Fuzzing;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.TestData.Recordings;

/// <summary>
/// <c>recordings</c>: the sample recordings of Tarrow Sound. The positions lie in the open ocean, where there is no such
/// place, and the paddlers are invented.
/// </summary>
internal static class SampleRecordings
{
    /// <summary>Writes them all; 0.</summary>
    public static int Write(string folder)
    {
        Directory.CreateDirectory(folder);
        foreach ((string name, byte[] bytes) in All())
            File.WriteAllBytes(Path.Combine(folder, name), bytes);
        return 0;
    }

    /// <summary>Name and bytes of each.</summary>
    public static IEnumerable<(string Name, byte[] Bytes)> All()
    {
        var watch = new WatchFaults { NoiseFactor = 0.5, Dropouts = 1, Glitches = 0 };
        // Ilse, OC1: four round trips of a kilometre with the lap button.
        SimulatedOuting laps = Simulator.Run(
            new OutingPlan { Speeds = [3.18, 3.21, 3.205, 3.16], Current = 0.15, Laps = true, Watch = watch }, 11);
        yield return ("ilse-round-trips-laps.fit", FitWriter.Activity(laps.Recorded, laps.Presses, laps.Offset));

        // Bram, OC2: four round trips, no lap button, straight from the warm-up, a stronger current.
        SimulatedOuting steady = Simulator.Run(
            new OutingPlan
            {
                Start = new DateTimeOffset(2026, 5, 16, 7, 10, 0, TimeSpan.FromHours(-10)),
                Speeds = [3.42, 3.45, 3.44, 3.40], Leg = 600, Course = 115, Current = -0.3, StraightFromWarmUp = true, Watch = watch,
            },
            12);
        yield return ("bram-round-trips.gpx.gz", DamagedFiles.Gzip(XmlWriting.Gpx(steady.Recorded, "Tarrow Sound")));

        // Tova, OC1: six one-way pieces, out and home by turns, lap button, a worn watch.
        SimulatedOuting oneWay = Simulator.Run(
            new OutingPlan
            {
                Start = new DateTimeOffset(2026, 5, 23, 17, 30, 0, TimeSpan.FromHours(-10)),
                Speeds = [2.98, 3.02, 3.01, 3.00, 3.02, 2.96], Leg = 750, Shape = OutingShape.Alternating, Current = 0.1, Laps = true,
                Watch = new WatchFaults { NoiseFactor = 1, Dropouts = 3, Glitches = 3 },
            },
            13);
        yield return ("tova-one-way-laps.tcx.gz", DamagedFiles.Gzip(XmlWriting.Tcx(oneWay.Recorded, oneWay.Presses)));
    }
}
