using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Assessments;

/// <summary>
/// While a shoulder, elbow or back has been sore of late, nothing longer is proposed than what did not hurt. A medical rule it
/// is not: common sense, no source.
/// </summary>
/// <param name="Length">The longest length to propose, in the hull and with the blade asked for; null for no limit.</param>
/// <param name="Worst">The worst soreness of late, 0 where none was told.</param>
/// <param name="EverywhereSore">Whether no length of late is known not to have hurt.</param>
internal sealed record SorenessCeiling(Length? Length, double Worst, bool EverywhereSore)
{
    /// <summary>Where every length hurt, only what is shorter than all of them by this much is left open, inches.</summary>
    private const double StepBelowInches = 0.25;

    /// <summary>The ceiling on that day.</summary>
    public static SorenessCeiling Of(AnalysisInput question, Alignment alignment)
    {
        TuningSettings settings = question.Settings;
        List<(double Aligned, double? Soreness)> lately = [];
        foreach (Outing outing in question.Outings)
        {
            int ago = question.Today.DayNumber - outing.Date.DayNumber;
            if (ago < 0 || ago > settings.SorenessDays || question.HullWith(outing.HullId) is not { } hull)
                continue;
            // A piece that does not count for speed still counts for the shoulder.
            foreach (Piece piece in outing.Pieces)
                if (question.PaddleWith(piece.PaddleId) is { } paddle)
                    lately.Add((alignment.Align(piece.Length, hull, paddle.Blade), piece.Soreness?.Points));
        }

        double worst = 0, shortestSore = double.PositiveInfinity;
        foreach ((double aligned, double? soreness) in lately)
        {
            worst = Math.Max(worst, soreness ?? 0);
            if (soreness >= settings.SorenessLimit)
                shortestSore = Math.Min(shortestSore, aligned);
        }

        if (double.IsPositiveInfinity(shortestSore))
            return new(null, worst, false);

        double ceiling = double.NegativeInfinity;
        foreach ((double aligned, double? soreness) in lately)
        {
            if (soreness < settings.SorenessLimit && aligned < shortestSore - 1e-6)
                ceiling = Math.Max(ceiling, aligned);
        }

        bool everywhere = double.IsNegativeInfinity(ceiling);
        double inches = alignment.LengthInches(everywhere ? shortestSore - StepBelowInches : ceiling, question.Hull, question.Paddle.Blade);
        return new(Domain.Values.Length.FromInches(Math.Clamp(inches, 0, Domain.Values.Length.Longest.Inches)), worst, everywhere);
    }
}
