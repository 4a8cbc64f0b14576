using System.Globalization;
using TrialLog.Application.Text;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Logging;

/// <summary>Finds an outing by the name a person gives it: its date, and its label where a day has several.</summary>
internal static class FindOuting
{
    /// <summary>How a person names that outing: <c>2026-05-03</c> or <c>2026-05-03:evening</c>.</summary>
    public static string NameOf(Outing outing) =>
        outing.Label.Length == 0 ? $"{outing.Date:yyyy-MM-dd}" : $"{outing.Date:yyyy-MM-dd}:{outing.Label}";

    /// <summary>The outing of that paddler with that name; <c>last</c> is the latest.</summary>
    public static Outing Of(Workspace workspace, Paddler paddler, string name)
    {
        IReadOnlyList<Outing> all = workspace.Logbook.Outings(paddler.Id);
        if (all.Count == 0)
            throw new RequestException($"{paddler.Name} has no outing yet.");
        if (name.Equals("last", StringComparison.OrdinalIgnoreCase))
            return all[^1];
        int colon = name.IndexOf(':', StringComparison.Ordinal);
        DateOnly date = TextForms.Date(workspace.Today).Read(colon < 0 ? name : name[..colon]);
        string? label = colon < 0 ? null : name[(colon + 1)..].Trim();
        List<Outing> found = [.. all.Where(outing => outing.Date == date
            && (label is null || string.Equals(outing.Label, label, StringComparison.OrdinalIgnoreCase)))];
        return found.Count switch
        {
            1 => found[0],
            0 => throw new RequestException(
                $"{paddler.Name} has no outing “{Quoted.Brief(name)}”; the nearest is " +
                $"{NameOf(all.MinBy(outing => Math.Abs(outing.Date.DayNumber - date.DayNumber))!)}. See: triallog history"),
            _ => found.Find(outing => label is null && outing.Label.Length == 0)
                ?? throw new RequestException(
                    $"{date:yyyy-MM-dd} has several outings; say which: {string.Join(", ", found.Select(NameOf))}."),
        };
    }

    /// <summary>The piece of that number in the outing.</summary>
    public static Piece Piece(Outing outing, int order) => outing.Pieces.FirstOrDefault(piece => piece.Order == order)
        ?? throw new RequestException(
            $"The outing {NameOf(outing)} has no piece {order}; its pieces are " +
            $"{string.Join(", ", outing.Pieces.Select(piece => piece.Order))}.");
}
