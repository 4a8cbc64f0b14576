using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Wording;

/// <summary>The figures behind the verdict, each with its label, and the headings that go with an answer.</summary>
internal static class Answer
{
    /// <summary>Seconds over the race below which a length is as good as the best.</summary>
    private const double AsGoodSeconds = 1;

    /// <summary>The figures in the order they matter. While it hurts only the length for now.</summary>
    public static IEnumerable<(string Label, string Value)> Figures(Analysis analysis, Voice voice = default)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        BestLength best = analysis.Best;
        if (analysis.Standing == Standing.Sore)
        {
            yield return (BestLabel(analysis), Say.Length(best.Length, unit));
            yield break;
        }

        // A fixed paddle's only length need not be the best one.
        if (analysis.Paddle.IsFixed)
            yield return ("This paddle", $"{Say.Length(best.Length, unit)}, fixed");
        yield return (BestLabel(analysis),
            $"{Say.Length(analysis.Paddle.IsFixed ? analysis.Ideal.Length : best.Length, unit)}, likely " +
                $"{Say.Range(best.LikelyLow, best.LikelyHigh, unit)} (9 times in 10)");
        if (Usual(analysis, voice) is { } usual)
            yield return ("Usual length", usual);
        yield return ("Gain left", GainLeft(analysis, voice));
        yield return ("Chance of a worthwhile gain", WorthwhileGain(analysis));
        yield return ("Outings to go", Say.OutingsToGo(analysis.OutingsToGo));
    }

    /// <summary>What the proposed length is called: never "best" while soreness holds it down.</summary>
    public static string BestLabel(Analysis analysis) => analysis.Standing == Standing.Sore ? "Length for now" : "Best length";

    /// <summary>The usual length and what the best one should gain; null where none is usual or can be chosen, or while it hurts.</summary>
    public static string? Usual(Analysis analysis, Voice voice = default)
    {
        if (!analysis.CurrentIsUsual || analysis.Standing == Standing.Sore || analysis.Paddle.IsFixed)
            return null;
        LengthUnit unit = analysis.Paddler.Unit;
        string usual = Say.Length(analysis.Current, unit);
        return analysis.Current == analysis.Best.Length ? $"{usual}, the best length"
            : analysis.GainFromMovingSeconds < AsGoodSeconds ? $"{usual}, as good as the best"
            : $"{usual}; {Say.Length(analysis.Best.Length, unit)} should gain {voice.You} {Say.Seconds(analysis.GainFromMovingSeconds)} " +
                $"{Say.OverTheRace(analysis.Paddler, voice)}";
    }

    /// <summary>What going from the usual to the best length should gain, in a sentence; null where there is nothing to say.</summary>
    public static string? Going(Analysis analysis, Voice voice = default)
    {
        if (!analysis.CurrentIsUsual || analysis.Standing == Standing.Sore || analysis.Current == analysis.Best.Length)
            return null;
        LengthUnit unit = analysis.Paddler.Unit;
        string from = Say.Length(analysis.Current, unit), to = Say.Length(analysis.Best.Length, unit);
        return analysis.GainFromMovingSeconds < AsGoodSeconds
            ? $"{voice.YourFirst} usual length, {from}, is as good as the best."
            : $"Going from {from} to {to} should gain {voice.You} {Say.Percent(analysis.GainFromMovingPercent)}, " +
                $"{Say.AboutSeconds(analysis.GainFromMovingSeconds)} {Say.OverTheRace(analysis.Paddler, voice)}.";
    }

    /// <summary>
    /// The gain left, an average: <c>0.07% on average, about 4 s over your 16 km, if testing found your true best length</c>.
    /// </summary>
    public static string GainLeft(Analysis analysis, Voice voice = default) =>
        $"{ShortGainLeft(analysis, voice)}, if testing found {voice.Your} true best length";

    /// <summary>As <see cref="GainLeft"/>, where there is less room.</summary>
    public static string ShortGainLeft(Analysis analysis, Voice voice = default) =>
        $"{Say.Percent(analysis.GainLeftPercent)} on average, {Say.AboutSeconds(analysis.GainLeftSeconds)} " +
            $"{Say.OverTheRace(analysis.Paddler, voice)}";

    /// <summary>The chance of a worthwhile gain: <c>4% (0.3% or more)</c>.</summary>
    public static string WorthwhileGain(Analysis analysis) =>
        $"{Say.Chance(analysis.ProbabilityWorthwhileLeft)} ({Say.ChosenPercent(analysis.WorthwhilePercent)} or more)";

    /// <summary>How sure the quarter inch is, for paper: <c>29% chance that it is within a quarter inch</c>.</summary>
    public static string WithinAQuarter(double probability, LengthUnit unit) =>
        $"{Say.Chance(probability)} chance that it is within {(unit == LengthUnit.Centimetres ? "0.6 cm" : "a quarter inch")}";

    /// <summary>What the answer comes from: <c>10 outings, 40 pieces</c>.</summary>
    public static string Basis(Analysis analysis) => analysis.Pieces == 0
        ? "no outing logged yet"
        : $"{Say.Count(analysis.Outings, "outing")}, {Say.Count(analysis.Pieces, "piece")}";

    /// <summary>The heading of the card.</summary>
    public static string CardHeading(Analysis analysis) => analysis.Standing == Standing.Sore ? "When it no longer hurts"
        : analysis.DiminishingReturns ? "If you want to test anyway"
        : "Next outing";

    /// <summary>A card's pieces in a line: <c>4 pieces of 1 km at effort 6, 4:00 easy between</c>.</summary>
    public static string Plan(TrialCard card) => card.Lengths.Count == 1
        ? $"1 piece of {Say.Distance(card.Distance)} at effort {card.Effort}"
        : $"{card.Lengths.Count} pieces of {Say.Distance(card.Distance)} at effort {card.Effort}, {card.Rest} easy between";

    /// <summary>What more or longer pieces would save, a line each; empty where there is nothing to choose, or nothing saved.</summary>
    public static IReadOnlyList<string> MorePieces(Analysis analysis) =>
        analysis.DiminishingReturns || analysis.Standing == Standing.Sore || analysis.CardOptions.Count < 2 ? []
        : [.. analysis.CardOptions.Skip(1)
            .Where(option => option.OutingsToGo.Median < analysis.OutingsToGo.Median)
            .Select(option => $"With {Pieces(option)}, about {option.Minutes} min: outings to go {Say.OutingsToGo(option.OutingsToGo)}.")];

    private static string Pieces(CardOption option) => $"{option.Pieces} pieces of {Say.Distance(option.Distance)}";

    /// <summary>A card to feel the difference, once it is time to stop; null where there is none.</summary>
    public static string? ToFeel(Analysis analysis) => analysis.ToFeel.Count == 0 ? null
        : $"To feel the difference, not to find it: {Say.Order(analysis.ToFeel, analysis.Paddler.Unit)}.";
}
