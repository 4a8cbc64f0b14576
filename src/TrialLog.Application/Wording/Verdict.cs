using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Checks;

namespace TrialLog.Application.Wording;

/// <summary>The answer: what to do first, then how sure it is. One wording for every surface.</summary>
internal static class Verdict
{
    /// <summary>From this width on a likely range is explained, inches. Chosen, no source.</summary>
    private const double WideInches = 1.5;

    /// <summary>A fixed paddle so near to the best length is as good, inches.</summary>
    private const double HardlyApartInches = 0.13;

    /// <summary>A smaller offset than this is said as none, inches: it would print as 0.</summary>
    private const double LeastOffset = 0.05;

    /// <summary>The headline and the notes that go with it, in one text.</summary>
    public static string Of(Analysis analysis, Voice voice = default) =>
        string.Join(' ', [Headline(analysis, voice), .. Notes(analysis, voice)]);

    /// <summary>What to do, in one sentence.</summary>
    public static string ToDo(Analysis analysis, Voice voice = default)
    {
        if (analysis.Standing == Standing.Testing && analysis.Pieces > 0 && !analysis.Paddle.IsFixed)
            return $"Keep testing: paddle {Say.Order(analysis.Card.Lengths, analysis.Paddler.Unit)}.";
        string headline = Headline(analysis, voice);
        return headline.IndexOf(". ", StringComparison.Ordinal) is > 0 and var end ? headline[..(end + 1)] : headline;
    }

    /// <summary>The answer in at most 45 words, a number with its unit counting as one.</summary>
    public static string Headline(Analysis analysis, Voice voice = default)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        bool you = voice.Name is null;
        string best = Say.Length(analysis.Best.Length, unit), hull = Quoted.Visible(analysis.Hull.Name);
        string likely = $"likely between {Say.RangeAfterBetween(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit)}";
        string shortLikely = $"likely {Say.Range(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit)}";
        string worthwhile = Say.ChosenPercent(analysis.WorthwhilePercent);
        if (analysis.Standing == Standing.Sore)
            return Sore(analysis, voice);
        if (analysis.Paddle.IsFixed)
            return Fixed(analysis, hull, likely, voice);
        if (analysis.Pieces == 0)
            return $"In {hull}, start at {best}. {voice.YourFirst} true best length is {likely}: a guess from {voice.Your} start length " +
                $"until {voice.You} log{(you ? "" : "s")} an outing.";
        if (Doubt(analysis) is { } doubt)
            return $"{Warnings.Of(doubt, analysis, voice)} Until then {best}, {shortLikely}.";
        if (analysis.Standing == Standing.CannotTell && analysis is { TooShort: { } pieces } && Is(analysis, StandingReason.PiecesTooShort))
        {
            return $"In {hull}, race {best} for now ({shortLikely}). Pieces of {Say.Distance(pieces.Distance)} say too little about " +
                $"{Say.TheRace(analysis.Paddler, voice)}: with any number of them there is {Say.AChance(pieces.ChanceBeyond)} " +
                $"that another length is faster by {worthwhile} or more. {Longer(pieces)} tell more.";
        }

        if (analysis.Standing == Standing.CannotTell)
        {
            return "In a large crew one paddle changes the hull's speed too little to tell lengths apart. "
                + $"In {hull}, use {best} for now ({shortLikely}); a few pieces in a one- or two-seat hull would tell "
                + $"{(you ? "you " : "")}more.";
        }

