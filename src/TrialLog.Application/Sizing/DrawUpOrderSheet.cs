using TrialLog.Application.Deciding;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Sizing;

/// <summary>Draws up what to order or cut.</summary>
internal static class DrawUpOrderSheet
{
    /// <summary>
    /// For the named hull and paddle; without a hull, for those that were paddled and the goal event's, and where there are
    /// none, for every hull.
    /// </summary>
    public static OrderSheet For(Workspace workspace, Paddler paddler, string? hullName, string? paddleName, bool everyHull)
    {
        bool steers = paddleName is not null && workspace.PaddleNamed(paddleName).Steering;
        IReadOnlyList<CarriedRow> rows = steers ? [] : CarryLengths.Tuned(workspace, paddler, hullName, paddleName);
        double? goal = rows.Count == 0 || paddler.Goal is null ? null
            : Tuner.Analyse(workspace.Question(new Chosen(paddler, rows[0].Hull, rows[0].Paddle))).GoalSeconds;
        return Of(workspace, paddler, rows, goal, hullName, paddleName, everyHull);
    }

    /// <summary>As <see cref="For"/>, from lengths, and how long the goal event takes, that are at hand.</summary>
    public static OrderSheet Of(
        Workspace workspace, Paddler paddler, IReadOnlyList<CarriedRow> rows, double? goalSeconds, string? hullName = null,
            string? paddleName = null, bool everyHull = false)
    {
        bool Own(Hull hull, int pieces) => pieces > 0 || hull.Id == paddler.Goal?.HullId;
        if (hullName is null && !everyHull && rows.Any(row => Own(row.Hull, row.Pieces)))
            rows = [.. rows.Where(row => Own(row.Hull, row.Pieces))];

        IReadOnlyList<Hull> steered = hullName is not null ? [workspace.HullNamed(hullName)]
            : rows.Count > 0 ? [.. rows.Select(row => row.Hull).Where(hull => hull.Crew > 1).DistinctBy(hull => hull.Id)]
            : [.. workspace.Logbook.Hulls().Where(hull => hull.Crew > 1)];
        return OrderSheet.Of(
            paddler.Name, workspace.Today, paddler.Unit, rows.Select(row => Line(row, paddler, goalSeconds)),
            from hull in steered
            from paddle in paddleName is null ? OwnGear.Paddles(workspace, paddler, workspace.Logbook.Outings(paddler.Id))
                : workspace.Logbook.Paddles()
            where paddle.Steering
                && (paddleName is null || string.Equals(paddle.Name, paddleName.Trim(), StringComparison.OrdinalIgnoreCase))
            select new OrderSheetSteering(hull.Name, paddle.Name, ProposeSteering.For(workspace, paddler, hull, paddle)))
            with
        { RestFirst = RestFirst.Page(ClearSoreness.Standing(workspace, paddler)) };
    }

    private static OrderLine Line(CarriedRow row, Paddler paddler, double? goalSeconds) => new()
    {
        Hull = row.Hull.Name,
        Paddle = row.Paddle.Name,
        Blade = row.Paddle.Blade,
        Best = row.Best,
        LikelyLow = row.Likely!.Value.Low,
        LikelyHigh = row.Likely!.Value.High,
        WithinQuarterInch = row.WithinQuarterInch!.Value,
        Pieces = row.Pieces,
        RestsOn = row.RestsOn(paddler.Unit),
        GainLeftPercent = row.GainLeftPercent!.Value,
        GoalSeconds = goalSeconds ?? 3600,
        OverTheRace = Say.OverTheRace(paddler),
        TooShort = row.TooShort,
        OnToldEffort = row.OnToldEffort,
        DiminishingReturns = row.DiminishingReturns,
        FixedAt = row.Paddle.IsFixed ? row.Paddle.Longest : null,
        SorenessCeiling = row.SorenessCeiling,
    };
}
