using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Wording;

/// <summary>
/// While soreness stands, every page that would name a length or ask for an outing says this and nothing else: what the log says of lengths
/// tempts, and what soreness costs in speed is nobody's business then.
/// </summary>
internal static class RestFirst
{
    /// <summary>When the page is there again.</summary>
    public const string Later =
        "What the log says of lengths stands here again once it is gone: a later outing without soreness says so, or “triallog soreness " +
            "clear”.";

    /// <summary>No paddle is made longer or shorter for one that hurts.</summary>
    public const string NoOrder = "Do not order or cut a paddle yet.";

    /// <summary>The page for an answer, a paragraph each: rest, caution, when it is there again; null where nothing hurts.</summary>
    public static IReadOnlyList<string>? Page(Analysis analysis, Voice voice = default) => analysis.Standing != Standing.Sore ? null
        : [Verdict.Headline(analysis, voice), .. Cautions.Own(analysis, voice), Later];

    /// <summary>As <see cref="Page(Analysis, Voice)"/>, where no hull and paddle is in question.</summary>
    public static IReadOnlyList<string>? Page(StandingSoreness? told, Voice voice = default) => told is null ? null
        : [Sentence(told, voice), Cautions.Pain, Later];

    /// <summary>As <see cref="Sentence"/>; null where nothing hurts.</summary>
    public static string? Of(StandingSoreness? told) => told is null ? null : Sentence(told);

    /// <summary>What goes before all else: <c>Rest first: you logged soreness of 6 on 22 March 2026, and nothing since …</c>.</summary>
    public static string Sentence(StandingSoreness told, Voice voice = default) =>
        $"Rest first: {voice.You} logged soreness of {told.Worst} on {Say.DayInWords(told.LastTold)}, and nothing since says that it is " +
            $"gone.";
}
