using TrialLog.Application.Coaching;
using TrialLog.Application.Reporting;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.Tests.Plots;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Classical;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Reports;

/// <summary>
/// Report contents made by hand, with round numbers: what a report is written from, not what an analysis would say.
/// </summary>
internal static class SampleContents
{
    public static readonly Hull Solo = StandardHulls.All[0];
    public static readonly Hull Six = StandardHulls.All[2];

    public static readonly Paddle Adjustable = new()
    {
        Id = Id(1),
        Name = "Training paddle",
        Blade = Inches(18.5),
        Shortest = Inches(47),
        Longest = Inches(53),
        Step = Inches(0.25),
    };

    public static readonly Paddle Long = Adjustable with { Id = Id(2), Name = "Long blade", Blade = Inches(20.5), Longest = Inches(51) };

    public static readonly Paddler Ilse = new() { Id = Id(3), Name = "Ilse Maro", Body = new BodyMeasures { SeatedReach = Inches(50) } };

    public static Length Inches(double inches) => Length.FromInches(inches);

    public static Guid Id(int number) => new(number, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]);

    public static ReportContents Of(int outings = 6, Paddler? paddler = null, Paddle? paddle = null, LengthUnit unit = LengthUnit.Inches)
    {
        paddler = (paddler ?? Ilse) with { Unit = unit };
        paddle ??= Adjustable;
        List<Outing> log = [.. Enumerable.Range(0, outings).Select(at => OutingOf(at, paddler, paddle))];
        List<GivenCard> cards = [.. log.Select((outing, at) => CardOf(at, outing))];
        if (outings > 0)
            cards.Add(CardOf(outings, log[^1] with { Date = log[^1].Date.AddDays(3) }) with { Card = Card(46, 46, 46, 46) });
        return new ReportContents
        {
            Analysis = AnalysisOf(paddler, paddle, log),
            Outings = log,
            Hulls = StandardHulls.All,
            Paddles = [paddle, Long],
            Progress = [.. Enumerable.Range(0, outings + 1).Select(at => ProgressOf(at, log))],
            Advice = AdviceHistory.Of(cards, log, given => DateOnly.FromDateTime(given.UtcDateTime)),
            Carried =
            [
                DrawnSample.Then(Inches(49.75), Inches(49.25), Inches(50.4), 0.04, 0.03, outings > 3, Solo, paddle, 4 * outings),
                DrawnSample.Then(Inches(50.75), Inches(49.9), Inches(51.6), 0.09, 0.2, false, Six, paddle),
                DrawnSample.Then(Inches(52.75), Inches(51.9), Inches(53.6), 0.09, 0.2, false, Six, Long),
            ],
            Classical = new(4 * outings, outings,
                [new("intercept", 133.2, 1.1), new("length", 0.21, 0.2), new("length squared", -0.35, 0.16)], 50.1, 2.41, 0.98,
                50.4, new FiellerInterval(FiellerShape.Bounded, 49.1, 52.9, 0.9)),
            Notes = outings == 0 ? [] :
            [
                new CoachNote { Id = Id(900), About = NoteSubject.Paddler, AboutId = paddler.Id, Author = "Tova Lind",
                    WrittenAt = new(2026, 4, 2, 9, 30, 0, TimeSpan.Zero), Text = "Settled at the catch.\nKeep the top hand low." },
                new CoachNote { Id = Id(901), About = NoteSubject.Outing, AboutId = log[0].Id, Author = "Tova Lind",
                    WrittenAt = new(2026, 3, 4, 9, 30, 0, TimeSpan.Zero), Text = "Gusts on the last piece." },
            ],
            Date = new DateOnly(2026, 5, 3),
            Version = "0.1.0",
        };
    }

    /// <summary>The same of somebody who was sore at every piece, a week on.</summary>
    public static ReportContents Sore(ReportContents plain) => plain with
    {
        Analysis = plain.Analysis with
        {
            Standing = Standing.Sore,
            SorenessLimit = Inches(50),
            Soreness = new(Soreness.FromPoints(5), new(2026, 3, 3), new(2026, 3, 3))
        },
        Outings = [
            .. plain.Outings.Select(
            outing => outing with { Pieces = [.. outing.Pieces.Select(piece => piece with { Soreness = Soreness.FromPoints(5) })] })],
        Date = plain.Outings.Max(outing => outing.Date).AddDays(7),
    };

    public static TrialCard Card(params double[] inches) => new()
    {
        Lengths = [.. inches.Select(Inches)],
        Distance = Distance.FromMetres(1000),
        Effort = Effort.FromPoints(6),
        Rest = PieceTime.FromSeconds(240),
    };

    private static Outing OutingOf(int at, Paddler paddler, Paddle paddle) => new()
    {
        Id = Id(100 + at),
        PaddlerId = paddler.Id,
        HullId = Solo.Id,
        Date = new DateOnly(2026, 3, 3).AddDays(7 * at),
        Label = at % 2 == 0 ? "" : "evening",
        Place = "Tarrow Sound",
        Wind = Beaufort.FromNumber(at % 4),
        Water = "flat",
        Pieces = [.. LengthsOf(at).Select((inches, order) => new Piece
        {
            Id = Id(1000 + 10 * at + order),
            Order = order + 1,
            PaddleId = paddle.Id,
            Length = Inches(inches),
            Distance = Distance.FromMetres(1000),
            Time = PieceTime.FromSeconds(332.4 + 3 * at % 7 + order),
            Effort = Effort.FromPoints(6),
            Soreness = order == 3 ? Soreness.FromPoints(0.5 * at % 3) : null,
            ExcludedBecause = at == 2 && order == 3 ? "wash from a launch" : null,
        })],
    };

    private static double[] LengthsOf(int at) => at % 2 == 0 ? [49, 51, 51, 49] : [49.25, 50.75, 50.75, 49.25];

    private static GivenCard CardOf(int at, Outing outing) => new()
    {
        Id = Id(500 + at),
        PaddlerId = outing.PaddlerId,
        HullId = outing.HullId,
        PaddleId = Adjustable.Id,
        GivenAt = new DateTimeOffset(outing.Date.AddDays(-2), new TimeOnly(7, 0), TimeSpan.Zero),
        Card = Card(LengthsOf(at)),
        Best = Inches(50),
        LikelyLow = Inches(49),
        LikelyHigh = Inches(51),
        GainLeftPercent = 0.1,
        DiminishingReturns = false,
        Outings = at,
        Pieces = 4 * at,
        AsOfChange = 10 + at,
    };

    private static ProgressPoint ProgressOf(int at, List<Outing> log) => new(
        at == 0 ? null : log[at - 1].Id, at == 0 ? null : log[at - 1].Date, at,
        DrawnSample.Then(Inches(at < 2 ? 50 : 49.75), Inches(50 - 1.3 / Math.Sqrt(at + 1)), Inches(50 + 1.3 / Math.Sqrt(at + 1)),
            0.22 / (at + 1), 0.4 / (at + 1), at > 4));

    private static Analysis AnalysisOf(Paddler paddler, Paddle paddle, List<Outing> log) => new()
    {
        Paddler = paddler,
        Hull = Solo,
        Paddle = paddle,
        Start = StartLength.Of(paddler),
        Outings = log.Count,
        Pieces = 4 * log.Count,
        Current = Inches(50.5),
        CurrentIsUsual = true,
        Best = new(Inches(49.75), Inches(49.25), Inches(50.41), 0.9, 0.62,
            [.. Enumerable.Range(0, 9)
                .Select(at => new StepProbability(Inches(48.75 + at / 4.0), new[] { .01, .05, .12, .21, .24, .18, .11, .06, .02 }[at]))]),
        Curvature = new(0.4, 0.15, 1.0),
        GainFromMovingPercent = 0.12,
        GainFromMovingSeconds = 4.3,
        GainLeftPercent = 0.04,
        GainLeftSeconds = 1.5,
        GoalSeconds = 3600,
        WorthwhilePercent = 0.3,
        ProbabilityWorthwhileLeft = 0.03,
        Standing = log.Count > 4 ? Standing.Settled : Standing.Testing,
        Why = [log.Count > 4 ? StandingReason.NothingWorthwhileLeft : StandingReason.ChanceTooHigh],
        Ideal = new IdealLength(Inches(49.75), 0.62, 0.04),
        PiecesInHull = 4 * log.Count,
        PricePercent = 0.005,
        Soreness = null,
        SorenessLimit = null,
        Flat = false,
        OutingsToGo = log.Count > 4 ? new(0, 0, 1) : new(2, 1, 4),
        Card = Card(49.25, 50.75, 50.75, 49.25),
        Checks = [new("habituated") { Count = 30, Of = 36, Inches = 50.5 }],
        Curve = new(
            [.. Enumerable.Range(0, 49).Select(at => CurveAt(47 + at / 8.0))],
            [.. log.SelectMany((outing, at) => outing.Pieces.Where(piece => piece.ExcludedBecause is null)
                .Select((piece, order) =>
                    new AdjustedPiece(piece.Id, outing.Id, piece.Length, Adjusted(at, order, piece), at == 3 && order == 1 ? 0.2 : 1)))]),
    };

    private static double Adjusted(int at, int order, Piece piece) => at == 3 && order == 1
        ? -7
        : -0.35 * Math.Pow(piece.Length.Inches - 49.8, 2) + Math.Sin(5 * at + 2 * order) * 0.9;

    private static CurvePoint CurveAt(double inches)
    {
        double off = inches - 49.75;
        return new(Inches(inches), -0.35 * off * off, -0.35 * off * off - 0.25 * Math.Abs(off) - 0.1 * off * off,
            -0.35 * off * off + 0.25 * Math.Abs(off));
    }
}
