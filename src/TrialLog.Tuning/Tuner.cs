using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Checks;
using TrialLog.Tuning.Model;
using TrialLog.Tuning.Planning;

namespace TrialLog.Tuning;

/// <summary>
/// Finds the best paddle length from a log. The model, its priors and its sources are in docs/model.md. Pure: the same question
/// gives the same answer to the last digit, whatever else runs beside it.
/// </summary>
public static class Tuner
{
    /// <summary>What a gain is told over where no goal event is named: an hour.</summary>
    private const double ToldOverSeconds = 3600;

    /// <summary>How many probabilities of being flat within an inch make the curve flat.</summary>
    private const double FlatAbove = 0.9;

    /// <summary>How many outings a progress chart shows before it skips some.</summary>
    private const int MostProgressPoints = 80;

    /// <summary>What the log says about the question's paddler, hull and paddle.</summary>
    public static Analysis Analyse(AnalysisInput question)
    {
        Fit fit = Fit.Of(question);
        Assessment assessment = Assessment.Of(question, fit);
        PlannedLengths planned = CardPlanner.Plan(question, fit, assessment.Allowed, assessment.Habitual);
        double goalSeconds = Durations.GoalSeconds(question, fit.Table) ?? ToldOverSeconds;
        Posterior posterior = fit.Posterior;
        double current = Align(assessment.Habitual.Current), best = Align(assessment.Best.Length);
        double gain = Math.Max(0, posterior.ExpectedLoss(current) - posterior.ExpectedLoss(best)), left = posterior.ExpectedLoss(best);
        bool flat = posterior.LogCurvature.Mean(log => posterior.Share * Math.Exp(log) < assessment.Worthwhile ? 1 : 0) > FlatAbove;
        bool swaps = question.Paddler.SwapsOnWater;
        OutingsToGo toGo = assessment.Stop ? new(0, 0, 0) : ToGo(question, fit, assessment, planned, swaps);
        OutingsToGo? ifSwapping = assessment.Stop || swaps ? null : ToGo(question, fit, assessment, planned, swaps: true);
        ResponseCurve curve = CurveDrawing.Of(question, fit, assessment.Best.Length);
        double low = (1 - question.Settings.Level) / 2;
        return new()
        {
            Paddler = question.Paddler,
            Hull = question.Hull,
            Paddle = question.Paddle,
            Start = StartLength.Of(question.Paddler),
            Outings = fit.Table.Outings.Count,
            Pieces = fit.Table.Count,
            Current = assessment.Habitual.Current,
            CurrentIsUsual = assessment.Habitual.Paddled,
            Best = assessment.Best,
            Curvature = new(Curvature(0.5), Curvature(low), Curvature(1 - low)),
            GainFromMovingPercent = gain,
            GainFromMovingSeconds = InSeconds(gain),
            GainLeftPercent = left,
            GainLeftSeconds = InSeconds(left),
            GoalSeconds = goalSeconds,
            WorthwhilePercent = assessment.Worthwhile,
            ProbabilityWorthwhileLeft = assessment.WorthwhileLeft,
            Standing = assessment.Soreness.Length is not null ? Standing.Sore : HardlyTells(question, fit) ? Standing.CannotTell : !assessment.Stop ? Standing.Testing : flat ? Standing.Flat : Standing.Settled,
            DiminishingReturns = assessment.Stop,
            Flat = flat,
            WaitsForAnotherOuting = fit.Table.Outings.Count == 1 && assessment.WorthwhileLeft < question.Settings.StopBelow,
            BeyondPaddle = BeyondPaddle(),
            SorenessCeiling = assessment.Soreness.Length,
            WorstSoreness = assessment.Soreness.Worst,
            SoreEverywhere = assessment.Soreness.EverywhereSore,
            TopHandOverhead = TopHandOverhead(question),
            OutingsToGo = toGo,
            OutingsToGoIfSwapping = ifSwapping,
            Card = CardWriter.Of(question, fit, planned),
            Checks = HealthChecks.Of(question, curve.Pieces, fit.Alignment.LengthInches(posterior.LeastLoss, question.Hull, question.Paddle.Blade), Without),
            Curve = curve,
        };

        // On which side of the paddle's range the length of least loss lies: −1 shorter, 1 longer, 0 within.
        int BeyondPaddle()
        {
            double inches = fit.Alignment.LengthInches(posterior.LeastLoss, question.Hull, question.Paddle.Blade), slack = question.Paddle.Step.Inches / 2;
            return inches < question.Paddle.Shortest.Inches - slack ? -1 : inches > question.Paddle.Longest.Inches + slack ? 1 : 0;
        }

        double Align(Length length) => fit.Alignment.Align(length, question.Hull, question.Paddle.Blade);
        double Curvature(double share) => Math.Exp(posterior.LogCurvature.Quantile(share));
        // y = 100 ln(speed): a gain of g percent shortens the time by the factor e^(−g/100).
        double InSeconds(double percent) => goalSeconds * (1 - Math.Exp(-percent / 100));
        double? Without(Guid piece)
        {
            Fit other = Fit.Of(question with { Outings = [.. question.Outings.Select(outing => outing with { Pieces = [.. outing.Pieces.Where(one => one.Id != piece)] })] });
            return other.Alignment.LengthInches(other.Posterior.LeastLoss, question.Hull, question.Paddle.Blade);
        }
    }

