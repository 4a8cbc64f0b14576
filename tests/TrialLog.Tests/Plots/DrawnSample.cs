using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Plots;

/// <summary>An invented analysis whose picture is known by heart: a parabola with its top at 49¾ in.</summary>
internal static class DrawnSample
{
    public static Analysis Of(LengthUnit unit = LengthUnit.Inches, double curvature = 0.45, int pieces = 40)
    {
        Length best = Length.FromInches(49.75);
        var hull = StandardHulls.All[0];
        var paddle = new Paddle
        {
            Id = new Guid(7, 0, 0, new byte[8]),
            Name = "Reed 44",
            Blade = Length.FromInches(18.5),
            Shortest = Length.FromInches(47),
            Longest = Length.FromInches(53),
            Step = Length.FromInches(0.25),
        };
        return new Analysis
        {
            Paddler = new Paddler { Id = new Guid(1, 0, 0, new byte[8]), Name = "Ilse Maro", Unit = unit },
            Hull = hull,
            Paddle = paddle,
            Start = new StartLength(Length.FromInches(50.5), 0.8, StartLengthBasis.SeatedReach),
            Outings = 6,
            Pieces = pieces,
            Current = Length.FromInches(50.5),
            CurrentIsUsual = true,
            Best = new BestLength(best, Length.FromInches(49.25), Length.FromInches(50.25), 0.9, 0.62,
                [.. paddle.Settings().Select(length => new StepProbability(length, Bell(length.InchesMoreThan(best))))]),
            Curvature = new Interval(curvature, curvature / 2, curvature * 2),
            GainFromMovingPercent = 0.25,
            GainFromMovingSeconds = 9,
            GainLeftPercent = 0.04,
            GainLeftSeconds = 1.4,
            GoalSeconds = 3600,
            WorthwhilePercent = 0.3,
            ProbabilityWorthwhileLeft = 0.12,
            Standing = Standing.Testing,
            Why = [StandingReason.ChanceTooHigh],
            Ideal = new IdealLength(best, 0.62, 0.04),
            PiecesInHull = pieces,
            PricePercent = 0.005,
            Soreness = null,
            SorenessLimit = null,
            Flat = false,
            OutingsToGo = new OutingsToGo(2, 1, 4),
            Card = new TrialCard
            {
                Lengths = [.. new[] { 49.25, 50.75, 50.75, 49.25 }.Select(Length.FromInches)],
                Distance = Distance.FromMetres(1000),
                Effort = Effort.FromPoints(6),
                Rest = PieceTime.FromSeconds(180),
            },
            Checks = [],
            Curve = new ResponseCurve(
                [.. Enumerable.Range(0, 25).Select(step => Length.FromInches(47 + step * 0.25)).Select(length =>
                {
                    double away = length.InchesMoreThan(best), loss = curvature * away * away;
                    return new CurvePoint(length, -loss, -loss - 0.15 - 0.35 * Math.Abs(away), -loss + 0.35 * Math.Abs(away));
                })],
                [.. Enumerable.Range(0, pieces).Select(piece =>
                {
                    double inches = 48.25 + piece * 7 % 15 * 0.25, away = inches - 49.75;
                    double noise = piece * 37 % 23 / 11.0 - 1;
                    return new AdjustedPiece(new Guid(piece, 0, 0, new byte[8]), Guid.Empty, Length.FromInches(inches),
                        noise - curvature * away * away, piece % 13 == 5 ? 0.2 : 1);
                })]),
        };
    }

    public static IReadOnlyList<ProgressPoint> Progress(int outings) =>
    [
        .. Enumerable.Range(0, outings + 1).Select(outing =>
        {
            double half = 1.3 / Math.Sqrt(1 + outing);
            return new ProgressPoint(outing == 0 ? null : Guid.Empty,
                outing == 0 ? null : new DateOnly(2026, 5, 1).AddDays(7 * outing), outing,
                Then(Length.FromInches(49.75 + Math.Round(3 / (1.0 + outing) * (outing % 2 == 0 ? 1 : -0.5)) / 4),
                    Length.FromInches(49.8 - half), Length.FromInches(49.8 + half), 0.25 / (1 + outing), 0.5 / (1 + outing), outing > 6));
        }),
    ];

    /// <summary>What a log may mean at some time, for a point of progress or a carried length.</summary>
    public static Assessment Then(Length best, Length low, Length high, double gainLeft, double chance, bool stop, Hull? hull = null,
        Paddle? paddle = null, int pieces = 0)
    {
        Analysis drawn = Of();
        return new()
        {
            Hull = hull ?? drawn.Hull,
            Paddle = paddle ?? drawn.Paddle,
            Best = new BestLength(best, low, high, 0.9, 0.5, []),
            Ideal = new IdealLength(best, 0.5, gainLeft),
            PiecesInHull = pieces,
            GainLeftPercent = gainLeft,
            WorthwhilePercent = 0.3,
            ProbabilityWorthwhileLeft = chance,
            PricePercent = 0.005,
            Standing = stop ? Standing.Settled : Standing.Testing,
            Why = [stop ? StandingReason.NothingWorthwhileLeft : StandingReason.ChanceTooHigh],
            Flat = false,
            Soreness = null,
            SorenessLimit = null,
        };
    }

    private static double Bell(double inches) => Math.Exp(-inches * inches / (2 * 0.3 * 0.3)) * 0.33;
}
