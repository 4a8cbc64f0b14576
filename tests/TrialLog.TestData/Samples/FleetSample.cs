using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using static TrialLog.TestData.Samples.InventedWater;

namespace TrialLog.TestData.Samples;

/// <summary>Three hulls and two blades: what was learned in one carries to the others.</summary>
internal static class FleetSample
{
    public static byte[] Write(int stream)
    {
        InventedWater water = new(stream);
        InventedPaddler truth = new(48, 0.5, 2.85);
        Paddler tova = InventedLog.Paddler(water, "Tova Lind", 48.5, goalMetres: 10_000);
        Paddle tern = InventedLog.Paddle(water, "Tern adjustable", 18.5, 46, 52);
        Paddle gannet = InventedLog.Paddle(water, "Gannet long blade", 20, 47, 54);
        (Hull Hull, double Percent, Paddle Paddle, double Low, double High)[] season =
        [
            (InventedLog.Solo, 0, tern, 47.5, 49.5), (InventedLog.Solo, 0, tern, 47, 49), (InventedLog.Two, 9, tern, 46, 48),
            (InventedLog.Six, 20, tern, 48, 50), (InventedLog.Solo, 0, gannet, 48.5, 50.5), (InventedLog.Two, 9, tern, 46.25, 48.25),
            (InventedLog.Solo, 0, tern, 47.25, 49), (InventedLog.Six, 20, gannet, 49.5, 51.5), (InventedLog.Solo, 0, gannet, 48.75, 50.5),
            (InventedLog.Two, 9, gannet, 47.5, 49.5), (InventedLog.Six, 20, tern, 48, 50.5), (InventedLog.Solo, 0, tern, 47, 48.75),
            (InventedLog.Two, 9, tern, 46, 48), (InventedLog.Solo, 0, gannet, 48.5, 50.25), (InventedLog.Six, 20, gannet, 49, 51.5),
            (InventedLog.Solo, 0, tern, 47.25, 48.75),
        ];
        List<Outing> outings = [];
        for (int i = 0; i < season.Length; i++)
        {
            (Hull hull, double percent, Paddle paddle, double low, double high) = season[i];
            double[] card = i % 2 == 0 ? [low, high] : [high, low];
            outings.Add(
                water.Paddle(truth, tova, hull, new DateOnly(2026, 2, 8).AddDays(6 * i), Mirrored(paddle, card),
                hull.Crew == 6 ? 1500 : 1000, percent));
        }

        return InventedLog.File(
            "Shows three hulls (OC1, OC2, OC6) and two blades, one and a half inches apart in length: one best length, carried by seat " +
                "height and blade. Invented.",
            [tova], [tern, gannet], outings);
    }
}
