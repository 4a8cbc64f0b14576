using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Base;

/// <summary>The analyses that the screens ask for, so that a drawing can be made of a known answer.</summary>
/// <param name="Analyse">What the log says.</param>
/// <param name="Progress">The search, outing by outing.</param>
/// <param name="Carry">The best length in every hull and for every blade.</param>
internal sealed record Analyses(
    Func<AnalysisInput, Analysis> Analyse,
    Func<AnalysisInput, IReadOnlyList<ProgressPoint>> Progress,
    Func<AnalysisInput, IReadOnlyList<Assessment>> Carry)
{
    /// <summary>Those of the tuning.</summary>
    public static readonly Analyses OfTheTuning = new(
        Tuner.Analyse,
        Tuner.Progress,
        question => Tuner.Carry(question, question.Hulls, [.. question.Paddles.Where(paddle => !paddle.Steering)]));
}
