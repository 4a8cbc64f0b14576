using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Checks;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Assessments;

/// <summary>What a fit means for one hull and paddle, short of planning: where the paddler is, the best length, whether to stop.</summary>
internal sealed record Assessment(
    SorenessCeiling Soreness, AllowedSettings Allowed, HabitualLength Habitual, BestLength Best, double Worthwhile, double WorthwhileLeft, bool Stop)
{
    /// <summary>Lengths nearer than this are one length, inches.</summary>
    private const double DifferentInches = 0.2;

    /// <summary>No search ends before that many outings. Chosen, no source.</summary>
    public const int FewestOutings = 2;

    /// <summary>The probability of a worthwhile gain below which a search ends.</summary>
    /// <param name="question">The question.</param>
    /// <param name="comparesWithinOutings">Whether some outing has two lengths.</param>
    public static double StopBelow(AnalysisInput question, bool comparesWithinOutings) =>
        question.Settings.StopBelow * (comparesWithinOutings ? 1 : question.Settings.StopBetweenOutings);

    /// <summary>The assessment of a fit.</summary>
    public static Assessment Of(AnalysisInput question, Fit fit)
    {
        SorenessCeiling soreness = SorenessCeiling.Of(question, fit.Alignment);
        AllowedSettings reach = AllowedSettings.Of(question.Paddle, soreness.Length);
        HabitualLength habitual = HabitualLength.Of(question, fit.Table, fit.Alignment);
        BestLength best = BestSetting.Of(question, fit, reach);
        double worthwhile = question.Paddler.WorthwhilePercent ?? question.Settings.WorthwhilePercent;
        // What the paddle or a sore shoulder keeps out of reach may still be faster, so the chance looks beyond both; a fixed
        // paddle has nothing to test.
        (double shortest, double longest) = question.Paddle.IsFixed
            ? (Align(reach.Shortest), Align(reach.Longest))
            : (double.NegativeInfinity, double.PositiveInfinity);
        double left = fit.Posterior.WorthwhileLeft(Align(best.Length), shortest, longest, worthwhile);
        return new(soreness, reach, habitual, best, worthwhile, left,
            left < StopBelow(question, ComparesWithinOutings(fit.Table)) && soreness.Length is null && Contrasts(fit.Table) && HealthChecks.Doubts(question).Count == 0);

        static bool ComparesWithinOutings(PieceTable table)
        {
            for (int j = 0; j < table.Outings.Count; j++)
            {
                ReadOnlySpan<double> lengths = table.Aligned.AsSpan(table.OutingStart[j]..table.OutingStart[j + 1]);
                foreach (double length in lengths)
                    if (Math.Abs(length - lengths[0]) > DifferentInches)
                        return true;
            }

            return false;
        }

        // Without two lengths there is nothing but the prior to stop on; and one outing is one tide and one day's form.
        static bool Contrasts(PieceTable table) => table.Outings.Count >= FewestOutings && table.Aligned.Max() - table.Aligned.Min() > DifferentInches;

        double Align(Length length) => fit.Alignment.Align(length, question.Hull, question.Paddle.Blade);
    }
}
