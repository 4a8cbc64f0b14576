using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Checks;
using TrialLog.Tuning.Information;
using TrialLog.Tuning.Model;
using TrialLog.Tuning.Planning;

namespace TrialLog.Tuning;

/// <summary>
/// Finds the best paddle length from a log. The model, its priors and its sources are in docs/model.md. Pure: the same input
/// gives the same answer to the last digit, whatever else runs beside it.
/// </summary>
public static class Tuner
{
    /// <summary>What a gain is told over where no goal event is named: an hour.</summary>
    private const double ToldOverSeconds = 3600;

    /// <summary>How many outings a progress chart shows before it skips some.</summary>
    private const int MostProgressPoints = 80;

    /// <summary>What the log says about the input's paddler, hull and paddle.</summary>
    public static Analysis Analyse(AnalysisInput input)
    {
        AssessedFit assessed = AssessedFit.Of(input);
        (Fit fit, Assessment says) = (assessed.Fit, assessed.Says);
        Posterior posterior = fit.Posterior;
        PlannedLengths planned = CardPlanner.Plan(assessed);
        double goalSeconds = Durations.GoalSeconds(input, fit.Table) ?? ToldOverSeconds;
        double gain = Math.Max(0, posterior.ExpectedLoss(assessed.Align(assessed.Habitual.Current)) - says.GainLeftPercent);
        bool swaps = input.Paddler.SwapsOnWater, ended = says.DiminishingReturns;
        OutingsToGo toGo = ended ? new(0, 0, 0) : Forecast.Of(assessed, planned, swaps);
        OutingsToGo? ifSwapping = ended || swaps ? null : Forecast.Of(assessed, planned, swaps: true);
        (IReadOnlyList<Length> Lengths, IReadOnlyList<Paddle> Paddles) followUp = input.Paddle.IsFixed
            ? FollowUp.Of(assessed, planned.Form) : ([], []);
        ResponseCurve curve = CurveDrawing.Of(input, fit, says.Best.Length);
        double low = (1 - input.Settings.Level) / 2;
        return new()
        {
            Paddler = input.Paddler,
            Hull = says.Hull,
            Paddle = says.Paddle,
            Best = says.Best,
            Ideal = says.Ideal,
            PiecesInHull = says.PiecesInHull,
            GainLeftPercent = says.GainLeftPercent,
            WorthwhilePercent = says.WorthwhilePercent,
            ProbabilityWorthwhileLeft = says.ProbabilityWorthwhileLeft,
            TooShort = says.TooShort,
            OnToldEffort = says.OnToldEffort,
            PricePercent = says.PricePercent,
            Standing = says.Standing,
            Why = says.Why,
            Flat = says.Flat,
            Soreness = says.Soreness,
            SorenessLimit = says.SorenessLimit,
            Start = StartLength.Of(input.Paddler),
            Outings = fit.Table.Outings.Count,
            Pieces = fit.Table.Count,
            Current = assessed.Habitual.Current,
            CurrentIsUsual = assessed.Habitual.Paddled,
            SoreEverywhere = assessed.Soreness.EverywhereSore,
            TopHandOverhead = TopHandOverhead(input),
            Curvature = new(Curvature(0.5), Curvature(low), Curvature(1 - low)),
            GainFromMovingPercent = gain,
            GainFromMovingSeconds = InSeconds(gain),
            GainLeftSeconds = InSeconds(says.GainLeftPercent),
            GoalSeconds = goalSeconds,
            OutingsToGo = toGo,
            OutingsToGoIfSwapping = ifSwapping,
            Card = input.Paddle.IsFixed ? CardWriter.Of(assessed, planned with { Lengths = followUp.Lengths })
                : CardWriter.Of(assessed, planned),
            CardPaddles = followUp.Paddles,
            CardOptions = says.Standing == Standing.Testing && !input.Paddle.IsFixed && swaps ? Options(assessed, planned, toGo) : [],
            ToFeel = ended && !input.Paddle.IsFixed ? CardPlanner.ToFeel(assessed) : [],
            FixedPaddle = input.Paddle.IsFixed ? Fixed() : null,
            Checks = HealthChecks.Of(input, curve.Pieces, fit.Alignment.LengthInches(posterior.LeastLoss, input.Hull, input.Paddle.Blade),
                Without, fit.Effort?.HeartRate?.Slope),
            Curve = curve,
            Effort = EffortView.Of(assessed),
            LearntFromSquad = input.Squad,
        };

        FixedPaddleFacts Fixed()
        {
            double own = assessed.Align(input.Paddle.Longest), cost = Math.Max(0, posterior.ExpectedLoss(own) - says.GainLeftPercent);
            return new(cost, InSeconds(cost),
                posterior.WorthwhileLeft(own, double.NegativeInfinity, double.PositiveInfinity, says.WorthwhilePercent),
                followUp.Paddles.FirstOrDefault(static paddle => !paddle.IsFixed));
        }

        double Curvature(double share) => Math.Exp(posterior.LogCurvature.Quantile(share));
        // y = 100 ln(speed): a gain of g percent shortens the time by the factor e^(−g/100).
        double InSeconds(double percent) => goalSeconds * (1 - Math.Exp(-percent / 100));
        double? Without(Guid piece)
        {
            Fit other = Fit.Of(
                input with
                {
                    Outings = [
                .. input.Outings.Select(outing => outing with { Pieces = [.. outing.Pieces.Where(one => one.Id != piece)] })]
                });
            return other.Alignment.LengthInches(other.Posterior.LeastLoss, input.Hull, input.Paddle.Blade);
        }
    }

