using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Screens.Paint;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Planning;

namespace TrialLog.Study.Seasons.Methods;

/// <summary>The product's own model, stopping rule and planner, as an analysis uses them.</summary>
internal sealed class ThisModel : ISearchMethod
{
    private static readonly Hull Canoe = StandardHulls.All[0];
    private readonly Paddler _paddler;
    private readonly Paddle _paddle;
    private readonly List<Outing> _outings = [];
    private readonly TuningSettings _settings;
    private AssessedFit _assessed = null!;

    public ThisModel(World world, TuningSettings settings)
    {
        _settings = settings with { CardPieces = world.Pieces };
        _paddler = new()
        {
            Id = new Guid(1, 0, 0, new byte[8]),
            Name = "Ilse Maro",
            Body = new() { SeatedReach = SimulatedPaddler.Start },
            SwapsOnWater = world.SwapsOnWater,
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

    public IReadOnlyList<Length> Plan() => CardPlanner.Plan(_assessed).Lengths;

    public void Learn(Outing outing)
    {
        _outings.Add(outing);
        Look();
    }

    public Recommendation Recommend()
    {
        Assessment says = _assessed.Says;
        return new(says.Best.Length.Inches, says.DiminishingReturns, says.Best.LikelyLow.Inches, says.Best.LikelyHigh.Inches);
    }

    private void Look() => _assessed = AssessedFit.Of(Input());

    private AnalysisInput Input() => new()
    {
        Paddler = _paddler,
        Hull = Canoe,
        Paddle = _paddle,
        Hulls = [Canoe],
        Paddles = [_paddle],
        Outings = [.. _outings],
        Settings = _settings,
        Today = _outings.Count == 0 ? new DateOnly(2026, 1, 1) : _outings[^1].Date,
    };
}
