using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Wording;

/// <summary>The answer: what to do first, then how sure it is. One wording for every surface.</summary>
internal static class Verdict
{
    /// <summary>From this width on a likely range is explained, inches. Chosen, no source.</summary>
    private const double WideInches = 1.5;

    /// <summary>The headline and the notes that go with it, in one text.</summary>
    public static string Of(Analysis analysis, Voice voice = default) => string.Join(' ', [Headline(analysis, voice), .. Notes(analysis, voice)]);

    /// <summary>What to do, in one sentence.</summary>
    public static string ToDo(Analysis analysis, Voice voice = default)
    {
        string headline = Headline(analysis, voice);
        return analysis.Standing == Standing.Testing && Doubt(analysis) is null && !analysis.Paddle.IsFixed && analysis.Pieces > 0 && !analysis.WaitsForAnotherOuting
            ? $"Keep testing: paddle {Say.Order(analysis.Card.Lengths, analysis.Paddler.Unit)}."
            : headline[..(headline.IndexOf(". ", StringComparison.Ordinal) is > 0 and var end ? end + 1 : headline.Length)];
    }

    /// <summary>The answer in at most 45 words, a number with its unit counting as one.</summary>
    public static string Headline(Analysis analysis, Voice voice = default)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        string best = Say.Length(analysis.Best.Length, unit), hull = Quoted.Visible(analysis.Hull.Name);
        string likely = $"likely between {Say.RangeAfterBetween(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit)}";
        string shortLikely = $"likely {Say.Range(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit)}";
        string worthwhile = Say.ChosenPercent(analysis.WorthwhilePercent);
        if (analysis.Standing == Standing.Sore)
            return Sore(analysis, voice);
        if (analysis.Paddle.IsFixed)
            return $"{voice.YourFirst} paddle is fixed at {best}. For {hull} {voice.Your} best length is {likely}.";
        if (analysis.Pieces == 0)
            return $"In {hull}, start at {best}. {voice.YourFirst} true best length is {likely}: a guess from {voice.Your} start length until {voice.You} log{(voice.Name is null ? "" : "s")} an outing.";
        if (Doubt(analysis) is { } doubt)
            return $"{Warnings.Of(doubt, analysis)} Until then {best}, {shortLikely}.";
        if (analysis.Standing == Standing.CannotTell)
        {
            return $"In a crew of {analysis.Hull.Crew} one paddle changes the hull's speed too little to tell lengths apart. "
                + $"Use {best} for now ({shortLikely}); a few pieces in a one- or two-seat hull would tell {(voice.Name is null ? "you " : "")}more.";
        }

        if (analysis.Curve.Pieces.Count == 0 && analysis.Standing != Standing.Testing)
            return $"In {hull}, try about {best} ({shortLikely}). {voice.YouFirst} {(voice.Name is null ? "have" : "has")} not paddled {hull} yet, so this comes by rule from other hulls.";
        if (analysis.Standing == Standing.Flat)
            return $"In {hull}, race {best} and stop testing: an inch either way very probably costs less than {worthwhile}. {voice.YourFirst} true best length is {likely}.";
        if (analysis.Standing == Standing.Settled)
        {
            return $"Race {best} and stop testing. On average it costs{(voice.Name is null ? " you" : "")} {Say.Percent(analysis.GainLeftPercent)} against {voice.Your} true best length, "
                + $"{Say.AboutSeconds(analysis.GainLeftSeconds)} {Say.OverTheRace(analysis.Paddler, voice)}. There is {Say.AChance(analysis.ProbabilityWorthwhileLeft)} that another length is faster by {worthwhile} or more. "
                + $"{voice.YourFirst} true best length is {likely}.";
        }

        if (analysis.WaitsForAnotherOuting)
            return $"Paddle once more before {voice.You} stop{(voice.Name is null ? "" : "s")}: one day's tide, wind and form can mislead. So far: {best}, {likely}.";
        return analysis.Flat
            ? $"Keep testing, without hurry: in {hull} an inch either way probably costs less than {worthwhile}. Best length so far {best}, {likely}. {MoreOutings(analysis.OutingsToGo)}"
            : $"Keep testing: paddle the next card. Best length so far {best}, {likely}; there is {Say.AChance(analysis.ProbabilityWorthwhileLeft)} that another is faster by {worthwhile} or more. {MoreOutings(analysis.OutingsToGo)}";
    }

    /// <summary>What belongs beside the headline: a paddle too short or too long, a range that is wide, fewer outings by changing length afloat.</summary>
    public static IReadOnlyList<string> Notes(Analysis analysis, Voice voice = default)
    {
        List<string> notes = [];
        if (analysis.Standing == Standing.Sore || analysis.Paddle.IsFixed || analysis.Pieces == 0)
            return notes;
        LengthUnit unit = analysis.Paddler.Unit;
        string paddle = Quoted.Visible(analysis.Paddle.Name);
        if (analysis.BeyondPaddle > 0)
            notes.Add($"{Say.Length(analysis.Paddle.Longest, unit)} is the longest {paddle} goes; {voice.Your} best length is probably longer. Do not force the shaft past its mark.");
        else if (analysis.BeyondPaddle < 0)
            notes.Add($"{Say.Length(analysis.Paddle.Shortest, unit)} is the shortest {paddle} goes; {voice.Your} best length is probably shorter.");
        else if (analysis.Standing == Standing.Settled && analysis.Curve.Pieces.Count > 0 && analysis.Best.LikelyHigh.InchesMoreThan(analysis.Best.LikelyLow) > WideInches)
            notes.Add("It is hard to pin down because length matters little there.");
        if (analysis.OutingsToGoIfSwapping is { } swapping && swapping.Median < analysis.OutingsToGo.Median && Doubt(analysis) is null && !analysis.WaitsForAnotherOuting)
            notes.Add($"If {voice.You} can change length in sheltered water, {swapping.Median} would probably do.");
        return notes;
    }

    /// <summary>The warning that the headline leads with, since it puts the answer in doubt; null where none does.</summary>
    public static HealthCheck? Doubt(Analysis analysis) => analysis.Standing is Standing.Testing or Standing.CannotTell && analysis.Pieces > 0 && !analysis.Paddle.IsFixed
        ? Warnings.Leading.Select(name => analysis.Checks.FirstOrDefault(check => check.Name == name)).FirstOrDefault(check => check is not null)
        : null;

    private static string Sore(Analysis analysis, Voice voice)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        string logged = $"Rest first: {voice.You} logged soreness of {analysis.WorstSoreness:0.#} in the last four weeks.";
        return analysis.SorenessCeiling is { } ceiling && analysis.Paddle.Shortest > ceiling
            ? $"{logged} Even {Say.Length(analysis.Paddle.Shortest, unit)}, the shortest that {Quoted.Visible(analysis.Paddle.Name)} goes, is longer than what did not hurt."
            : $"{logged} When it no longer hurts, paddle {Say.Length(analysis.Best.Length, unit)} or shorter. Longer lengths can wait.";
    }

    private static string MoreOutings(OutingsToGo toGo) => toGo switch
    {
        { Median: >= OutingsToGo.Most } => $"Probably {OutingsToGo.Most} outings or more.",
        { High: >= OutingsToGo.Most } => $"Probably {Say.Count(toGo.Median, "more outing")}, perhaps {OutingsToGo.Most} or more.",
        _ when toGo.Low == toGo.High => $"Probably {Say.Count(toGo.Median, "more outing")}.",
        _ => $"Probably {Say.Count(toGo.Median, "more outing")} ({toGo.Low} to {toGo.High}).",
    };
}