    /// <summary>
    /// The card, and beside it what more water time would win: longer pieces where the race asks for them, else more. Nothing beside it
    /// where the answer says already which pieces would tell more.
    /// </summary>
    private static List<CardOption> Options(AssessedFit assessed, PlannedLengths planned, OutingsToGo toGo)
    {
        List<CardOption> options = [Option(planned, toGo)];
        if (assessed.Says.TooShort is null && (ShortPieces.Longer(assessed, planned.Form) ?? More(planned.Form)) is { } form)
        {
            PlannedLengths more = CardPlanner.Plan(assessed, form);
            options.Add(Option(more, Forecast.Of(assessed, more, swaps: true)));
        }

        return options;

        static TrialForm? More(TrialForm form) =>
            form.Pieces + 2 <= TrialHabits.MostPieces ? form.With(form.Pieces + 2) : null;
        static CardOption Option(PlannedLengths card, OutingsToGo toGo) =>
            new(card.Lengths.Count, card.Form.Distance,
                (int)Math.Ceiling(card.Form.With(card.Lengths.Count).Minutes(CardOrder.Changes(card.Lengths)) / 5) * 5, card.Value, toGo);
    }

    private static bool TopHandOverhead(AnalysisInput input) => input.TechniqueChecks
        .Where(check => check.HullId == input.Hull.Id && check.PaddleId == input.Paddle.Id)
        .OrderBy(check => check.Date).LastOrDefault() is { } latest && TechniqueRule.Implied(latest).Overhead;

    /// <summary>
    /// What so many more outings of the input's hull with each of these paddles should win, percent of speed: the first figure is for none,
    /// 0, and it never falls. For planning who tests; how it is worked out is in docs/model.md.
    /// </summary>
    /// <param name="input">The log and the hull; its own paddle does not matter.</param>
    /// <param name="paddles">The paddles to test with.</param>
    /// <param name="most">The most outings to look ahead.</param>
    public static IReadOnlyList<IReadOnlyList<double>> ValueOfOutings(AnalysisInput input, IReadOnlyList<Paddle> paddles, int most)
    {
        Fit? fit = null;
        List<IReadOnlyList<double>> values = [];
        foreach (Paddle paddle in paddles)
        {
            // One fit serves all paddles, as in Carry.
            AnalysisInput asked = input with { Paddle = paddle, Paddles = [.. input.Paddles, .. paddles] };
            fit = fit?.For(paddle, input.Settings) ?? Fit.Of(asked);
            AllowedSettings allowed = AllowedSettings.Of(paddle, SorenessCeiling.Of(asked, fit.Alignment).Length);
            TrialForm form = TrialForm.Of(asked, fit.Table, Comparisons.Of(fit.Table).Count);
            TrialValue value = TrialValue.Of(asked, fit, allowed.Settings,
                HabitualLength.Of(asked, fit.Table, fit.Alignment).UsedToInches, form);
            double[] won = new double[most + 1];
            for (int outings = 1; outings <= most; outings++)
                won[outings] = Math.Max(won[outings - 1], value.Of(outings));
            values.Add(won);
        }

        return values;
    }

    /// <summary>
    /// The state of the search before the first outing and after each one, by the calendar; the last as it stands now, the same as
    /// <see cref="Analyse"/> finds it. In a log of more than 80 outings some are left out, never the last.
    /// </summary>
    public static IReadOnlyList<ProgressPoint> Progress(AnalysisInput input)
    {
        PieceTable all = PieceTable.Of(
            input, new(StartLength.Of(input.Paddler).Length, [input.Hull, .. input.Hulls.Where(hull => hull.Id != input.Hull.Id)]));
        int count = all.Outings.Count, every = count / MostProgressPoints + 1;
        List<ProgressPoint> points = [];
        for (int outings = 0; outings <= count; outings++)
        {
            if (outings > 0 && outings < count && (count - outings) % every != 0)
                continue;
            Outing? last = outings == 0 ? null : all.Outings[outings - 1];
            // The last is what stands now: a clearance or a technique check since then counts, as in an analysis.
            AnalysisInput then = outings == count ? input : input with
            {
                Outings = [.. all.Outings.Take(outings)],
                TechniqueChecks = last is null ? [] : [.. input.TechniqueChecks.Where(check => check.Date <= last.Date)],
                Today = last?.Date ?? input.Today,
            };
            AssessedFit assessed = AssessedFit.Of(then);
            double taught = points.Count == 0 ? 0 : assessed.Fit.Posterior.ExpectedLoss(assessed.Align(points[^1].Best))
                - assessed.Fit.Posterior.ExpectedLoss(assessed.Align(assessed.Says.Best.Length));
            points.Add(new(last?.Id, last?.Date, outings, assessed.Says) { TaughtPercent = Math.Max(0, taught) });
        }

        return points;
    }

    /// <summary>What the log means for each of these hulls with each of these paddles, hull by hull.</summary>
    /// <param name="input">The log; its own hull and paddle do not matter.</param>
    /// <param name="hulls">The hulls to carry it to.</param>
    /// <param name="paddles">The paddles whose blades to carry it to; steering blades are left out, since they are sized by their own
    /// advice.</param>
    public static IReadOnlyList<Assessment> Carry(AnalysisInput input, IReadOnlyList<Hull> hulls, IReadOnlyList<Paddle> paddles)
    {
        List<Assessment> carried = [];
        foreach (Hull hull in hulls)
        {
            Fit? fit = null;
            foreach (Paddle paddle in paddles)
            {
                if (paddle.Steering)
                    continue;
                AnalysisInput asked = input
                    with
                { Hull = hull, Paddle = paddle, Hulls = [.. input.Hulls, .. hulls], Paddles = [.. input.Paddles, .. paddles] };
                fit = fit?.For(paddle, input.Settings) ?? Fit.Of(asked);
                carried.Add(AssessedFit.Of(asked, fit).Says);
            }
        }

        return carried;
    }
}
