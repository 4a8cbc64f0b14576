using TrialLog.Application.Wording;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Coach;

/// <summary>The cautions: those that the analysis gives, and what holds on every page that sends somebody afloat.</summary>
internal static class CautionsSection
{
    /// <summary>One paddler's cautions, the most pressing first.</summary>
    public static IReadOnlyList<string> For(Analysis analysis, Voice voice = default) =>
        [.. Cautions.Of(analysis, voice).Append(Cautions.Pain)
            .Where((caution, at) => at == 0 || caution != Cautions.Pain
            || !Cautions.Own(analysis, voice).Any(own => own.Contains(Cautions.Pain))).Select(PlainText.Line)];

    /// <summary>The cautions that hold for all of them.</summary>
    public static IReadOnlyList<string> Common(IReadOnlyList<Analysis> analyses) => analyses.Count == 0
        ? [Cautions.Water, Cautions.Pain]
        : [.. Cautions.Of(analyses[0]).Where(caution => analyses.All(other => Cautions.Of(other).Contains(caution))).Select(PlainText.Line),
            Cautions.Pain];

    public static Section Of(IReadOnlyList<string> cautions) => new("Cautions", new Bullets(cautions, Warn: true));
}
