using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Assessments;

/// <summary>Where a search for one paddler, hull and paddle stands: decided once, said alike on every surface.</summary>
public enum Standing
{
    /// <summary>More testing is worth its price.</summary>
    Testing,

    /// <summary>A length is found, and more testing would win less than it costs.</summary>
    Settled,

    /// <summary>Length hardly matters here within an inch either way.</summary>
    Flat,

    /// <summary>This log cannot tell lengths apart; other trials would.</summary>
    CannotTell,

    /// <summary>It hurts, and rest comes first.</summary>
    Sore,
}