    /// <summary>
    /// The state of the search before the first outing and after each one, by the calendar. In a log of more than
    /// 80 outings some are left out, never the last.
    /// </summary>
    public static IReadOnlyList<ProgressPoint> Progress(AnalysisInput question)
    {
        PieceTable all = PieceTable.Of(question, new(StartLength.Of(question.Paddler).Length, [question.Hull, .. question.Hulls.Where(hull => hull.Id != question.Hull.Id)]));
        int count = all.Outings.Count, every = count / MostProgressPoints + 1;
        List<ProgressPoint> points = [];
        for (int outings = 0; outings <= count; outings++)
        {
            if (outings > 0 && outings < count && (count - outings) % every != 0)
                continue;
            Outing? last = outings == 0 ? null : all.Outings[outings - 1];
            AnalysisInput then = question with
            {
                Outings = [.. all.Outings.Take(outings)],
                TechniqueChecks = last is null ? [] : [.. question.TechniqueChecks.Where(check => check.Date <= last.Date)],
                Today = last?.Date ?? question.Today,
            };
            Fit fit = Fit.Of(then);
            Assessment assessment = Assessment.Of(then, fit);
            double best = fit.Alignment.Align(assessment.Best.Length, question.Hull, question.Paddle.Blade);
            points.Add(new(last?.Id, last?.Date, outings, assessment.Best.Length, assessment.Best.LikelyLow, assessment.Best.LikelyHigh,
                fit.Posterior.ExpectedLoss(best), assessment.WorthwhileLeft, assessment.Stop));
        }

        return points;
    }

    /// <summary>The best length in each of these hulls with each of these paddles' blades, hull by hull.</summary>
    /// <param name="question">The log; its own hull and paddle do not matter.</param>
    /// <param name="hulls">The hulls to carry it to.</param>
    /// <param name="paddles">The paddles whose blades to carry it to; steering blades are left out, since they are sized by their own advice.</param>
    public static IReadOnlyList<CarriedLength> Carry(AnalysisInput question, IReadOnlyList<Hull> hulls, IReadOnlyList<Paddle> paddles)
    {
        List<CarriedLength> carried = [];
        foreach (Hull hull in hulls)
        {
            Fit? fit = null;
            foreach (Paddle paddle in paddles)
            {
                if (paddle.Steering)
                    continue;
                AnalysisInput asked = question with { Hull = hull, Paddle = paddle, Hulls = WithAll(question.Hulls, hulls), Paddles = WithAll(question.Paddles, paddles) };
                fit ??= Fit.Of(asked);
                carried.Add(Carried(asked, fit));
            }
        }

        return carried;
    }

