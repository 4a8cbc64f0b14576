using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Text;

/// <summary>A goal event in words: <c>OC1, 10 km</c>.</summary>
internal static class GoalText
{
    public static string? Of(GoalEvent? goal, IReadOnlyList<Hull> hulls) => goal is null ? null
        : $"{hulls.FirstOrDefault(hull => hull.Id == goal.HullId)?.Name ?? "?"}, {goal.Distance?.ToString() ?? goal.Time?.ToString()}";
}
