using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Forms;
using TrialLog.Screens.Paint;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Planning;

namespace TrialLog.Study.Seasons.Methods;

/// <summary>
/// The product's own model, stopping rule and planner, as an analysis uses them. Whoever is told to stop tests on all the same, with the
/// card that tells most.
/// </summary>
internal sealed class ThisModel : ISearchMethod
{
    /// <summary>The hull that answers are carried to.</summary>
    public static readonly Hull Other = StandardHulls.All.First(hull => hull.Name == "OC2");

    private static readonly Hull Canoe = StandardHulls.All[0];
    private static readonly int[] CarriedAfter = [0, 2, 5, 14];
    private readonly World _world;
    private readonly Paddler _paddler;
    private readonly Paddle _paddle;
    private readonly List<Outing> _outings = [];
    private readonly List<GivenCard> _cards = [];
    private readonly TuningSettings _settings;
    private AssessedFit _assessed = null!;
    private PlannedLengths _planned = null!;

    public ThisModel(World world, TuningSettings settings)
    {
        _world = world;
        _settings = settings;
        _paddler = new()
        {
            Id = new Guid(1, 0, 0, new byte[8]),
            Name = "Ilse Maro",
            Body = new() { SeatedReach = SimulatedPaddler.Start },
            SwapsOnWater = world.SwapsOnWater,
            Trials = new() { Pieces = world.PiecesTold },
        };
        _paddle = new()
        {
            Id = new Guid(2, 0, 0, new byte[8]),
            Name = "adjustable",
            Blade = ExposedShaftRule.ReferenceBlade,
            Shortest = Length.FromInches(44),
            Longest = Length.FromInches(56),
            Step = Length.FromInches(0.25),
        };
        Look();
    }

    public IReadOnlyList<Length> Plan() => _planned.Lengths;

    public void Learn(Outing outing)
    {
        _outings.Add(outing);
        Look();
    }

    public Recommendation Recommend()
    {
        Assessment says = _assessed.Says;
        OutingsToGo toGo = says.DiminishingReturns ? new(0, 0, 0) : Forecast.Of(_assessed, _planned, _world.SwapsOnWater);
        _cards.Add(Card(says, toGo));
        bool carries = CarriedAfter.Contains(_outings.Count);
        return new(says.Best.Length.Inches, says.Best.LikelyLow.Inches, says.Best.LikelyHigh.Inches, new(
            says.Standing, says.ProbabilityWorthwhileLeft, says.Best.WithinQuarterInch, says.GainLeftPercent, toGo, _planned.Spread,
            carries && _world.HullSpread > 0 ? Range(Input() with { Hull = Other, Hulls = [Canoe, Other] }) : null,
            carries && _world.DurationSpread > 0
                ? Range(
                Input()
                with
                {
                    Paddler = _paddler
                with
                    { Goal = new() { HullId = Canoe.Id, Time = PieceTime.FromSeconds(SimulatedPaddler.GoalSeconds) } }
                }) : null));
    }

    private static (double Low, double High) Range(AnalysisInput input)
    {
        BestLength best = AssessedFit.Of(input).Says.Best;
        return (best.LikelyLow.Inches, best.LikelyHigh.Inches);
    }

    private void Look()
    {
        _assessed = AssessedFit.Of(Input());
        _planned = CardPlanner.Plan(_assessed);
    }

    private GivenCard Card(Assessment says, OutingsToGo toGo) => new()
    {
        Id = new Guid(_outings.Count, 0, 0, new byte[8]),
        PaddlerId = _paddler.Id,
        HullId = Canoe.Id,
        PaddleId = _paddle.Id,
        GivenAt = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero).AddDays(7 * _outings.Count),
        Card = new()
        {
            Lengths = _planned.Lengths, Distance = _planned.Form.Distance, Effort = Effort.FromPoints(6),
            Rest = PieceTime.FromSeconds(180)
        },
        Best = says.Best.Length,
        LikelyLow = says.Best.LikelyLow,
        LikelyHigh = says.Best.LikelyHigh,
        GainLeftPercent = says.GainLeftPercent,
        DiminishingReturns = says.DiminishingReturns,
        Outings = _outings.Count,
        Pieces = _outings.Sum(outing => outing.Pieces.Count),
        AsOfChange = _outings.Count,
        OutingsToGo = (toGo.Median, toGo.Low, toGo.High),
    };

    private AnalysisInput Input() => new()
    {
        Paddler = _paddler,
        Hull = Canoe,
        Paddle = _paddle,
        Hulls = [Canoe],
        Paddles = [_paddle],
        Outings = [.. _outings],
        GivenCards = [.. _cards],
        Settings = _settings,
        Today = _outings.Count == 0 ? new DateOnly(2026, 1, 1) : _outings[^1].Date,
    };
}
