using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using static TrialLog.TestData.Samples.InventedWater;

namespace TrialLog.TestData.Samples;

/// <summary>A season of mirrored outings: start length 50 in, truly best 49¼ in, and the log finds it.</summary>
internal static class SettlesSample
{
    public const double BestInches = 49.25;

    public static byte[] Write(int stream)
    {
        InventedWater water = new(stream);
        InventedPaddler truth = new(BestInches, 0.45, 3.02);
        Paddler ilse = InventedLog.Paddler(water, "Ilse Maro", 50, goalMetres: 16_000);
        Paddle paddle = InventedLog.Paddle(water, "Heron adjustable", 18.5, 47, 53);

        // Wide to begin with, then closer in around what looks best: what the trial cards ask for.
        (double Low, double High)[] pairs =
            [(49, 51), (51, 49), (48.25, 50.75), (50.75, 48.25), (48, 50.5), (50.5, 48), (48, 50.25), (50.25, 48.25), (48.5, 50), (50, 48.5)];
        List<Outing> outings = [];
        for (int week = 0; week < pairs.Length; week++)
            outings.Add(water.Paddle(truth, ilse, InventedLog.Solo, new DateOnly(2026, 3, 7).AddDays(7 * week), Mirrored(paddle, pairs[week].Low, pairs[week].High)));
        return InventedLog.File(
            "Shows a season that settles: two lengths an outing in mirrored order (A B B A), from a start length of 50 in. Invented; what is truly best is 49 1/4 in.",
            [ilse], [paddle], outings);
    }
}
