using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Text;

/// <summary>A goal event in words: <c>OC1, 10 km</c>.</summary>
internal static class GoalText
{
    /// <summary>The goal as it is typed; null where there is none.</summary>
    public static string? Of(GoalEvent? goal, IReadOnlyList<Hull> hulls) => goal is null ? null
        : $"{hulls.FirstOrDefault(hull => hull.Id == goal.HullId)?.Name ?? "?"}, {goal.Distance?.ToString() ?? goal.Time?.ToString()}";

    /// <summary>Reads <c>OC1, 10km</c> or <c>OC6, 1:30:00</c>; a hull's name may have a comma, the last one counts.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="hullNamed">Finds a hull.</param>
    /// <exception cref="InvalidValueException">It is no goal event.</exception>
    public static GoalEvent Read(string text, Func<string, Hull> hullNamed)
    {
        int comma = text.LastIndexOf(',');
        if (comma < 0)
            throw new InvalidValueException(
                $"“{Quoted.Brief(text)}” is not a goal event; write the hull, a comma, and a distance or a time: \"OC1, 10km\" " +
                $"or \"OC6, 1:30:00\".");
        Hull hull = hullNamed(text[..comma]);
        string rest = text[(comma + 1)..].Trim();
        // A bare number is a distance, as everywhere; what only a time can be is a time.
        return TextForms.Distance.TryRead(rest, out Distance distance, out string? problem)
            ? new GoalEvent { HullId = hull.Id, Distance = distance }
            : TextForms.Time.TryRead(rest, out PieceTime time, out _) ? new GoalEvent { HullId = hull.Id, Time = time }
            : throw new InvalidValueException(problem);
    }
}
