namespace TrialLog.Domain.Values;

/// <summary>What timed a piece. The two leave out different parts of the start, so one outing keeps to one of them.</summary>
public enum TimedBy
{
    /// <summary>A stopwatch over a marked course, or any time that was typed.</summary>
    Hand,

    /// <summary>The satellite fixes of a watch.</summary>
    Watch,
}
