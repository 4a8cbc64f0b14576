using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using static TrialLog.TestData.Samples.InventedWater;

namespace TrialLog.TestData.Samples;

/// <summary>A squad of eight, each in another state.</summary>
internal static class SquadSample
{
    private static readonly DateOnly FirstDay = new(2026, 3, 1);

    public static byte[] Write(int stream)
    {
        InventedWater water = new(stream);
        List<Paddler> paddlers = [];
        List<Paddle> paddles = [];
        List<Outing> outings = [];

        // Settled, just begun, measured but not begun.
        (Paddler maren, Paddle marens) = Join("Maren Holt", 50, goalMetres: 4_000);
        Season(maren, new(50, 0.45, 3.05), 10, i => i < 2 ? Mirrored(marens, 48.5, 50, 51.5) : i % 2 == 0 ? Mirrored(marens, 48.5, 51)
            : Mirrored(marens, 51.5, 49));
        (Paddler dov, Paddle dovs) = Join("Dov Lasker", 52);
        Season(dov, new(52.5, 0.35, 3.1), 1, _ => Mirrored(dovs, 51, 53));
        Join("Nell Osei", 47.5);

        // Sore at the long setting, more so each week.
        (Paddler pia, Paddle pias) = Join("Pia Renn", 48.5);
        Season(pia, new(48.25, 0.4, 2.85), 5, _ => Mirrored(pias, 47.75, 49.5), (outing, week) => outing with
        {
            Notes = week == 4 ? "Front of the right shoulder; stopped early." : null,
            Pieces = [
                .. outing.Pieces.Select(piece => piece
                with { Soreness = Soreness.FromPoints(piece.Length.Inches > 49 ? Math.Min(1 + 1.5 * week, 6) : 0.5 * week) })],
        });

        // Always the long setting last, and the long setting only late in the season.
        (Paddler kit, Paddle kits) = Join("Kit Varga", 51);
        Season(kit, new(50.5, 0.35, 2.95), 6, i => [(kits, 50 + i / 3), (kits, 50 + i / 3), (kits, 51.5 + i / 3), (kits, 51.5 + i / 3)]);

        // Cannot swap on the water: one length an outing.
        (Paddler tam, Paddle tams) = Join("Tam Ekberg", 51.5, swaps: false);
        Season(tam, new(51, 0.35, 2.9), 8, i => Same(tams, i % 2 == 0 ? 50.75 : 52.25, 3));

        // A flat curve: hardly anything to win by length.
        (Paddler suri, Paddle suris) = Join("Suri Dahl", 49);
        Season(suri, new(49.25, 0.06, 3.0), 9, i => i % 2 == 0 ? Mirrored(suris, 48, 50) : Mirrored(suris, 50, 48));

        // One piece that a wake spoiled.
        (Paddler oren, Paddle orens) = Join("Oren Pike", 53);
        Season(oren, new(53.75, 0.4, 3.15), 4, _ => Mirrored(orens, 52, 54), (outing, week) => week != 2 ? outing : outing with
        {
            Pieces = [.. outing.Pieces.Select(piece => piece.Order != 3 ? piece : piece with
            {
                Time = PieceTime.FromSeconds(Math.Round(piece.Time.Seconds * 1.09, 1)),
                Notes = "ferry wake",
            })],
        });

        return InventedLog.File(
            "Shows a squad of eight: settled, just begun, not begun, sore, lengths tangled with order, no swapping on the water, a flat " +
                "curve, a spoiled piece. Invented.",
            paddlers, paddles, outings);

        (Paddler, Paddle) Join(string name, double reach, bool swaps = true, double goalMetres = 12_000)
        {
            Paddler paddler = InventedLog.Paddler(water, name, reach, goalMetres) with { SwapsOnWater = swaps };
            Paddle paddle = InventedLog.Paddle(water, name.Split(' ')[0] + "'s adjustable", 18.5, reach - 3, reach + 3);
            paddlers.Add(paddler);
            paddles.Add(paddle);
            return (paddler, paddle);
        }

        void Season(
            Paddler paddler, InventedPaddler truth, int weeks, Func<int, IReadOnlyList<(Paddle Paddle, double Inches)>> card,
                Func<Outing, int, Outing>? then = null)
        {
            for (int week = 0; week < weeks; week++)
            {
                // Seasons end together, so that the squad's latest outings are about the same week.
                DateOnly date = FirstDay.AddDays(7 * (10 - weeks + week));
                Outing outing = water.Paddle(truth, paddler, InventedLog.Solo, date, card(week));
                outings.Add(then is null ? outing : then(outing, week));
            }
        }
    }
}
