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
/// <param name="Form">What the outing looks like.</param>
/// <param name="PieceVariance">Variance of one of its pieces, percent squared.</param>
internal sealed record PlannedLengths(IReadOnlyList<Length> Lengths, double Value, TrialForm Form, double PieceVariance)
{
    /// <summary>Longest less shortest, inches.</summary>
    public double Spread => Lengths.Max().InchesMoreThan(Lengths.Min());
}

/// <summary>
/// Chooses the lengths of the next outing by expected value of information over the shaft's settings, within a step limit
/// from what the paddler is used to and under the soreness ceiling. The first outings compare three lengths, the best in the middle, where
/// there is room; after that two, never further apart than the time before unless the best length has moved. Of cards that are worth nearly
/// the same, the narrowest. The short and the long length begin by turns.
/// </summary>
internal static class CardPlanner
{
    /// <summary>On each side of the best the outer lengths lie at least so far away, inches.</summary>
    private const double LeastAside = 0.5;

    /// <summary>A best length that has moved by so much lets a card be wider than the one before, inches. Chosen.</summary>
    private const double Moved = 0.5;

    /// <summary>A card narrower than this was for feeling, not for finding, and sets no limit to the next, inches. Chosen.</summary>
    private const double TooNarrowToLimit = 1;

    /// <summary>Plans the next outing.</summary>
    public static PlannedLengths Plan(AssessedFit assessed)
    {
        TrialForm form = TrialForm.Of(assessed.Input, assessed.Fit.Table, Comparisons.Of(assessed.Fit.Table).Count);
        return Plan(assessed, LongEnough(assessed, form) ?? form);
    }

    /// <summary>Plans the next outing with other pieces than it would have.</summary>
    public static PlannedLengths Plan(AssessedFit assessed, TrialForm form)
    {
        (AnalysisInput input, Fit fit) = (assessed.Input, assessed.Fit);
        Comparisons comparisons = Comparisons.Of(fit.Table);
        TrialValue value = TrialValue.Of(input, fit, assessed.Allowed.Settings, assessed.Habitual.UsedToInches, form);
        if (value.Candidates.Count == 1)
            return new([.. Enumerable.Repeat(value.Candidates[0], form.Pieces)], 0, form, value.PieceNoise);
        if (!input.Paddler.SwapsOnWater)
            return OneLength(value, form, input, fit, assessed.Habitual);
        bool shortFirst = ShortFirst(fit.Table, comparisons, input.Hull.Id);
        if (comparisons.Count < TrialForm.OutingsOfThree && form.Pieces >= TrialForm.ThreeLengths
            && Three(assessed, value, form, shortFirst) is { } three)
            return three;
        // Where soreness, the shaft or what the body is used to leaves no room on one side, two lengths are enough.
        return Two(value, form.PiecesAreOpen ? form.With(input.Settings.CardPieces) : form, input.Settings, Widest(assessed, comparisons),
            shortFirst);
    }

    /// <summary>
    /// Longer pieces, once short ones have told what they can and the race asks for more; null where they have not, or where the paddler
    /// told the distance or less time than they take.
    /// </summary>
    private static TrialForm? LongEnough(AssessedFit assessed, TrialForm form) =>
        assessed.Says.Why.Contains(StandingReason.PiecesTooShort) && assessed.Input.Trials.Distance is null
        && assessed.Says.TooShort is { LongEnough: { } distance, Minutes: { } minutes } && !(assessed.Input.Trials.Minutes < minutes)
            ? form.Over(distance).With(assessed.Input.Settings.CardPieces)
            : null;

    /// <summary>
    /// Half-inch-wide question, quarter-inch answer: the settings next to the best one, to feel the difference and not to find it.
    /// </summary>
    public static IReadOnlyList<Length> ToFeel(AssessedFit assessed)
    {
        double best = assessed.Says.Best.Length.Inches;
        Length[] near = [.. assessed.Allowed.Settings.Where(setting => Math.Abs(Math.Abs(setting.Inches - best) - 0.25) < 0.13)];
        Length[] outer = near.Length == 0 ? [] : [.. ((Length[])[near.Min(), near.Max()]).Distinct()];
        return outer.Length < 2 ? [] : [outer[0], outer[1], outer[1], outer[0]];
    }

    /// <summary>
    /// Whichever end of the last comparison in this hull did not begin begins now, so that a fade that is not straight favours neither.
    /// </summary>
    private static bool ShortFirst(PieceTable table, Comparisons comparisons, Guid hull)
    {
        if (comparisons.LatestIn(table, hull) is not { } last)
            return true;
        ReadOnlySpan<double> lengths = table.Aligned.AsSpan(table.OutingStart[last]..table.OutingStart[last + 1]);
        double least = double.MaxValue, most = double.MinValue;
        foreach (double length in lengths)
            (least, most) = (Math.Min(least, length), Math.Max(most, length));
        return lengths[0] > 0.5 * (least + most);
    }

