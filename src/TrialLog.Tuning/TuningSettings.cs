namespace TrialLog.Tuning;

/// <summary>
/// Priors and the rule for stopping. Each default is explained, with its source and what happens if it is wrong,
/// in docs/model.md.
/// </summary>
public sealed record TuningSettings
{
    /// <summary>The defaults.</summary>
    public static readonly TuningSettings Default = new();

    /// <summary>Returns have diminished when the probability of a worthwhile gain left is below this; 0.05.</summary>
    public double StopBelow { get; init; } = 0.05;

    /// <summary>The smallest worthwhile change of speed in percent where the paddler has not chosen one; 0.3 (Bonetti and Hopkins 2010).</summary>
    public double WorthwhilePercent { get; init; } = 0.3;
}
