using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tuning.Wording;

/// <summary>The cautions that apply.</summary>
internal static class Cautions
{
    /// <summary>Those that apply to a question, the most pressing first.</summary>
    public static IReadOnlyList<string> Of(AnalysisInput question, SorenessCeiling soreness)
    {
        List<string> cautions = [];
        LengthUnit unit = question.Paddler.Unit;
        if (soreness.Length is { } ceiling)
        {
            cautions.Add(soreness.EverywhereSore
                ? $"You have been sore at every length of late, so nothing longer than {Say.Setting(Say.Rough(ceiling.Inches, unit), unit)} is proposed. Pain in shoulder, elbow or back is a reason to stop testing and to see a clinician."
                : $"You have been sore of late, so nothing longer than {Say.Setting(Say.Rough(ceiling.Inches, unit), unit)}, which did not hurt, is proposed. Pain in shoulder, elbow or back is a reason to stop; if it stays, see a clinician.");
        }

        if (Overhead(question))
            cautions.Add(TechniqueRule.ShoulderCaution);
        cautions.Add("Change settings ashore or in sheltered water, and follow local rules on flotation, leash, cold water and traffic. A clinician and a qualified coach decide, not this program.");
        return cautions;
    }

    private static bool Overhead(AnalysisInput question)
    {
        TechniqueCheck? latest = null;
        foreach (TechniqueCheck check in question.TechniqueChecks)
            if (check.HullId == question.Hull.Id && check.PaddleId == question.Paddle.Id && (latest is null || check.Date >= latest.Date))
                latest = check;
        return latest is not null && TechniqueRule.Implied(latest).Overhead;
    }
}
