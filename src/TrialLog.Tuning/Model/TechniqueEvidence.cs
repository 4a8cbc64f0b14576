using TrialLog.Domain;

namespace TrialLog.Tuning.Model;

/// <summary>Technique checks as weak evidence of the best length, hull by hull, by <see cref="TechniqueRule"/>.</summary>
internal static class TechniqueEvidence
{
    /// <summary>Sets the checks' precision and pull, by hull.</summary>
    public static void Set(TuningQuestion question, PieceTable table, Alignment alignment, double[] precision, double[] pull)
    {
        for (int h = 0; h < table.Hulls.Count; h++)
        {
            List<(double, TechniqueImplication)> here = [];
            foreach (TechniqueCheck check in InOrder(question.TechniqueChecks))
                if (check.HullId == table.Hulls[h].Id && question.PaddleWith(check.PaddleId) is { Steering: false } paddle)
                    here.Add((alignment.Align(check.Length, table.Hulls[h], paddle.Blade), TechniqueRule.Implied(check)));
            if (TechniqueRule.Together(here) is not { } together)
                continue;
            precision[h] = 1 / (together.SpreadInches * together.SpreadInches);
            pull[h] = together.AlignedInches * precision[h];
        }
    }

    private static List<TechniqueCheck> InOrder(IReadOnlyList<TechniqueCheck> checks)
    {
        List<TechniqueCheck> sorted = [.. checks];
        sorted.Sort(static (a, b) => a.Date != b.Date ? a.Date.CompareTo(b.Date) : a.Id.CompareTo(b.Id));
        return sorted;
    }
}
