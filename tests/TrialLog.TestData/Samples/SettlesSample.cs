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
        Paddler ilse = InventedLog.Paddler(water, "Ilse Maro", 50, goalMetres: 5_000);
        Paddle paddle = InventedLog.Paddle(water, "Heron adjustable", 18.5, 47, 53);

        // Three lengths for the first two outings, then two about what looks best: what the trial cards ask for.
        double[][] cards =
            [[48.5, 50, 51.5], [51.25, 49.75, 48.25], [48, 50.75], [50.75, 48], [48.25, 50.75], [50.5, 48], [48, 50.5], [50.5, 48.25],
                [48.25, 50.5], [50.25, 48.25]];
        List<Outing> outings = [];
        for (int week = 0; week < cards.Length; week++)
            outings.Add(
                water.Paddle(truth, ilse, InventedLog.Solo, new DateOnly(2026, 3, 7).AddDays(7 * week), Mirrored(paddle, cards[week])));
        return InventedLog.File(
            "Shows a season that settles: three lengths an outing, then two, in mirrored order, from a start length of 50 in. Invented; " +
                "what is truly best is 49 1/4 in.",
            [ilse], [paddle], outings);
    }
}
