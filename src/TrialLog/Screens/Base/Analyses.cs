using TrialLog.Domain.Boats;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Base;

/// <summary>The analyses that the screens ask for, so that a drawing can be made of a known answer.</summary>
/// <param name="Analyse">What the log says.</param>
/// <param name="Progress">The search, outing by outing.</param>
/// <param name="Carry">The best length in every hull and with each of some paddles.</param>
internal sealed record Analyses(
    Func<AnalysisInput, Analysis> Analyse,
    Func<AnalysisInput, IReadOnlyList<ProgressPoint>> Progress,
    Func<AnalysisInput, IReadOnlyList<Paddle>, IReadOnlyList<Assessment>> Carry)
{
    /// <summary>Those of the tuning.</summary>
    public static readonly Analyses OfTheTuning = new(
        Tuner.Analyse,
        Tuner.Progress,
        (question, paddles) => Tuner.Carry(question, question.Hulls, paddles));
}
