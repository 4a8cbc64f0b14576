namespace TrialLog.Recordings.Tracks;

/// <summary>What had to be mended in a recording, counted.</summary>
public sealed record Mended
{
    /// <summary>Samples without a time that can be right; left out.</summary>
    public int WithoutTime { get; init; }

    /// <summary>Samples without a position; left out of the track.</summary>
    public int WithoutPosition { get; init; }

    /// <summary>Samples at a time that was already there; left out.</summary>
    public int DuplicateTimes { get; init; }

    /// <summary>Samples whose time runs backward against the rest; left out.</summary>
    public int BackwardTimes { get; init; }

    /// <summary>Positions no paddled craft can have reached; left out.</summary>
    public int Jumps { get; init; }

    /// <summary>Gaps in the positions.</summary>
    public int Dropouts { get; init; }

    /// <summary>Seconds in these gaps in all.</summary>
    public double DropoutSeconds { get; init; }

    /// <summary>Whether the end of the file is missing.</summary>
    public bool IsCutOff { get; init; }

    /// <summary>Whether nothing had to be mended.</summary>
    public bool IsNothing => this == new Mended();

    /// <summary>One plain sentence.</summary>
    public override string ToString()
    {
        var parts = new List<string>();
        Say(Dropouts, "dropout", $" ({DropoutSeconds:0} s in all)");
        Say(Jumps, "jumped position", " left out");
        Say(DuplicateTimes, "duplicate time", " left out");
        Say(BackwardTimes, "backward time", " left out");
        Say(WithoutPosition, "sample", " without a position");
        Say(WithoutTime, "sample", " without a time");
        if (IsCutOff)
            parts.Add("the end of the file is missing");
        return parts.Count == 0 ? "Nothing had to be mended." : "Mended: " + string.Join(", ", parts) + ".";

        void Say(int count, string what, string more)
        {
            if (count > 0)
                parts.Add($"{count} {what}{(count == 1 ? "" : "s")}{more}");
        }
    }
}
