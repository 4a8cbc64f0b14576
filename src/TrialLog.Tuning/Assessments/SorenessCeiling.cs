using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Assessments;

/// <summary>While soreness stands, nothing longer is proposed than what did not hurt.</summary>
/// <param name="Length">The longest length to propose, in the hull and with the blade asked for; null for no limit.</param>
/// <param name="Standing">The soreness that stands; null where there is none.</param>
/// <param name="EverywhereSore">Whether no shorter length is known not to have hurt.</param>
internal sealed record SorenessCeiling(Length? Length, StandingSoreness? Standing, bool EverywhereSore)
{
    /// <summary>Where every length hurt, only what is shorter than all of them by this much is left open, inches.</summary>
    private const double StepBelowInches = 0.25;

    /// <summary>The ceiling on the day of the question.</summary>
    public static SorenessCeiling Of(AnalysisInput question, Alignment alignment)
    {
        double limit = question.Settings.SorenessLimit;
        if (StandingSoreness.Of(question.Outings, question.SorenessClearances, question.Today, limit) is not { } standing)
            return new(null, null, false);
        List<(double Aligned, bool Hurt)> told = [];
        foreach (Outing outing in question.Outings)
        {
            if (outing.Date > question.Today || question.HullWith(outing.HullId) is not { } hull)
                continue;
            foreach (Piece piece in outing.Pieces)
                if (piece.Soreness is { } soreness && question.PaddleWith(piece.PaddleId) is { } paddle)
                    told.Add(
                        (alignment.Align(piece.Length, hull, paddle.Blade), soreness.Points >= limit && outing.Date >= standing.Since));
        }

        // In a hull or with a paddle that is no longer known nothing can be aligned: then only what is short for the start length is left
        // open.
        double shortestSore = told.Where(static one => one.Hurt).Select(static one => one.Aligned).DefaultIfEmpty(0).Min();
        double[] painless = [.. told.Where(one => !one.Hurt && one.Aligned < shortestSore - 1e-6).Select(static one => one.Aligned)];
        bool everywhere = painless.Length == 0;
        double inches = alignment.LengthInches(
            everywhere ? shortestSore - StepBelowInches : painless.Max(), question.Hull, question.Paddle.Blade);
        return new(Domain.Values.Length.FromInches(Math.Clamp(inches, 0, Domain.Values.Length.Longest.Inches)), standing, everywhere);
    }
}
