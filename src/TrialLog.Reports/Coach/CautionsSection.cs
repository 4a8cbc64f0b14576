namespace TrialLog.Reports;

/// <summary>The cautions that apply now, then those that always do.</summary>
internal static class CautionsSection
{
    /// <summary>Common practice and plain care, no source; they hold on every page that tells somebody to go afloat.</summary>
    public static readonly IReadOnlyList<string> Always =
    [
        "Shoulder, elbow or back pain is a reason to stop, not a data point.",
        "Change settings ashore or in sheltered water. Follow local rules on flotation, leash, cold water and traffic.",
        "This is no medical or coaching advice: a clinician and a qualified coach decide.",
    ];

    public static Section Of(IReadOnlyList<string> now) => now.Count == 0
        ? new("Cautions", new Bullets(Always))
        : new("Cautions", new Bullets(now, Warn: true), new Bullets([.. Always.Except(now)]));
}
