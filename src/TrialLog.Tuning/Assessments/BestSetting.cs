using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Assessments;

/// <summary>The best length among the settings of a paddle.</summary>
internal static class BestSetting
{
    private const double QuarterInch = 0.25, WorthListing = 0.005, MostInches = 390;

    private static readonly Length Sixteenth = Length.FromInches(0.0625), Millimetre = Length.FromMillimetres(1);

    /// <summary>The setting with the least expected loss, its likely range and the probabilities of the settings.</summary>
    public static BestLength Of(AnalysisInput question, Fit fit, AllowedSettings reach)
    {
        Posterior posterior = fit.Posterior;
        Length best = Cheapest(question, fit, reach);
        double level = question.Settings.Level, aligned = fit.Alignment.Align(best, question.Hull, question.Paddle.Blade);
        LengthUnit unit = question.Paddler.Unit;
        return new(
            best,
            Rough(Inches(posterior.Quantile((1 - level) / 2)), unit),
            Rough(Inches(posterior.Quantile((1 + level) / 2)), unit),
            level,
            posterior.Below(aligned + QuarterInch) - posterior.Below(aligned - QuarterInch),
            Probabilities(question, fit))
        {
            TimedAs = [.. fit.Table.Pieces.Select(static piece => piece.TimedBy ?? TimedBy.Hand).Distinct().Order()],
        };

        double Inches(double at) => fit.Alignment.LengthInches(at, question.Hull, question.Paddle.Blade);
    }

    /// <summary>The setting with the least expected loss: the loss has one bottom, so it is one of the two around that.</summary>
    private static Length Cheapest(AnalysisInput question, Fit fit, AllowedSettings reach)
    {
        double bottom = fit.Alignment.LengthInches(fit.Posterior.LeastLoss, question.Hull, question.Paddle.Blade);
        Length shorter = reach.Settings.LastOrDefault(setting => setting.Inches <= bottom, reach.Shortest),
            longer = reach.Settings.FirstOrDefault(setting => setting.Inches > bottom, reach.Longest);
        return Loss(longer) < Loss(shorter) - 1e-12 ? longer : shorter;

        double Loss(Length length) => fit.Posterior.ExpectedLoss(fit.Alignment.Align(length, question.Hull, question.Paddle.Blade));
    }

    /// <summary>
    /// The length to have with that blade in that hull wherever the shaft ends: a setting where the paddle reaches so far, else a quarter
    /// inch.
    /// </summary>
    public static Length Ideal(AnalysisInput question, Fit fit)
    {
        double inches = Math.Clamp(fit.Alignment.LengthInches(fit.Posterior.LeastLoss, question.Hull, question.Paddle.Blade), 0,
            MostInches);
        Paddle paddle = question.Paddle;
        double slack = paddle.Step.Inches / 2;
        return !paddle.IsFixed && inches >= paddle.Shortest.Inches - slack && inches <= paddle.Longest.Inches + slack
            ? Cheapest(question, fit, AllowedSettings.Of(paddle, null))
            : Length.FromInches(inches).RoundedTo(Length.QuarterInch);
    }

    /// <summary>The nearest sixteenth of an inch, or millimetre, to an uncertain length: finer it is not known.</summary>
    private static Length Rough(double inches, LengthUnit unit) =>
        Length.FromInches(Math.Clamp(inches, 0, MostInches)).RoundedTo(unit == LengthUnit.Centimetres ? Millimetre : Sixteenth);

    private static List<StepProbability> Probabilities(AnalysisInput question, Fit fit)
    {
        List<StepProbability> probabilities = [];
        IReadOnlyList<Length> settings = AllowedSettings.Of(question.Paddle, null).Settings;
        double below = 0;
        for (int k = 0; k < settings.Count; k++)
        {
            double upTo = 1;
            if (k + 1 < settings.Count)
            {
                double middle = 0.5 * (
                    settings[k].InchesMoreThan(fit.Alignment.Start) + settings[k + 1].InchesMoreThan(fit.Alignment.Start));
                upTo = fit.Posterior.Below(middle + fit.Alignment.Align(settings[k], question.Hull, question.Paddle.Blade)
                    - settings[k].InchesMoreThan(fit.Alignment.Start));
            }

            if (upTo - below >= WorthListing)
                probabilities.Add(new(settings[k], upTo - below));
            below = upTo;
        }

        return probabilities;
    }
}
