using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Wording;

/// <summary>Health and safety: what to do, in plain words. Plain care, no source.</summary>
internal static class Cautions
{
    /// <summary>On every page that sends somebody afloat.</summary>
    public const string Water =
        "Change length ashore or in sheltered water. Follow local rules on flotation, leash, cold water and traffic. For pain ask a " +
            "clinician, for technique a coach.";

    /// <summary>Wherever it may hurt.</summary>
    public const string Pain = "If shoulder, elbow or back hurts, stop; if it stays, see a clinician.";

    /// <summary>Where the top hand was above the head.</summary>
    public const string TopHandOverhead =
        "A top hand above the head loads the shoulder. Shorten the paddle before anything else, and stop if the shoulder hurts.";

    /// <summary>Where a paddle cannot be set so.</summary>
    public const string PastTheMark = "Do not force a shaft past its mark.";

    /// <summary>Those that apply to an answer, the most pressing first.</summary>
    public static IReadOnlyList<string> Of(Analysis analysis, Voice voice = default) => [.. Own(analysis, voice), Water];

    /// <summary>Those that belong to this paddler alone; empty where only the general one applies.</summary>
    public static IReadOnlyList<string> Own(Analysis analysis, Voice voice = default)
    {
        List<string> cautions = [];
        if (analysis.SorenessLimit is { } ceiling)
        {
            string no = $"Do not paddle longer than {Say.Quarter(ceiling, analysis.Paddler.Unit)}";
            cautions.Add(analysis.SoreEverywhere
                ? $"{(voice.Name is null ? "You were" : voice.Name + " was")} sore at every length. {no}. {Pain}"
                : $"{no}, which did not hurt. {Pain}");
        }

        if (analysis.TopHandOverhead)
            cautions.Add(TopHandOverhead);
        return cautions;
    }

    /// <summary>What soreness that was just logged is answered with; null where it is low.</summary>
    /// <param name="worst">The worst of the outing.</param>
    /// <param name="limit">From where it counts as one that hurt.</param>
    public static string? OfLogged(Soreness? worst, double limit) => worst is { } sore && sore.Points >= limit
        ? $"You logged soreness of {sore}. Stop if it hurts; if it stays, see a clinician."
        : null;
}