    private static CarriedLength Carried(AnalysisInput question, Fit fit)
    {
        Posterior posterior = fit.Posterior;
        double level = question.Settings.Level;
        Length best = Length.FromInches(Inches(posterior.LeastLoss)).RoundedTo(Spoken.QuarterInch);
        double aligned = fit.Alignment.Align(best, question.Hull, question.Paddle.Blade);
        double worthwhile = question.Paddler.WorthwhilePercent ?? question.Settings.WorthwhilePercent;
        int pieces = 0;
        for (int j = 0; j < fit.Table.Outings.Count; j++)
            if (fit.Table.Outings[j].HullId == question.Hull.Id)
                pieces += fit.Table.OutingStart[j + 1] - fit.Table.OutingStart[j];
        return new(question.Hull, question.Paddle, best,
            BestSetting.Rough(Inches(posterior.Quantile((1 - level) / 2)), question.Paddler.Unit),
            BestSetting.Rough(Inches(posterior.Quantile((1 + level) / 2)), question.Paddler.Unit),
            posterior.Below(aligned + 0.25) - posterior.Below(aligned - 0.25),
            pieces, question.Paddle.Reaches(best), posterior.ExpectedLoss(aligned),
            posterior.WorthwhileLeft(aligned, double.NegativeInfinity, double.PositiveInfinity, worthwhile) < question.Settings.StopBelow)
        {
            SorenessCeiling = SorenessCeiling.Of(question, fit.Alignment).Length,
        };

        double Inches(double at) => Math.Clamp(fit.Alignment.LengthInches(at, question.Hull, question.Paddle.Blade), 0, 390);
    }

    private static List<T> WithAll<T>(IReadOnlyList<T> first, IReadOnlyList<T> second) => [.. first, .. second];

    /// <summary>
    /// The forecast, at least one outing since the rule has not stopped yet. Without swaps on the water two outings make the
    /// contrast that one would.
    /// </summary>
    private static OutingsToGo ToGo(AnalysisInput question, Fit fit, Assessment assessment, PlannedLengths planned, bool swaps)
    {
        double variance = CardPlanner.PieceVariance(fit.Posterior, question.Settings) * 4 / planned.Lengths.Count;
        double halfWidth = swaps && planned.Spread > 0 ? planned.Spread / 2 : question.Settings.CardWidthInches / 2;
        if (!swaps)
            variance += 4 * fit.Posterior.LogOuting.Mean(static log => Math.Exp(2 * log));
        OutingsToGo toGo = Forecast.Of(fit.Posterior, Math.Sqrt(variance), halfWidth, assessment.Worthwhile, Assessment.StopBelow(question, swaps));
        int least = Math.Max(1, Assessment.FewestOutings - fit.Table.Outings.Count);
        return new(Math.Max(least, toGo.Median), Math.Max(least, toGo.Low), Math.Max(least, toGo.High));
    }

    private static bool TopHandOverhead(AnalysisInput question) => question.TechniqueChecks
        .Where(check => check.HullId == question.Hull.Id && check.PaddleId == question.Paddle.Id)
        .OrderBy(check => check.Date).LastOrDefault() is { } latest && TechniqueRule.Implied(latest).Overhead;

    /// <summary>Whether every piece was paddled in a crew of three or more, and the range is hardly narrower than without any piece.</summary>
    private static bool HardlyTells(AnalysisInput question, Fit fit)
    {
        if (question.Hull.Crew < 3 || fit.Table.Count == 0)
            return false;
        for (int h = 0; h < fit.Table.HullsWithPieces; h++)
            if (fit.Table.Hulls[h].Crew < 3)
                return false;
        Posterior without = Fit.Of(question with { Outings = [] }).Posterior;
        return Width(fit.Posterior) > 0.6 * Width(without);

        static double Width(Posterior posterior) => posterior.Quantile(0.95) - posterior.Quantile(0.05);
    }
}