    /// <summary>How far apart two lengths may be: as far as the time before, unless the best length has moved.</summary>
    private static double Widest(AssessedFit assessed, Comparisons comparisons)
    {
        PieceTable table = assessed.Fit.Table;
        double most = assessed.Input.Settings.CardWidthInches;
        if (comparisons.Count < TrialForm.OutingsOfThree || comparisons.LatestIn(table, assessed.Input.Hull.Id) is not { } last)
            return most;
        double width = Comparisons.Width(table, last);
        if (width < TooNarrowToLimit)
            return most;
        int before = table.OutingStart[last], after = table.OutingStart[last + 1];
        // The card's own note of what was best then; without one, the middle of what was paddled.
        GivenCard? card = assessed.Input.GivenCards
            .Where(card => card.HullId == assessed.Input.Hull.Id && card.PaddleId == assessed.Input.Paddle.Id
                && card.Outings < table.Outings.Count)
            .MaxBy(static card => card.GivenAt);
        double then = card is not null ? assessed.Align(card.Best)
            : 0.5 * (table.Aligned.AsSpan(before..after).ToArray().Min() + table.Aligned.AsSpan(before..after).ToArray().Max());
        return Math.Abs(assessed.Align(assessed.Says.Best.Length) - then) >= Moved - 1e-6 ? most : Math.Min(most, width);
    }

    private static PlannedLengths? Three(AssessedFit assessed, TrialValue value, TrialForm form, bool shortFirst)
    {
        double best = assessed.Align(assessed.Says.Best.Length);
        int middle = Nearest(value.Aligned, best);
        if (Math.Abs(value.Aligned[middle] - best) > 0.13)
            return null;
        int[] order = CardOrder.OfThree(form.Pieces);
        (int Short, int Long)? chosen = null;
        CardWorth most = default;
        double[] paddled = new double[order.Length];
        for (int a = middle - 1; a >= 0; a--)
        {
            double aside = value.Aligned[middle] - value.Aligned[a];
            int c = Nearest(value.Aligned, value.Aligned[middle] + aside);
            if (aside < LeastAside - 1e-6 || 2 * aside > assessed.Input.Settings.CardWidthInches + 1e-6
                || Math.Abs(value.Aligned[c] - value.Aligned[middle] - aside) > 0.13)
                continue;
            for (int k = 0; k < order.Length; k++)
                paddled[k] = order[k] switch
                {
                    1 => value.Aligned[middle],
                    0 => value.Aligned[shortFirst ? a : c],
                    _ => value.Aligned[shortFirst ? c : a]
                };
            CardWorth worth = value.Worth(paddled);
            if (chosen is null || worth.Score > most.Score)
                (chosen, most) = ((a, c), worth);
        }

        if (chosen is not { } ends)
            return null;
        Length first = value.Candidates[shortFirst ? ends.Short : ends.Long], last = value.Candidates[shortFirst ? ends.Long : ends.Short];
        return new([.. order.Select(at => at switch { 0 => first, 1 => value.Candidates[middle], _ => last })], most.Value, form,
            value.PieceNoise);
    }

    private static PlannedLengths Two(TrialValue value, TrialForm form, TuningSettings settings, double widest, bool shortFirst)
    {
        double[] aligned = value.Aligned;
        List<Pair> open = [.. value.Pairs.Where(pair => aligned[pair.Long] - aligned[pair.Short] <= widest + 1e-6)];
        if (open.Count == 0)
            open = [.. value.Pairs];
        double enough = open.Max(static pair => pair.Worth.Score) * (1 - settings.CardTolerance);
        Pair chosen = default;
        double narrowest = double.PositiveInfinity;
        foreach (Pair pair in open)
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

        Length first = value.Candidates[shortFirst ? chosen.Short : chosen.Long],
            second = value.Candidates[shortFirst ? chosen.Long : chosen.Short];
        return new([.. CardOrder.OfTwo(form.Pieces).Select(at => at == 0 ? first : second)], chosen.Worth.Value, form, value.PieceNoise);
    }

    /// <summary>
    /// One length for the whole outing: its contrast is with the outings before. Before any, the first of the best two outings
    /// to come.
    /// </summary>
    private static PlannedLengths OneLength(TrialValue value, TrialForm form, AnalysisInput question, Fit fit, HabitualLength habitual)
    {
        (IReadOnlyList<Length> candidates, double[] aligned) = (value.Candidates, value.Aligned);
        double outingVariance = fit.Posterior.LogOuting.Mean(static log => Math.Exp(2 * log)) + value.PieceNoise / form.Pieces;
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

        return new([.. Enumerable.Repeat(candidates[chosen], form.Pieces)], Math.Max(0, best), form, value.PieceNoise);

        void Consider(int candidate, double worth, double away)
        {
            if (worth > best + 1e-9 || (worth > best - 1e-9 && away < usedTo))
                (chosen, best, usedTo) = (candidate, Math.Max(best, worth), away);
        }
    }

    /// <summary>
    /// Outings so far in the hull asked for, with the mean of their aligned lengths and of the squares and of the lopsided part.
    /// </summary>
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

    private static int Nearest(double[] aligned, double to)
    {
        int nearest = 0;
        for (int k = 1; k < aligned.Length; k++)
            if (Math.Abs(aligned[k] - to) < Math.Abs(aligned[nearest] - to) - 1e-9)
                nearest = k;
        return nearest;
    }
}
