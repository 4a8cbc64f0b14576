using TrialLog.Domain.Boats;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Assessments;

/// <summary>Draws the response curve with its band and the pieces adjusted for everything but length.</summary>
internal static class CurveDrawing
{
    private const int MostPoints = 121;

    /// <summary>The curve around a best length.</summary>
    public static ResponseCurve Of(AnalysisInput question, Fit fit, Length best)
    {
        double bestAligned = fit.Alignment.Align(best, question.Hull, question.Paddle.Blade);
        List<CurvePoint> points = [];
        foreach (Length length in Places(question.Paddle, best))
        {
            double aligned = fit.Alignment.Align(length, question.Hull, question.Paddle.Blade);
            (double low, double high) = fit.Posterior.DifferenceRange(aligned, bestAligned, question.Settings.Level);
            points.Add(new(length, Difference(fit.Posterior, aligned, bestAligned), low, high));
        }

        return new(points, Adjusted(question, fit, bestAligned));
    }

    private static double Difference(Posterior posterior, double aligned, double best) =>
        posterior.ExpectedLoss(best) - posterior.ExpectedLoss(aligned);

    private static List<Length> Places(Paddle paddle, Length best)
    {
        long step = Math.Max(1, paddle.Step.Nanometres), low = paddle.Shortest.Nanometres, high = paddle.Longest.Nanometres;
        if (high - low < 2 * step)
        {
            // A fixed paddle still has a curve around it.
            step = Length.QuarterInch.Nanometres;
            low = Math.Max(0, best.Nanometres - 8 * step);
            high = Math.Min(Length.Longest.Nanometres, best.Nanometres + 8 * step);
        }

        long every = ((high - low) / step / (MostPoints - 1) + 1) * step;
        List<Length> places = [];
        for (long at = low; at <= high; at += every)
            places.Add(Length.FromNanometres(at));
        return places;
    }

    private static List<AdjustedPiece> Adjusted(AnalysisInput question, Fit fit, double best)
    {
        // Pieces have few lengths, and each is looked up once.
        Dictionary<double, double> differences = [];
        double nu = question.Settings.DegreesOfFreedom, full = double.IsPositiveInfinity(nu) ? 1 : (nu + 1) / nu;
        List<AdjustedPiece> adjusted = [];
        for (int j = 0; j < fit.Table.Outings.Count; j++)
        {
            if (fit.Table.Outings[j].HullId != question.Hull.Id)
                continue;
            for (int i = fit.Table.OutingStart[j]; i < fit.Table.OutingStart[j + 1]; i++)
            {
                double aligned = fit.Table.Aligned[i], inches = fit.Alignment.LengthInches(aligned, question.Hull, question.Paddle.Blade);
                if (!differences.TryGetValue(aligned, out double difference))
                    differences[aligned] = difference = Difference(fit.Posterior, aligned, best);
                adjusted.Add(
                    new(fit.Table.Pieces[i].Id, fit.Table.Outings[j].Id, Length.FromInches(Math.Clamp(inches, 0, Length.Longest.Inches)),
                    difference + fit.Residuals[i], Math.Min(1, fit.Weights[i] / full)));
            }
        }

        return adjusted;
    }
}
