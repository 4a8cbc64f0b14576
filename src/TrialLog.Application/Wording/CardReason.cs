using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Wording;

/// <summary>Why the card has these lengths, in a sentence or two.</summary>
internal static class CardReason
{
    private const int MostLetters = 8;

    /// <summary>The reason for an analysis' own card.</summary>
    public static string Of(Analysis analysis, Voice voice = default)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        IReadOnlyList<Length> lengths = analysis.Card.Lengths;
        bool sore = analysis.Standing == Standing.Sore;
        if (!analysis.HasCard)
            return $"This paddle is fixed at {Say.Length(analysis.Paddle.Longest, unit)}: it can only be tested against an adjustable one.";
        Length shortest = lengths.Min(), longest = lengths.Max();
        if (analysis.SorenessLimit is { } ceiling && shortest > ceiling)
            return $"Do not paddle this card while it hurts: {Say.Length(shortest, unit)}, the shortest that " +
                $"{Quoted.Visible(analysis.Paddle.Name)} goes, is longer than what did not hurt. Rest, and see a clinician if it stays.";
        string held = !sore ? "" : analysis.SoreEverywhere ? " Rest first; then only shorter than every length that hurt."
            : " Rest first; then only lengths that did not hurt.";
        if (shortest == longest)
        {
            return analysis.Paddle.IsFixed ? $"This paddle is fixed at {Say.Length(shortest, unit)}.{held}"
                : sore || analysis.Paddler.SwapsOnWater ? $"Only {Say.Length(shortest, unit)} is open now.{held}"
                : $"One length today, {Say.Length(shortest, unit)}: it teaches {voice.You} most next to the earlier outings.";
        }

        string pair = PairOf(lengths, unit);
        string longer = analysis.Why.Contains(StandingReason.PiecesTooShort) && analysis.TooShort is { } pieces
            && analysis.Card.Distance > pieces.Distance
            ? $" Pieces of {Say.Distance(analysis.Card.Distance)}, since shorter ones have told what they can."
            : "";
        return $"{Why(analysis, pair, shortest, longest, voice)} {InOrder(lengths)}{longer}{held}";
    }

    /// <summary>
    /// The reason for the card that is handed out: a coach's or blind card that stands goes before the analysis' own.
    /// </summary>
    public static string Of(Analysis analysis, GivenCard? standing, Voice voice = default) => standing switch
    {
        null => Of(analysis, voice),
        { Blind: true } => BlindWords.ForThePaddler(standing.Card, voice),
        _ => $"{standing.Reason.TrimEnd('.', ' ')}. {OwnInstead(standing, analysis.Paddler.Unit)}",
    };

    /// <summary>What the program would have given instead of a coach's card.</summary>
    public static string OwnInstead(GivenCard coachs, LengthUnit unit) =>
        $"The log itself would ask for {Say.Order(coachs.OwnLengths, unit)}.";

    /// <summary>The card's lengths in the order to paddle, each as it is handed out: a blind card has letters.</summary>
    public static IReadOnlyList<string> Lengths(Analysis analysis, GivenCard? standing) => standing is { Blind: true }
        ? BlindWords.Letters(standing.Card)
        : [.. analysis.Card.Lengths.Select(length => Say.Length(length, analysis.Paddler.Unit))];

    /// <summary>The same in a line: <c>49, 51¼, 51¼, 49 in</c>; <c>A B B A, the partner knows the lengths</c>.</summary>
    public static string InALine(Analysis analysis, GivenCard? standing) => standing is { Blind: true }
        ? $"{Letters(standing.Card.Lengths)}, the partner knows the lengths"
        : Say.Order(analysis.Card.Lengths, analysis.Paddler.Unit);

    /// <summary>The order of a card in letters: <c>A B B A</c>.</summary>
    public static string Letters(IReadOnlyList<Length> lengths)
    {
        List<Length> seen = [];
        return string.Join(' ', lengths.Select(length =>
        {
            if (!seen.Contains(length))
                seen.Add(length);
            return (char)('A' + seen.IndexOf(length));
        }));
    }

    private static string Why(Analysis analysis, string pair, Length shortest, Length longest, Voice voice)
    {
        Length best = analysis.Best.Length;
        string teaches = analysis.Card.Lengths.Distinct().Count() > 2 ? "teach" : "teaches";
        if (analysis.Standing == Standing.Sore)
            return $"{pair}: what soreness leaves open.";
        if (analysis.DiminishingReturns)
            return $"Not needed; but {(voice.Name is null ? "if you go out" : "afloat all the same")}, {pair} would teach " +
                $"{voice.You} most.";
        if (best > shortest && best < longest)
            return $"{pair}, {(teaches == "teach" ? "on both sides" : "one each side")} of {voice.Your} best length, {teaches} " +
                $"{voice.You} most in one outing.";
        return best == shortest || best == longest
            ? $"{pair} {teaches} {voice.You} most in one outing."
            : $"{pair}: {(teaches == "teach" ? "all" : "both")} are {(best > longest ? "shorter" : "longer")} than {voice.Your} best " +
                $"length on purpose; how much slower they are shows how much length matters to {voice.You}.";
    }

    // Two are held against each other; more are a row of lengths.
    private static string PairOf(IReadOnlyList<Length> lengths, LengthUnit unit)
    {
        string[] all = [.. lengths.Distinct().Order().Select(length => Say.Length(length, unit))];
        string tail = " " + Say.Symbol(unit);
        return string.Join(", ", all[..^1].Select(text => text[..^tail.Length])) + (all.Length > 2 ? " and " : " against ") + all[^1];
    }

    private static string InOrder(IReadOnlyList<Length> lengths) => lengths.Count <= MostLetters
        ? $"In the order {Letters(lengths)}, so that tiredness affects {(lengths.Distinct().Count() > 2 ? "all" : "both")} lengths alike."
        : "In mirrored order, so that tiredness affects all lengths alike.";
}
