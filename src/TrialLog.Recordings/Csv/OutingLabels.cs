using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>
/// The label under which each outing of a logbook goes in a file. It is the outing's own, except where two outings of a
/// paddler on one day could not be told apart: then all but the first get a number, the same one each time.
/// </summary>
internal static class OutingLabels
{
    /// <summary>The label of each outing, by the outing's id.</summary>
    public static IReadOnlyDictionary<Guid, string> Of(IEnumerable<Outing> outings)
    {
        var labels = new Dictionary<Guid, string>();
        foreach (var day in outings.GroupBy(outing => (outing.PaddlerId, outing.Date)))
        {
            if (day.Skip(1).Any())
                LabelDay([.. day.OrderBy(outing => outing.Time).ThenBy(outing => outing.Id)], labels);
            else
                labels[day.First().Id] = day.First().Label;
        }

        return labels;
    }

    private static void LabelDay(List<Outing> day, Dictionary<Guid, string> labels)
    {
        var taken = new HashSet<string>(day.Select(outing => outing.Label), StringComparer.OrdinalIgnoreCase);
        foreach (
            var alike in day.GroupBy(
            outing => (Label: outing.Label.ToUpperInvariant(), Hull: outing.Label.Length == 0 ? outing.HullId : Guid.Empty)))
        {
            List<Outing> group = [.. alike];
            bool toldApartByTime = alike.Key.Label.Length == 0 && group.All(outing => outing.Time is not null)
                && group.DistinctBy(outing => outing.Time).Count() == group.Count;
            for (int i = 0, number = 2; i < group.Count; i++)
            {
                string label = group[i].Label;
                if (i > 0 && !toldApartByTime)
                {
                    string numbered;
                    do
                    {
                        string suffix = $"({number++})";
                        int room = NameRule.Longest - suffix.Length - 1;
                        numbered = label.Length == 0 ? suffix : $"{(label.Length > room ? label[..room].TrimEnd() : label)} {suffix}";
                    }
                    while (!taken.Add(numbered));
                    label = numbered;
                }

                labels[group[i].Id] = label;
            }
        }
    }
}
