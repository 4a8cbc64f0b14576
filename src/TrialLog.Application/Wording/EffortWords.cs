using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Wording;

/// <summary>What is said of effort: what heart rate and hidden lengths did for an answer, and what it lacks without them.</summary>
internal static class EffortWords
{
    /// <summary>A sentence each; empty where there is nothing to say.</summary>
    public static IEnumerable<string> Notes(Analysis analysis, Voice voice = default)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        if (analysis.Effort is { HeartRateUsed: true, ToldSd: { } strays })
            yield return $"Heart rate counted: {voice.Your} true effort strays about " +
                $"{strays.ToString("0.0", CultureInfo.InvariantCulture)} points from what {voice.You} told.";
        if (analysis.Effort is { BlindAlone: { } alone, BlindOutings: var blind })
            yield return $"{Say.Count(blind, "blind outing")} alone {(blind == 1 ? "says" : "say")} {Say.Length(alone.Length, unit)}, " +
                $"likely {Say.Range(alone.LikelyLow, alone.LikelyHigh, unit)}.";
        if (analysis is { DiminishingReturns: true, OnToldEffort: true })
            yield return Provisional(voice);
    }

    /// <summary>What an answer that is ready lacks where effort rests on the paddler's word alone.</summary>
    public static string Provisional(Voice voice = default) =>
        $"Provisional, since effort rests on {(voice.Name is null ? "your" : voice.Name + "'s")} word: heart rate, or two outings with " +
        $"hidden lengths, would show whether {voice.You} {(voice.Name is null ? "pull" : "pulls")} harder with one length.";
}
