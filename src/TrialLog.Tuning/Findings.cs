using TrialLog.Tuning.Model;
using TrialLog.Tuning.Planning;

namespace TrialLog.Tuning;

/// <summary>What a fit means for one hull and paddle, short of planning: where the paddler is, the best length, whether to stop.</summary>
internal sealed record Findings(
    SorenessCeiling Soreness, Reach Reach, HabitualLength Habitual, BestLength Best, double Worthwhile, double WorthwhileLeft, bool Stop)
{
    /// <summary>The findings of a fit.</summary>
    public static Findings Of(TuningQuestion question, Fit fit)
    {
        SorenessCeiling soreness = SorenessCeiling.Of(question, fit.Alignment);
        Reach reach = Reach.Of(question.Paddle, soreness.Length);
        HabitualLength habitual = HabitualLength.Of(question, fit.Table, fit.Alignment);
        BestLength best = BestSetting.Of(question, fit, reach);
        double worthwhile = question.Paddler.WorthwhilePercent ?? question.Settings.WorthwhilePercent;
        double left = fit.Posterior.WorthwhileLeft(Align(best.Length), Align(reach.Shortest), Align(reach.Longest), worthwhile);
        return new(soreness, reach, habitual, best, worthwhile, left, left < question.Settings.StopBelow);

        double Align(Domain.Length length) => fit.Alignment.Align(length, question.Hull, question.Paddle.Blade);
    }
}