        if (analysis.PiecesInHull == 0)
            return $"In {hull}, try about {best} ({shortLikely}). {voice.YouFirst} {(you ? "have" : "has")} not paddled {hull} yet, so " +
                $"this comes by rule from other hulls.";
        return analysis.Standing switch
        {
            Standing.Flat => $"In {hull}, race {best} and stop testing: an inch either way very probably costs less than {worthwhile}. " +
                $"{voice.YourFirst} true best length is {likely}.",
            Standing.Settled => $"Race {best} and stop testing. On average it costs{(you ? " you" : "")} " +
                $"{Say.Percent(analysis.GainLeftPercent)} against {voice.Your} true best length, "
                + $"{Say.AboutSeconds(analysis.GainLeftSeconds)} {Say.OverTheRace(analysis.Paddler, voice)}. There is "
                + $"{Say.AChance(analysis.ProbabilityWorthwhileLeft)} that another length is faster by {worthwhile} or more. "
                + $"{voice.YourFirst} true best length is {likely}.",
            _ => Testing(analysis, hull, best, likely, worthwhile, voice),
        };
    }

    /// <summary>
    /// What belongs beside the headline: a paddle too short or too long, a range that is wide, fewer outings by changing length afloat.
    /// </summary>
    public static IReadOnlyList<string> Notes(Analysis analysis, Voice voice = default)
    {
        List<string> notes = [];
        if (analysis.Standing == Standing.Sore)
            return notes;
        if (analysis.Paddle.IsFixed)
        {
            if (analysis.FixedPaddle is { Against: { } adjustable } && analysis.HasCard)
                notes.Add($"To test it, paddle it against {Quoted.Visible(adjustable.Name)} in one outing.");
            return notes;
        }

        if (analysis.LearntFromSquad is { } squad)
            notes.Add(
                $"The logs of {squad.Paddlers} others helped: their best lengths lie " + (Math.Abs(squad.OffsetInches) < LeastOffset ? "at"
                    : $"{Say.Amount(Math.Abs(squad.OffsetInches), analysis.Paddler.Unit)} {(squad.OffsetInches < 0 ? "below" : "above")}")
                + " their start lengths on average.");
        notes.AddRange(EffortWords.Notes(analysis, voice));
        if (analysis.Pieces == 0)
            return notes;
        if (analysis is { Standing: Standing.Testing, TooShort: { } pieces })
            notes.Add($"Pieces of {Say.Distance(pieces.Distance)} alone cannot settle it for {Say.TheRace(analysis.Paddler, voice)}: the " +
                $"outings to go are those after which they have told what they can. {Longer(pieces)} tell more.");
        LengthUnit unit = analysis.Paddler.Unit;
        string paddle = Quoted.Visible(analysis.Paddle.Name);
        if (!analysis.InRange)
        {
            notes.Add(analysis.Ideal.Length > analysis.Paddle.Longest
                ? $"{Say.Length(analysis.Paddle.Longest, unit)} is the longest {paddle} goes; {voice.Your} best length is probably " +
                    $"longer. {Cautions.PastTheMark}"
                : $"{Say.Length(analysis.Paddle.Shortest, unit)} is the shortest {paddle} goes; {voice.Your} best length " +
                    $"is probably shorter.");
        }
        else if (analysis.Standing == Standing.Settled && analysis.PiecesInHull > 0
            && analysis.Best.LikelyHigh.InchesMoreThan(analysis.Best.LikelyLow) > WideInches)
        {
            notes.Add("It is hard to pin down because length matters little there.");
        }

        if (analysis.Standing == Standing.Testing && analysis.OutingsToGoIfSwapping is { } swapping
            && swapping.Median < analysis.OutingsToGo.Median)
            notes.Add($"If {voice.You} can change length in sheltered water, {swapping.Median} would probably do.");
        return notes;
    }

    /// <summary>The warning that the headline leads with, since it is why this log cannot tell; null where there is none.</summary>
    public static HealthCheck? Doubt(Analysis analysis) => analysis.Standing != Standing.CannotTell || analysis.Paddle.IsFixed ? null
        : analysis.Why.Select(CheckOf).OfType<string>().Select(name => analysis.Checks.FirstOrDefault(check => check.Name == name))
            .FirstOrDefault(check => check is not null);

    private static bool Is(Analysis analysis, StandingReason reason) => analysis.Why.Contains(reason);

    private static string Longer(ShortPieces pieces) => pieces is { LongEnough: { } distance, Minutes: { } minutes }
        ? $"Four of {Say.Distance(distance)}, about {minutes} min,"
        : "Pieces nearly as long as the race";

    private static string? CheckOf(StandingReason reason) => reason switch
    {
        StandingReason.OneLengthAnOuting => "one-length-outings",
        StandingReason.OrderTangled => "order-tangled",
        StandingReason.EffortTangled => "effort-tangled",
        StandingReason.CurveUpsideDown => "curve-upside-down",
        StandingReason.HullsDisagree => "hulls-disagree",
        _ => null,
    };

    private static string Testing(Analysis analysis, string hull, string best, string likely, string worthwhile, Voice voice)
    {
        string stop = voice.Name is null ? "stop" : "stops";
        if (!analysis.Why.Contains(StandingReason.ChanceTooHigh))
        {
            if (analysis.Why.Contains(StandingReason.OneDayOnly))
                return $"Paddle once more before {voice.You} {stop}: one day's tide, wind and form can mislead. So far: {best}, {likely}.";
            if (analysis.Why.Contains(StandingReason.NothingShorterTried) || analysis.Why.Contains(StandingReason.NothingLongerTried))
                return $"Try {(analysis.Why.Contains(StandingReason.NothingShorterTried) ? "a shorter" : "a longer")} length once before " +
                    $"{voice.You} {stop}: none was paddled yet. Best length so far {best}, {likely}.";
            return $"Keep testing: paddle the next card. Best length so far {best}, {likely}; an outing should still gain more than it " +
                $"costs. {MoreOutings(analysis.OutingsToGo)}";
        }

        if (analysis.Why.Contains(StandingReason.CostsMoreThanItWins))
            return $"Race {best}, or test on. An outing should now win less than it costs, but there is " +
                $"{Say.AChance(analysis.ProbabilityWorthwhileLeft)} that another length is faster by {worthwhile} or more. " +
                $"Best length {likely}. {MoreOutings(analysis.OutingsToGo)}";
        return analysis.Flat
            ? $"Keep testing, without hurry: in {hull} an inch either way probably costs less than {worthwhile}. Best length so far " +
                $"{best}, {likely}. {MoreOutings(analysis.OutingsToGo)}"
            : $"Keep testing: paddle the next card. Best length so far {best}, {likely}; there is " +
                $"{Say.AChance(analysis.ProbabilityWorthwhileLeft)} that another is faster by {worthwhile} or more. " +
                $"{MoreOutings(analysis.OutingsToGo)}";
    }

    private static string Fixed(Analysis analysis, string hull, string likely, Voice voice)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        string now = Say.Length(analysis.Paddle.Longest, unit), best = Say.Length(analysis.Ideal.Length, unit);
        string stands = $"{voice.YourFirst} paddle is fixed at {now}. For {hull} {voice.Your} best length is {best}, {likely}";
        return Math.Abs(analysis.Ideal.Length.InchesMoreThan(analysis.Paddle.Longest)) < HardlyApartInches
            || analysis.FixedPaddle is not { CostSeconds: >= 1 } facts
            ? $"{stands}; this one is as good on average."
            : $"{stands}; on average this one costs {(voice.Name is null ? "you " : "")}{Say.AboutSeconds(facts.CostSeconds)} " +
                $"{Say.OverTheRace(analysis.Paddler, voice)}.";
    }

    private static string Sore(Analysis analysis, Voice voice)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        string logged = analysis.Soreness is { } told ? RestFirst.Sentence(told, voice) : "Rest first.";
        return analysis.SorenessLimit is { } ceiling && analysis.Paddle.Shortest > ceiling
            ? $"{logged} Even {Say.Length(analysis.Paddle.Shortest, unit)}, the shortest that {Quoted.Visible(analysis.Paddle.Name)} " +
                $"goes, is longer than what did not hurt."
            : $"{logged} When it no longer hurts, paddle {Say.Length(analysis.Best.Length, unit)} or shorter.";
    }

    private static string MoreOutings(OutingsToGo toGo) => toGo switch
    {
        { Median: >= OutingsToGo.Most } => $"Probably {OutingsToGo.Most} outings or more.",
        { High: >= OutingsToGo.Most } => $"Probably {Say.Count(toGo.Median, "more outing")}, perhaps {OutingsToGo.Most} or more.",
        _ when toGo.Low == toGo.High => $"Probably {Say.Count(toGo.Median, "more outing")}.",
        _ => $"Probably {Say.Count(toGo.Median, "more outing")} ({toGo.Low} to {toGo.High}).",
    };
}
