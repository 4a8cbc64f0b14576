using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Planning;

/// <summary>The lengths of the next outing, in order, and what they are worth.</summary>
/// <param name="Lengths">A length for each piece.</param>
/// <param name="Value">Expected fall of the expected loss, percent of speed.</param>
internal sealed record PlannedLengths(IReadOnlyList<Length> Lengths, double Value)
{
    /// <summary>Longest less shortest, inches.</summary>
    public double Spread => Lengths.Max().InchesMoreThan(Lengths.Min());
}

/// <summary>
/// Chooses the lengths of the next outing by expected value of information over the shaft's settings, within a step limit
/// from what the paddler is used to and under the soreness ceiling. Of cards that are worth nearly the same, the narrowest.
/// </summary>
internal static class CardPlanner
{
    /// <summary>No two lengths of a card stand closer than this, inches: a finer difference cannot be told in an outing.</summary>
    private const double Finest = 0.2;

    /// <summary>Length points for each curvature in the cloud that cards are tried on.</summary>
    private const int CloudLengths = 15;

    /// <summary>Plans the next outing.</summary>
    public static PlannedLengths Plan(AnalysisInput question, Fit fit, AllowedSettings reach, HabitualLength habitual)
    {
        TuningSettings settings = question.Settings;
        List<Length> candidates = Candidates(reach, habitual, settings);
        int pieces = Math.Max(4, settings.CardPieces / 4 * 4);
        if (candidates.Count == 1)
            return new([.. Enumerable.Repeat(candidates[0], pieces)], 0);

        double[] aligned = new double[candidates.Count];
        for (int k = 0; k < aligned.Length; k++)
            aligned[k] = fit.Alignment.Align(candidates[k], question.Hull, question.Paddle.Blade);
        ExpectedValueOfInformation value = new(PlanningCloud.Of(fit.Posterior, CloudLengths), fit.Skew);
        double pieceVariance = PieceVariance(fit.Posterior, settings);
        return question.Paddler.SwapsOnWater
            ? Mirrored(candidates, aligned, value, 4 * pieceVariance / pieces, pieces, fit, settings, question.Paddler.WorthwhilePercent ?? settings.WorthwhilePercent)
            : OneLength(candidates, aligned, value, pieceVariance / pieces, pieces, question, fit, habitual);
    }

    /// <summary>
    /// What a piece's noise amounts to for a contrast, percent squared: heavy tails lose (ν + 3)/(ν + 1) of the information
    /// (Fisher information of Student's t about its centre).
    /// </summary>
    public static double PieceVariance(Posterior posterior, TuningSettings settings)
    {
        double nu = settings.DegreesOfFreedom, tails = double.IsPositiveInfinity(nu) ? 1 : (nu + 3) / (nu + 1);
        return tails * posterior.LogPiece.Mean(static log => Math.Exp(2 * log));
    }

    private static PlannedLengths Mirrored(List<Length> candidates, double[] aligned, ExpectedValueOfInformation value, double variance, int pieces, Fit fit,
        TuningSettings settings, double worthwhile)
    {
        List<(int Short, int Long, CardWorth Worth)> tried = [];
        double best = 0;
        for (int a = 0; a < aligned.Length; a++)
            for (int b = a + 1; b < aligned.Length; b++)
            {
                if (aligned[b] - aligned[a] > settings.CardWidthInches + 1e-6)
                    continue;
                CardWorth worth = value.Of(aligned[a] * aligned[a] - aligned[b] * aligned[b], aligned[a] - aligned[b], fit.Skew.Column(aligned[a]) - fit.Skew.Column(aligned[b]), variance);
                tried.Add((a, b, worth));
                best = Math.Max(best, worth.Score);
            }

        // Once there is next to nothing left to win, cards are all alike, and the steps come down to the finest.
        double enough = best * (1 - settings.CardTolerance) - settings.CardIndifference * worthwhile;
        (int Short, int Long, CardWorth Worth) chosen = default;
        double narrowest = double.PositiveInfinity;
        foreach ((int Short, int Long, CardWorth Worth) pair in tried)
        {
            double width = aligned[pair.Long] - aligned[pair.Short];
            if (pair.Worth.Score < enough)
                continue;
            if (width < narrowest - 1e-6 || (width < narrowest + 1e-6 && pair.Worth.Score > chosen.Worth.Score))
            {
                narrowest = Math.Min(narrowest, width);
                chosen = pair;
            }
        }

        // Which length goes first alternates, so that a fade that is not straight favours neither over the season.
        bool shortFirst = fit.Table.Outings.Count % 2 == 0;
        Length outer = candidates[shortFirst ? chosen.Short : chosen.Long], inner = candidates[shortFirst ? chosen.Long : chosen.Short];
        List<Length> lengths = [];
        for (int k = 0; k < pieces; k++)
            lengths.Add(k % 4 is 0 or 3 ? outer : inner);
        return new(lengths, chosen.Worth.Value);
    }

