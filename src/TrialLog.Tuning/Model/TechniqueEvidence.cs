using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>Technique checks as weak evidence of the best length, hull by hull, by <see cref="TechniqueRule"/>.</summary>
internal static class TechniqueEvidence
{
    /// <summary>Sets the checks' precision and pull, by hull.</summary>
    public static void Set(AnalysisInput question, PieceTable table, Alignment alignment, double[] precision, double[] pull)
    {
        foreach (Hull hull in question.Hulls.Prepend(question.Hull).DistinctBy(static hull => hull.Id).OrderBy(static hull => hull.Id))
        {
            List<(double, TechniqueImplication)> here = [];
            foreach (TechniqueCheck check in InOrder(question.TechniqueChecks))
                if (check.HullId == hull.Id && question.PaddleWith(check.PaddleId) is { Steering: false } paddle)
                    here.Add((alignment.Align(check.Length, hull, paddle.Blade), TechniqueRule.Implied(check)));
            if (TechniqueRule.Together(here) is not { } together)
                continue;

            // A hull without pieces has no place of its own: its checks speak of the asked hull, less surely by as much as the
            // best lengths in two hulls may differ.
            int own = IndexOf(table.Hulls, hull.Id);
            double between = own < 0 ? 2 * question.Settings.HullSpreadInches * question.Settings.HullSpreadInches : 0;
            int at = own < 0 ? table.AskedHull : own;
            double weight = 1 / (together.SpreadInches * together.SpreadInches + between);
            precision[at] += weight;
            pull[at] += together.AlignedInches * weight;
        }
    }

    private static int IndexOf(IReadOnlyList<Hull> hulls, Guid id)
    {
        for (int h = 0; h < hulls.Count; h++)
            if (hulls[h].Id == id)
                return h;
        return -1;
    }

    private static List<TechniqueCheck> InOrder(IReadOnlyList<TechniqueCheck> checks)
    {
        List<TechniqueCheck> sorted = [.. checks];
        sorted.Sort(static (a, b) => a.Date != b.Date ? a.Date.CompareTo(b.Date) : a.Id.CompareTo(b.Id));
        return sorted;
    }
}
