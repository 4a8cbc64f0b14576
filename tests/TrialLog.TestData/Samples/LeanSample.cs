using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using static TrialLog.TestData.Samples.InventedWater;

namespace TrialLog.TestData.Samples;

/// <summary>
/// Somebody who pulls a quarter of a point an inch harder with the longer paddle and says 6 all the same: four outings seen, four with
/// hidden lengths, the strap on in all.
/// </summary>
internal static class LeanSample
{
    public const double BestInches = 49.5;

    public static byte[] Write(int stream)
    {
        InventedWater water = new(stream);
        InventedPaddler truth = new(BestInches, 0.4, 3.0);
        Paddler tavi = InventedLog.Paddler(water, "Tavi Lund", 50);
        Paddle paddle = InventedLog.Paddle(water, "Dunlin adjustable", 18.5, 47, 53);
        double[][] cards =
            [[48.5, 50, 51.5], [51.5, 50.25, 48.75], [49, 51.5], [51.25, 48.75], [48.25, 50.75], [50.75, 48.25], [48, 50.5], [50.5, 48.25]];
        List<Outing> outings = [];
        for (int week = 0; week < cards.Length; week++)
        {
            bool hidden = week >= 4;
            Unsaid unsaid = new(hidden ? 0 : 0.25, tavi.Body.SeatedReach!.Value.Inches, 0.3);
            outings.Add(water.Paddle(truth, tavi, InventedLog.Solo, new DateOnly(2026, 4, 4).AddDays(7 * week),
                Mirrored(paddle, cards[week]), unsaid: unsaid) with
            { Blind = hidden });
        }

        return InventedLog.File(
            "Shows a paddler who pulls harder with the longer paddle and says 6 all the same: the strap on in every outing, " +
                "lengths hidden " +
                "in the last four. Invented; what is truly best is 49 1/2 in.",
            [tavi], [paddle], outings);
    }
}
