using MathNet.Numerics.Distributions;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Study.Seasons;

/// <summary>
/// A paddler with a true best length and curvature, and all the chance of a season drawn beforehand, so that every method
/// meets the same water.
/// </summary>
internal sealed class SimulatedPaddler
{
    public const int Outings = 14;
    private const double BaseSpeed = 3, Metres = 1000, HeldEffort = 6;
    private readonly World _world;
    private readonly double[] _outing;
    private readonly double[,] _piece, _effort;

    public SimulatedPaddler(World world, ulong seed, int number)
    {
        _world = world;
        Random random = new(Mixed(seed, (ulong)number));
        Best = Start.Inches + world.StartSpread * Normal.Sample(random, 0, 1);
        Curvature = world.CurvatureMedian * Math.Exp(world.CurvatureLogSpread * Normal.Sample(random, 0, 1));
        _outing = new double[Outings];
        _piece = new double[Outings, world.Pieces];
        _effort = new double[Outings, world.Pieces];
        for (int j = 0; j < Outings; j++)
        {
            _outing[j] = world.OutingSpread * Normal.Sample(random, 0, 1) + world.TrendPerWeek * j;
            for (int i = 0; i < world.Pieces; i++)
            {
                _piece[j, i] = world.PieceSpread * Normal.Sample(random, 0, 1) + world.FadePerPiece * i;
                double spoiled = random.NextDouble(), slowDown = Exponential.Sample(random, 1 / world.SpoiledMean), effort = Normal.Sample(random, 0, 1);
                if (spoiled < world.SpoiledShare)
                    _piece[j, i] -= slowDown;
                _effort[j, i] = world.EffortSpread * effort;
            }
        }
    }

    /// <summary>Where every search starts.</summary>
    public static Length Start => Length.FromInches(50);

    /// <summary>The true best length, inches.</summary>
    public double Best { get; }

    /// <summary>The true curvature.</summary>
    public double Curvature { get; }

    /// <summary>True loss of speed at a length, percent.</summary>
    public double Loss(double inches)
    {
        double away = inches - Best;
        return Curvature * away * away * (away > 0 ? _world.LongSideFactor : 1);
    }

    /// <summary>Paddles those lengths on an outing.</summary>
    /// <param name="outing">Which, from 0.</param>
    /// <param name="lengths">A length for each piece.</param>
    /// <param name="paddler">Whose log it goes to.</param>
    /// <param name="hull">The hull.</param>
    /// <param name="paddle">The paddle.</param>
    public Outing Paddle(int outing, IReadOnlyList<Length> lengths, Paddler paddler, Hull hull, Paddle paddle)
    {
        List<Piece> pieces = [];
        for (int i = 0; i < _world.Pieces; i++)
        {
            double percent = _outing[outing] + _piece[outing, i] + _world.EffortPerPoint * _effort[outing, i] - Loss(lengths[i].Inches);
            double told = Math.Clamp(Math.Round((HeldEffort + _effort[outing, i]) * 2) / 2, 0, 10);
            pieces.Add(new()
            {
                Id = Identity(outing, i + 1),
                Order = i + 1,
                PaddleId = paddle.Id,
                Length = lengths[i],
                Distance = Distance.FromMetres(Metres),
                Time = PieceTime.FromSeconds(Metres / (BaseSpeed * Math.Exp(percent / 100))),
                Effort = Effort.FromPoints(told),
            });
        }

        return new()
        {
            Id = Identity(outing, 0),
            PaddlerId = paddler.Id,
            HullId = hull.Id,
            Date = new DateOnly(2026, 1, 5).AddDays(7 * outing),
            Pieces = pieces,
        };
    }

    private static Guid Identity(int outing, int piece) => new(outing + 1, (short)piece, 0, 0, 0, 0, 0, 0, 0, 0, 0);

    /// <summary>SplitMix64's finaliser, so that neighbouring numbers give unrelated seasons. Source: Steele, Lea and Flood 2014, OOPSLA.</summary>
    private static int Mixed(ulong seed, ulong number)
    {
        ulong z = seed * 0x9E3779B97F4A7C15 + number * 0xD1B54A32D192ED03 + 0x632BE59BD9B4E019;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return (int)((z ^ (z >> 31)) & 0x7FFFFFFF);
    }
}