    /// <summary>
    /// One length for the whole outing: its contrast is with the outings before. Before any, the first of the best two outings
    /// to come.
    /// </summary>
    private static PlannedLengths OneLength(List<Length> candidates, double[] aligned, ExpectedValueOfInformation value, double meanVariance, int pieces,
        AnalysisInput question, Fit fit, HabitualLength habitual)
    {
        double outingVariance = fit.Posterior.LogOuting.Mean(static log => Math.Exp(2 * log)) + meanVariance;
        (int outings, double mean, double meanSquare, double meanSkew) = Before(question, fit);
        int chosen = 0;
        double best = -1, usedTo = double.PositiveInfinity;
        for (int a = 0; a < aligned.Length; a++)
        {
            double away = Math.Abs(candidates[a].Inches - habitual.UsedToInches);
            if (outings > 0)
            {
                Consider(a, value.Of(aligned[a] * aligned[a] - meanSquare, aligned[a] - mean, fit.Skew.Column(aligned[a]) - meanSkew, outingVariance * (1 + 1.0 / outings)).Value, away);
                continue;
            }

            for (int b = 0; b < aligned.Length; b++)
                if (b != a)
                    Consider(a, value.Of(aligned[a] * aligned[a] - aligned[b] * aligned[b], aligned[a] - aligned[b], fit.Skew.Column(aligned[a]) - fit.Skew.Column(aligned[b]), 2 * outingVariance).Value, away);
        }

        return new([.. Enumerable.Repeat(candidates[chosen], pieces)], Math.Max(0, best));

        void Consider(int candidate, double worth, double away)
        {
            if (worth > best + 1e-9 || (worth > best - 1e-9 && away < usedTo))
                (chosen, best, usedTo) = (candidate, Math.Max(best, worth), away);
        }
    }

    /// <summary>Outings so far in the hull asked for, with the mean of their aligned lengths and of the squares and of the lopsided part.</summary>
    private static (int Outings, double Mean, double MeanSquare, double MeanSkew) Before(AnalysisInput question, Fit fit)
    {
        int outings = 0;
        double mean = 0, square = 0, skew = 0;
        for (int j = 0; j < fit.Table.Outings.Count; j++)
        {
            if (fit.Table.Outings[j].HullId != question.Hull.Id)
                continue;
            outings++;
            int from = fit.Table.OutingStart[j], to = fit.Table.OutingStart[j + 1];
            for (int i = from; i < to; i++)
            {
                mean += fit.Table.Aligned[i] / (to - from);
                square += fit.Table.Aligned[i] * fit.Table.Aligned[i] / (to - from);
                skew += fit.Skew.Column(fit.Table.Aligned[i]) / (to - from);
            }
        }

        return outings == 0 ? (0, 0, 0, 0) : (outings, mean / outings, square / outings, skew / outings);
    }

    private static List<Length> Candidates(AllowedSettings reach, HabitualLength habitual, TuningSettings settings)
    {
        double limit = settings.StepLimitInches;
        List<Length> near = [];
        foreach (Length setting in reach.Settings)
            if (Math.Abs(setting.Inches - habitual.UsedToInches) <= limit + 1e-6 && (near.Count == 0 || setting.InchesMoreThan(near[^1]) >= Finest))
                near.Add(setting);
        if (near.Count == 0)
            near.Add(reach.Nearest(habitual.UsedToInches));
        return near;
    }
}
