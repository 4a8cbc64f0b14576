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

    /// <summary>How long a goal event takes that carried answers are asked for, seconds.</summary>
    public const double GoalSeconds = 3600;

    private const int MostPieces = 16;
    private const double BaseSpeed = 3, Metres = 1000, HeldEffort = 6, RestingBeats = 150, UsedTo = 50, Near = 0.5, WearsOffOver = 8;
    private readonly World _world;
    private readonly double[] _outing;
    private readonly double[,] _piece, _effort, _heart;
    private readonly double _perPoint, _drift;

    public SimulatedPaddler(World world, ulong seed, int number)
    {
        _world = world;
        Random random = new(Mixed(seed, (ulong)number));
        Best = Start.Inches + world.StartShift + world.StartSpread * Normal.Sample(random, 0, 1);
        Curvature = world.CurvatureMedian * Math.Exp(world.CurvatureLogSpread * Normal.Sample(random, 0, 1));
        HullOffset = world.HullSpread * Normal.Sample(random, 0, 1);
        PerLogDuration = world.DurationSpread * Normal.Sample(random, 0, 1);
        _perPoint = 9 * Math.Max(0.3, 1 + 0.25 * Normal.Sample(random, 0, 1));
        _drift = 1.5 + Normal.Sample(random, 0, 1);
        _outing = new double[Outings];
        _piece = new double[Outings, MostPieces];
        _effort = new double[Outings, MostPieces];
        _heart = new double[Outings, MostPieces];
        for (int j = 0; j < Outings; j++)
        {
            _outing[j] = world.OutingSpread * Normal.Sample(random, 0, 1) + world.TrendPerWeek * j;
            for (int i = 0; i < MostPieces; i++)
            {
                _piece[j, i] = world.PieceSpread * Normal.Sample(random, 0, 1) + world.FadePerPiece * i;
                double spoiled = random.NextDouble(), slowDown = Exponential.Sample(random, 1 / world.SpoiledMean),
                    effort = Normal.Sample(random, 0, 1);
                if (spoiled < world.SpoiledShare)
                    _piece[j, i] -= slowDown;
                _effort[j, i] = world.EffortSpread * effort;
                _heart[j, i] = (world.HeartRateError ?? 0) * Normal.Sample(random, 0, 1);
            }
        }
    }

    /// <summary>Where every search starts.</summary>
    public static Length Start => Length.FromInches(50);

    /// <summary>The true best length in the hull and over the distance that are paddled, inches.</summary>
    public double Best { get; }

    /// <summary>The true curvature.</summary>
    public double Curvature { get; }

    /// <summary>How much longer the best length is in another hull than its seat explains, inches.</summary>
    public double HullOffset { get; }

    /// <summary>How the best length moves with the logarithm of the duration, inches.</summary>
    public double PerLogDuration { get; }

    /// <summary>The true best length over the long goal event, inches.</summary>
    public double BestOverGoal => Best + PerLogDuration * Math.Log(GoalSeconds / (Metres / BaseSpeed));

    /// <summary>True loss of speed at a length, percent.</summary>
    public double Loss(double inches)
    {
        double away = inches - Best;
        return Curvature * away * away * (away > 0 ? _world.LongSideFactor : 1);
    }

    /// <summary>Paddles those lengths on an outing.</summary>
    /// <param name="outing">Which, from 0.</param>
    /// <param name="lengths">A length for each piece.</param>
    /// <param name="before">The outings before it, which say what the body is used to.</param>
    /// <param name="paddler">Whose log it goes to.</param>
    /// <param name="hull">The hull.</param>
    /// <param name="paddle">The paddle.</param>
    public Outing Paddle(int outing, IReadOnlyList<Length> lengths, IReadOnlyList<Outing> before, Paddler paddler, Hull hull, Paddle paddle)
    {
        bool blind = _world.EverySecondBlind && outing % 2 == 1;
        List<double> paddled = [.. before.SelectMany(static one => one.Pieces).Select(static piece => piece.Length.Inches)];
        List<Piece> pieces = [];
        for (int i = 0; i < lengths.Count; i++)
        {
            double inches = lengths[i].Inches, effort = _effort[outing, i] + (blind ? 0 : _world.EffortLean * (inches - Start.Inches));
            double percent = _outing[outing] + _piece[outing, i] + _world.EffortPerPoint * effort - Loss(inches) - Unused(inches, paddled);
            double told = _world.EffortIsTold ? Math.Clamp(Math.Round((HeldEffort + effort) * 2) / 2, 0, 10) : HeldEffort;
            double order = i - 0.5 * (lengths.Count - 1), square = order * order - (lengths.Count * lengths.Count - 1) / 12.0;
            double beats = RestingBeats + _perPoint * effort + _drift * order + _world.HeartRateBend * square
                + _world.HeartRatePerInch * (inches - Start.Inches) + _heart[outing, i];
            paddled.Add(inches);
            pieces.Add(new()
            {
                Id = Identity(outing, i + 1),
                Order = i + 1,
                PaddleId = paddle.Id,
                Length = lengths[i],
                Distance = Distance.FromMetres(Metres),
                Time = PieceTime.FromSeconds(Metres / (BaseSpeed * Math.Exp(percent / 100))),
                Effort = Effort.FromPoints(told),
                HeartRate = _world.HeartRateError is null ? null
                    : HeartRate.FromBeatsPerMinute(Math.Clamp((int)Math.Round(beats), 60, 220)),
            });
        }

        return new()
        {
            Id = Identity(outing, 0),
            PaddlerId = paddler.Id,
            HullId = hull.Id,
            Date = new DateOnly(2026, 1, 5).AddDays(7 * outing),
            Blind = blind,
            Pieces = pieces,
        };
    }

    private double Unused(double inches, List<double> paddled)
    {
        if (_world.UnusedCost == 0 || Math.Abs(inches - UsedTo) <= Near)
            return 0;
        return _world.UnusedCost * Math.Exp(-paddled.Count(other => Math.Abs(other - inches) <= Near) / WearsOffOver);
    }

    private static Guid Identity(int outing, int piece) => new(outing + 1, (short)piece, 0, 0, 0, 0, 0, 0, 0, 0, 0);

    /// <summary>
    /// SplitMix64's finaliser, so that neighbouring numbers give unrelated seasons. Source: Steele, Lea and Flood 2014, OOPSLA.
    /// </summary>
    private static int Mixed(ulong seed, ulong number)
    {
        ulong z = seed * 0x9E3779B97F4A7C15 + number * 0xD1B54A32D192ED03 + 0x632BE59BD9B4E019;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return (int)((z ^ (z >> 31)) & 0x7FFFFFFF);
    }
}
