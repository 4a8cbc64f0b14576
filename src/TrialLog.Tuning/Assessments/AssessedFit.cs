using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Information;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Assessments;

/// <summary>A fit with what planning needs of it beside the assessment.</summary>
/// <param name="Input">What was asked.</param>
/// <param name="Fit">What is believed.</param>
/// <param name="Soreness">What soreness leaves open.</param>
/// <param name="Allowed">The settings that may be paddled now.</param>
/// <param name="Habitual">Where the paddler is, and what the body is used to.</param>
/// <param name="Says">What it means.</param>
internal sealed record AssessedFit(
    AnalysisInput Input, Fit Fit, SorenessCeiling Soreness, AllowedSettings Allowed, HabitualLength Habitual, Assessment Says)
{
    private const double QuarterInch = 0.25;

    /// <summary>So many outings with hidden lengths show whether one was pulled harder. Chosen.</summary>
    private const int EnoughBlind = 2;

    /// <summary>Flat above this probability that an inch either way costs less than a worthwhile change. Chosen.</summary>
    private const double FlatAbove = 0.9;

    /// <summary>With so many pieces a hull can say by itself whether length matters in it.</summary>
    private const int EnoughToSpeakForItself = 8;

    /// <summary>
    /// The best length that the assessment is about, aligned: the paddle's best setting, for a fixed paddle the length to have.
    /// </summary>
    public double Sought => Align(Input.Paddle.IsFixed ? Says.Ideal.Length : Says.Best.Length);

    /// <summary>A length of the paddle asked for in the hull asked for, on the common scale.</summary>
    public double Align(Length length) => Fit.Alignment.Align(length, Input.Hull, Input.Paddle.Blade);

    /// <summary>Fits and assesses.</summary>
    public static AssessedFit Of(AnalysisInput input) => Of(input, Fit.Of(input));

    /// <summary>Assesses a fit of the same input.</summary>
    public static AssessedFit Of(AnalysisInput input, Fit fit)
    {
        Posterior posterior = fit.Posterior;
        SorenessCeiling soreness = SorenessCeiling.Of(input, fit.Alignment);
        AllowedSettings allowed = AllowedSettings.Of(input.Paddle, soreness.Length);
        HabitualLength habitual = HabitualLength.Of(input, fit.Table, fit.Alignment);
        BestLength best = BestSetting.Of(input, fit, allowed);
        Length ideal = BestSetting.Ideal(input, fit);
        double worthwhile = input.Paddler.WorthwhilePercent ?? input.Settings.WorthwhilePercent;
        double sought = Align(input.Paddle.IsFixed ? ideal : best.Length), idealAligned = Align(ideal);
        // What the paddle or a sore shoulder keeps out of reach may still be faster, so the chance looks beyond both.
        double left = posterior.WorthwhileLeft(sought, double.NegativeInfinity, double.PositiveInfinity, worthwhile);
        int pieces = PiecesIn(fit.Table, input.Hull.Id);
        bool flat = IsFlat(posterior) && (pieces < EnoughToSpeakForItself || pieces == fit.Table.Count || IsFlat(ByItself(input)));
        Assessment says = new()
        {
            Hull = input.Hull,
            Paddle = input.Paddle,
            Best = best,
            Ideal = new(ideal, posterior.Below(idealAligned + QuarterInch) - posterior.Below(idealAligned - QuarterInch),
                posterior.ExpectedLoss(idealAligned)),
            PiecesInHull = pieces,
            GainLeftPercent = posterior.ExpectedLoss(sought),
            WorthwhilePercent = worthwhile,
            ProbabilityWorthwhileLeft = left,
            OnToldEffort = fit.Table.Count > 0 && fit.Effort?.HeartRate is null
                && fit.Table.Outings.Count(static outing => outing.Blind) < EnoughBlind,
            TooShort = ShortPieces.Of(input, fit, worthwhile),
            PricePercent = input.Trials.PricePercent ?? UsualPrice(input, fit.Table),
            Standing = Standing.Testing,
            Why = [],
            Flat = flat,
            Soreness = soreness.Standing,
            SorenessLimit = soreness.Length,
        };
        AssessedFit assessed = new(input, fit, soreness, allowed, habitual, says);
        (Standing standing, IReadOnlyList<StandingReason> why) = StandingRule.Of(assessed);
        return assessed with { Says = says with { Standing = standing, Why = why } };

        double Align(Length length) => fit.Alignment.Align(length, input.Hull, input.Paddle.Blade);
        bool IsFlat(Posterior one) => one.LogCurvature.Mean(log => one.Share * Math.Exp(log) < worthwhile ? 1 : 0) > FlatAbove;
    }

    /// <summary>Where the paddler has not said: longer outings cost more, in proportion to their time.</summary>
    private static double UsualPrice(AnalysisInput input, PieceTable table)
    {
        TrialForm form = TrialForm.Of(input, table, Comparisons.Of(table).Count);
        return input.Settings.PricePercent * Math.Max(1, form.Minutes(form.Pieces / 2) / input.Settings.PriceMinutes);
    }

    /// <summary>An odd outing in another hull must not flatten the curve of one that has spoken for itself.</summary>
    private static Posterior ByItself(AnalysisInput input) =>
        Fit.Of(input with { Outings = [.. input.Outings.Where(outing => outing.HullId == input.Hull.Id)] }).Posterior;

    private static int PiecesIn(PieceTable table, Guid hull)
    {
        int pieces = 0;
        for (int j = 0; j < table.Outings.Count; j++)
            if (table.Outings[j].HullId == hull)
                pieces += table.OutingStart[j + 1] - table.OutingStart[j];
        return pieces;
    }
}
