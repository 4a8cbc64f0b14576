using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Screens.Base;
using TrialLog.Screens.Forms;
using TrialLog.TestData.Recordings.Simulation;

namespace TrialLog.TestData.Samples;

/// <summary>What is true of an invented paddler: what the log is there to find out.</summary>
/// <param name="BestInches">Best length in a solo canoe with the reference blade.</param>
/// <param name="Curvature">Percent of speed lost per square inch away from it.</param>
/// <param name="Speed">Speed in a solo canoe at effort 6 on a fair day, m/s.</param>
internal sealed record InventedPaddler(double BestInches, double Curvature, double Speed);

/// <summary>Effort that the paddler does not tell: always 6, and in truth more.</summary>
/// <param name="PerInch">CR10 points pulled harder for an inch of length.</param>
/// <param name="AboutInches">From which length on.</param>
/// <param name="Spread">How much it strays besides, points.</param>
internal sealed record Unsaid(double PerInch, double AboutInches, double Spread);

/// <summary>
/// An invented season: the same response as the tuning model's (docs/model.md), with conditions that vary by 2.5 % between outings
/// and pieces by 1 % within one, as published for racing (Smith and Hopkins 2011). Times are to a tenth of a second, as watches give them.
/// </summary>
internal sealed class InventedWater(int stream)
{
    private const double BetweenOutings = 2.5, WithinOuting = 1.0, FadePerPiece = -0.3, PerEffortPoint = 3, PerLogDistance = -6,
        UnsaidBeats = 9;
    private static readonly string[] Waters = ["flat", "light chop", "chop", "following swell", "flat, tide running"];
    private readonly MersenneTwister _random = new(stream);
    private int _ids;

    /// <summary>Ids that are the same each time; they are not in the files.</summary>
    public Guid NewId() => new(++_ids, 0, 0, [0x54, 0x4C, 0, 0, 0, 0, 0, 0]);

    /// <summary>A normal draw.</summary>
    public double Normal(double spread) => spread * MathNet.Numerics.Distributions.Normal.Sample(_random, 0, 1);

    /// <summary>One of these.</summary>
    public T One<T>(IReadOnlyList<T> of) => of[(int)(_random.NextDouble() * of.Count)];

    /// <summary>Paddles an outing.</summary>
    /// <param name="truth">What is true of the paddler.</param>
    /// <param name="paddler">Whose it is.</param>
    /// <param name="hull">In what.</param>
    /// <param name="date">When.</param>
    /// <param name="card">The paddle and length of each piece.</param>
    /// <param name="metres">How far each piece goes.</param>
    /// <param name="hullPercent">Speed of the hull over a solo canoe, percent.</param>
    /// <param name="formPercent">Form on that day, percent.</param>
    /// <param name="unsaid">Effort that is not told; null where it is told as it was.</param>
    public Outing Paddle(
        InventedPaddler truth, Paddler paddler, Hull hull, DateOnly date, IReadOnlyList<(Paddle Paddle, double Inches)> card,
        double metres = 1000, double hullPercent = 0, double formPercent = 0, Unsaid? unsaid = null)
    {
        double day = Normal(BetweenOutings);
        int wind = Math.Clamp((int)Math.Round(2 - day / 2 + Normal(0.8)), 0, 6);
        List<Piece> pieces = [];
        for (int i = 0; i < card.Count; i++)
        {
            double effort = unsaid is not null ? 6 : 6 + (_random.NextDouble() < 0.2 ? 0.5 : 0);
            double more = unsaid is null ? 0 : unsaid.PerInch * (card[i].Inches - unsaid.AboutInches) + Normal(unsaid.Spread);
            double best = truth.BestInches + SeatHeightRule.ByCrewInches(hull.Crew) + ExposedShaftRule.OffsetInches(card[i].Paddle.Blade);
            double away = card[i].Inches - best;
            double percent = hullPercent + formPercent + day + FadePerPiece * i + PerEffortPoint * (effort + more - 6)
                + PerLogDistance * Math.Log(metres / 1000)
                - truth.Curvature / hull.Crew * away * away + Normal(WithinOuting);
            double seconds = Math.Round(metres / (truth.Speed * Math.Exp(percent / 100)), 1);
            pieces.Add(new Piece
            {
                Id = NewId(),
                Order = i + 1,
                PaddleId = card[i].Paddle.Id,
                Length = Length.FromInches(card[i].Inches),
                Distance = Distance.FromMetres(metres),
                Time = PieceTime.FromSeconds(seconds),
                Effort = Effort.FromPoints(effort),
                HeartRate = HeartRate.FromBeatsPerMinute(
                    (int)Math.Round(138 + 5 * (effort - 6) + UnsaidBeats * more + 1.5 * i + Normal(3))),
                StrokeRate = StrokeRate.FromStrokesPerMinute(Math.Round(56 + Normal(1.5))),
                Soreness = Soreness.FromPoints(0),
            });
        }

        return new Outing
        {
            Id = NewId(),
            PaddlerId = paddler.Id,
            HullId = hull.Id,
            Date = date,
            Time = new TimeOnly(7, 0).AddMinutes(15 * (int)(_random.NextDouble() * 4)),
            Place = One(["Tarrow Sound, inner reach", "Tarrow Sound, Heron Spit", "Tarrow Sound, slipway to Grey Buoy"]),
            Water = wind >= 4 ? One(Waters.Skip(2).ToList()) : One(Waters.Take(2).ToList()),
            Wind = Beaufort.FromNumber(wind),
            Pieces = pieces,
        };
    }

    /// <summary>A card in mirrored order: A B B A, or A B C C B A.</summary>
    public static IReadOnlyList<(Paddle Paddle, double Inches)> Mirrored(Paddle paddle, params double[] inches) =>
        [.. inches.Concat(inches.Reverse()).Select(length => (paddle, length))];

    /// <summary>Every piece at one length.</summary>
    public static IReadOnlyList<(Paddle Paddle, double Inches)> Same(Paddle paddle, double inches, int pieces) =>
        [.. Enumerable.Repeat((paddle, inches), pieces)];
}
