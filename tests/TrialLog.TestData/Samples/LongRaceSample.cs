using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using static TrialLog.TestData.Samples.InventedWater;

namespace TrialLog.TestData.Samples;

/// <summary>
/// A race of 30 km tested with pieces of a kilometre: they find the best length for themselves and leave the race's open.
/// </summary>
internal static class LongRaceSample
{
    public static byte[] Write(int stream)
    {
        InventedWater water = new(stream);
        InventedPaddler truth = new(49.75, 0.5, 2.95);
        Paddler oona = InventedLog.Paddler(water, "Oona Brack", 50, goalMetres: 30_000);
        Paddle paddle = InventedLog.Paddle(water, "Grebe adjustable", 18.5, 47, 53);
        double[][] cards =
            [[48.5, 50, 51.5], [51.25, 49.75, 48.25], [48.5, 51], [51, 48.5], [48.5, 51], [51, 48.75], [48.5, 51], [50.75, 48.5],
                [48.5, 50.75], [50.75, 48.75], [48.5, 50.75], [50.75, 48.5]];
        List<Outing> outings = [];
        for (int week = 0; week < cards.Length; week++)
            outings.Add(
                water.Paddle(truth, oona, InventedLog.Solo, new DateOnly(2026, 2, 7).AddDays(7 * week), Mirrored(paddle, cards[week])));
        return InventedLog.File(
            "Shows pieces too short for the race: a kilometre each before 30 km. However many are paddled, they cannot settle it; longer " +
                "ones would. Invented; what is truly best in a piece of a kilometre is 49 3/4 in.",
            [oona], [paddle], outings);
    }
}
