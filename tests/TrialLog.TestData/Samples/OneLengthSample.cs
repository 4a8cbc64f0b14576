using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using static TrialLog.TestData.Samples.InventedWater;

namespace TrialLog.TestData.Samples;

/// <summary>Two years of one length an outing, moved by feel: conditions drown the length.</summary>
internal static class OneLengthSample
{
    public static byte[] Write(int stream)
    {
        InventedWater water = new(stream);
        InventedPaddler truth = new(50.5, 0.35, 2.9);
        Paddler bram = InventedLog.Paddler(water, "Bram Okello", 51.5, goalMetres: 16_000);
        Paddle paddle = InventedLog.Paddle(water, "Curlew adjustable", 18.5, 48, 54);
        List<Outing> outings = [];
        double length = 51.5, step = -0.25, before = double.NaN;
        for (int i = 0; i < 88; i++)
        {
            DateOnly date = new DateOnly(2024, 4, 6).AddDays(8 * i + (i % 3));
            double form = Math.Min(2, i * 0.03);
            Outing outing = water.Paddle(truth, bram, InventedLog.Solo, date, Same(paddle, length, 1 + i % 2), 2000, formPercent: form);
            outings.Add(outing);

            // Every fourth outing a quarter inch on if the last month felt faster, else back.
            if (i % 4 == 3)
            {
                double month = outings.TakeLast(4).Average(one => one.Pieces[0].MetresPerSecond);
                step = month >= before || double.IsNaN(before) ? step : -step;
                before = month;
                length = Math.Clamp(length + step, 50.5, 52);
            }
        }

        return InventedLog.File(
            "Shows two years of one length an outing, moved a quarter inch at a time by feel: wind and form move the pace by more than " +
                "the length does, so this log cannot tell the best length; mirrored outings would. Invented.",
            [bram], [paddle], outings);
    }
}
