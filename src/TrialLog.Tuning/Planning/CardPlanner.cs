using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Information;
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
    /// <summary>Plans the next outing.</summary>
    public static PlannedLengths Plan(AssessedFit assessed)
    {
        (AnalysisInput input, Fit fit) = (assessed.Input, assessed.Fit);
        TuningSettings settings = input.Settings;
        TrialValue value = TrialValue.Of(input, fit, assessed.Allowed.Settings, assessed.Habitual.UsedToInches);
        int pieces = Math.Max(4, settings.CardPieces / 4 * 4);
        return value.Candidates.Count == 1 ? new([.. Enumerable.Repeat(value.Candidates[0], pieces)], 0)
            : input.Paddler.SwapsOnWater ? Mirrored(value, pieces, fit, settings, assessed.Says.WorthwhilePercent)
            : OneLength(value, TrialValue.PieceVariance(fit.Posterior, settings) / pieces, pieces, input, fit, assessed.Habitual);
    }

    private static PlannedLengths Mirrored(TrialValue value, int pieces, Fit fit, TuningSettings settings, double worthwhile)
    {
        (IReadOnlyList<Length> candidates, double[] aligned) = (value.Candidates, value.Aligned);
        double best = value.Pairs.Max(static pair => pair.Worth.Score);

        // Once there is next to nothing left to win, cards are all alike, and the steps come down to the finest.
        double enough = best * (1 - settings.CardTolerance) - settings.CardIndifference * worthwhile;
        Pair chosen = default;
        double narrowest = double.PositiveInfinity;
        foreach (Pair pair in value.Pairs)
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
    private static PlannedLengths OneLength(TrialValue value, double meanVariance, int pieces, AnalysisInput question, Fit fit, HabitualLength habitual)
    {
        (IReadOnlyList<Length> candidates, double[] aligned) = (value.Candidates, value.Aligned);
        double outingVariance = fit.Posterior.LogOuting.Mean(static log => Math.Exp(2 * log)) + meanVariance;
        (int outings, double mean, double meanSquare, double meanSkew) = Before(question, fit);
        int chosen = 0;
        double best = -1, usedTo = double.PositiveInfinity;
        for (int a = 0; a < aligned.Length; a++)
        {
            double away = Math.Abs(candidates[a].Inches - habitual.UsedToInches);
            if (outings > 0)
            {
                Consider(a, value.Contrast(aligned[a], mean, meanSquare, meanSkew, outingVariance * (1 + 1.0 / outings)).Value, away);
                continue;
            }

            for (int b = 0; b < aligned.Length; b++)
                if (b != a)
                    Consider(a, value.Contrast(aligned[a], aligned[b], 2 * outingVariance).Value, away);
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
}
