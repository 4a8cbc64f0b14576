using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using static TrialLog.TestData.Samples.InventedWater;

namespace TrialLog.TestData.Samples;

/// <summary>
/// A squad of twenty over a year: eight have a paddle of their own, twelve share the club's two. Among them one who hurt and has been
/// silent since, one whose log never settles, one who paddles in a crew of six alone, and one whose lengths are tangled with the order.
/// </summary>
internal static class SquadYearSample
{
    /// <summary>Who hurt at the last outing.</summary>
    public const string Sore = "Wren Aldous";

    /// <summary>Who moves one length by feel, so that nothing settles.</summary>
    public const string Hopeless = "Odo Farrant";

    /// <summary>Who paddles in a crew of six alone.</summary>
    public const string SixOnly = "Joss Amadi";

    /// <summary>Whose longer length always comes last.</summary>
    public const string Tangled = "Sten Marlow";

    /// <summary>The day of the last outing.</summary>
    public static readonly DateOnly LastDay = new(2026, 4, 26);

    private static readonly string[] Others =
    [
        "Mila Orne", "Rafe Dunmore", "Nia Corbel", "Aldo Prane", "Vesna Lorne", "Gil Hathow", "Ines Halden", "Bea Rowan",
        "Anouk Sayer", "Cato Brandt", "Della Moss", "Emre Toll", "Freya Quist", "Hale Ivers", "Lio Castan", "Runa Veld",
    ];

    public static byte[] Write(int stream)
    {
        InventedWater water = new(stream);
        List<Paddler> paddlers = [];
        List<Paddle> paddles =
        [
            InventedLog.Paddle(water, "Boathouse red", 18.5, 44, 56) with { BelongsToClub = true },
            InventedLog.Paddle(water, "Long loaner", 19, 44.5, 56.5) with { BelongsToClub = true },
        ];
        List<Outing> outings = [];

        (Paddler wren, Paddle wrens) = Join(Sore, 48.5, own: true);
        for (int week = 0; week < 6; week++)
        {
            // The last outing was five weeks ago, and it hurt.
            double worst = week < 5 ? 0.5 * week : 6;
            Outing outing = water.Paddle(new(48.25, 0.4, 2.85), wren, InventedLog.Solo, LastDay.AddDays(-7 * (10 - week)),
                Mirrored(wrens, 47.5, 49.5));
            outings.Add(outing with
            {
                Notes = week == 5 ? "Front of the right shoulder; stopped early." : null,
                Pieces = [
                    .. outing.Pieces.Select(
                    piece => piece with { Soreness = Soreness.FromPoints(piece.Length.Inches > 49 ? worst : Math.Floor(worst) / 2) })],
            });
        }

        (Paddler odo, Paddle odos) = Join(Hopeless, 51.5, own: true);
        for (int outing = 0; outing < 40; outing++)
            outings.Add(
                water.Paddle(new(50.5, 0.3, 2.9), odo, InventedLog.Solo, LastDay.AddDays(-9 * (39 - outing)),
                Same(odos, 51 + 0.25 * (outing / 4 % 4), 2), 2000));

        (Paddler joss, Paddle josss) = Join(SixOnly, 52, own: true);
        for (int outing = 0; outing < 10; outing++)
            outings.Add(
                water.Paddle(new(51, 0.4, 2.8), joss, InventedLog.Six, LastDay.AddDays(-14 * (9 - outing)),
                outing % 2 == 0 ? Mirrored(josss, 51, 53) : Mirrored(josss, 53.5, 51.5), 1500, 20));

        (Paddler sten, Paddle stens) = Join(Tangled, 51, own: true);
        for (int outing = 0; outing < 8; outing++)
            outings.Add(
                water.Paddle(new(50.5, 0.35, 2.95), sten, InventedLog.Solo, LastDay.AddDays(-7 * (7 - outing)),
                [(stens, 50), (stens, 50), (stens, 51.5), (stens, 51.5)]));

        // The others go through what the cards ask for: wide at first, then about what looks best; the newest members have only begun.
        for (int at = 0; at < Others.Length; at++)
        {
            double reach = 47 + 0.5 * (at * 7 % 13), best = reach + water.Normal(0.8);
            InventedPaddler truth = new(best, 0.35 * Math.Exp(water.Normal(0.5)), 2.8 + 0.02 * (at * 5 % 17));
            (Paddler paddler, Paddle paddle) = Join(Others[at], reach, own: at < 4, club: at % 2);
            int tested = at * 5 % 11, easy = 4 + at * 3 % 9;
            for (int outing = 0; outing < easy + tested; outing++)
            {
                DateOnly day = LastDay.AddDays(-(at % 3) - 364 * (easy + tested - 1 - outing) / (easy + tested));
                double centre = outing < easy ? reach : reach + (best - reach) * Math.Min(1, (outing - easy) / 3.0);
                double half = outing - easy < 3 ? 1.25 : 1;
                double low = Setting(centre - half), high = Setting(centre + half);
                outings.Add(
                    water.Paddle(truth, paddler, InventedLog.Solo, day, outing < easy ? Same(paddle, Setting(reach), 2) : outing % 2 == 0
                    ? Mirrored(paddle, low, high) : Mirrored(paddle, high, low)));
            }
        }

        return InventedLog.File(
            "Shows a squad of twenty over a year: most on their way or done, one sore and silent since, one whose log never settles, one " +
                "in a crew of six alone, one with lengths tangled with order. Invented.",
            paddlers, paddles, outings);

        static double Setting(double inches) => Math.Round(inches * 4) / 4;

        (Paddler, Paddle) Join(string name, double reach, bool own, int club = 0)
        {
            Paddler paddler = InventedLog.Paddler(water, name, reach, goalMetres: 12_000);
            paddlers.Add(paddler);
            if (own)
                paddles.Add(InventedLog.Paddle(water, name.Split(' ')[0] + "'s adjustable", 18.5, reach - 3, reach + 3)
                    with
                { OwnerId = paddler.Id });
            return (paddler, own ? paddles[^1] : paddles[club]);
        }
    }
}
