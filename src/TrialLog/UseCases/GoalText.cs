using TrialLog.Domain;

namespace TrialLog.UseCases;

/// <summary>A goal event in words: <c>OC1, 10 km</c>.</summary>
internal static class GoalText
{
    public static string? Of(GoalEvent? goal, IReadOnlyList<Hull> hulls) => goal is null ? null
        : $"{hulls.FirstOrDefault(hull => hull.Id == goal.HullId)?.Name ?? "?"}, {goal.Distance?.ToString() ?? goal.Time?.ToString()}";
}
