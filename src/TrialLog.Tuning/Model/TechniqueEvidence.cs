using TrialLog.Domain;

namespace TrialLog.Tuning.Model;

/// <summary>
/// Technique checks as weak evidence of the best length: the hand should be level with the eye, and each inch it is higher
/// wants the paddle that much shorter. However many checks, their common error (the rule itself) stays.
/// </summary>
internal static class TechniqueEvidence
{
    /// <summary>Adds the checks' precision and pull, by hull.</summary>
    public static void Add(TuningQuestion question, PieceTable table, Alignment alignment, double[] precision, double[] pull)
    {
        for (int h = 0; h < table.Hulls.Count; h++)
        {
            double weights = 0, weighted = 0;
            double least = double.MaxValue;
            foreach (TechniqueCheck check in InOrder(question.TechniqueChecks))
            {
                if (check.HullId != table.Hulls[h].Id || Blade(question, check.PaddleId) is not { } blade)
                    continue;
                double spread = check.FromPhoto ? question.Settings.TechniqueSpreadByPhotoInches : question.Settings.TechniqueSpreadByEyeInches;
                double lean = (check.ShaftLeanDegrees ?? 0) * Math.PI / 180;
                double implied = alignment.Align(check.Length, table.Hulls[h], blade) - check.HandAboveEyeInches / Math.Cos(lean);
                weights += 1 / (spread * spread);
                weighted += implied / (spread * spread);
                least = Math.Min(least, spread);
            }

            if (weights == 0)
                continue;
            // Half the variance of the surest check is the rule's own, which repeating the check does not lessen.
            double variance = 0.5 * least * least + 0.5 / weights;
            precision[h] = 1 / variance;
            pull[h] = weighted / weights / variance;
        }
    }

    private static List<TechniqueCheck> InOrder(IReadOnlyList<TechniqueCheck> checks)
    {
        List<TechniqueCheck> sorted = [.. checks];
        sorted.Sort(static (a, b) => a.Date != b.Date ? a.Date.CompareTo(b.Date) : a.Id.CompareTo(b.Id));
        return sorted;
    }

    private static Length? Blade(TuningQuestion question, Guid paddle)
    {
        if (question.Paddle.Id == paddle)
            return question.Paddle.Blade;
        foreach (Paddle known in question.Paddles)
            if (known.Id == paddle)
                return known.Blade;
        return null;
    }
}
