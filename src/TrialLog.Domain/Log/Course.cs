namespace TrialLog.Domain.Log;

/// <summary>How a piece lay on the water.</summary>
public enum Course
{
    /// <summary>Out and back over the same water, so that wind and current mostly cancel.</summary>
    RoundTrip,

    /// <summary>One way, outbound.</summary>
    Out,

    /// <summary>One way, homebound.</summary>
    Back,

    /// <summary>A loop.</summary>
    Loop,
}
