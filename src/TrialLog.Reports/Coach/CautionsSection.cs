using TrialLog.Application.Wording;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Wording;

namespace TrialLog.Reports.Coach;

/// <summary>The cautions: those that the analysis gives, and what holds on every page that sends somebody afloat.</summary>
internal static class CautionsSection
{
    /// <summary>Plain care, no source.</summary>
    private const string Pain = "Shoulder, elbow or back pain is a reason to stop, not a data point.";

    /// <summary>One paddler's cautions, the most pressing first.</summary>
    public static IReadOnlyList<string> For(Analysis analysis) => [.. analysis.Cautions.Select(PlainText.Line), Pain];

    /// <summary>The cautions that hold for all of them.</summary>
    public static IReadOnlyList<string> Common(IReadOnlyList<Analysis> analyses) => analyses.Count == 0
        ? [Pain]
        : [.. analyses[0].Cautions.Where(caution => analyses.All(other => other.Cautions.Contains(caution))).Select(PlainText.Line), Pain];

    public static Section Of(IReadOnlyList<string> cautions) => new("Cautions", new Bullets(cautions, Warn: true));
}
