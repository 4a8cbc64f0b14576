using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook.Shared;

/// <summary>What may be left out of a shared record on request.</summary>
[Flags]
public enum LeftOut
{
    /// <summary>Nothing.</summary>
    Nothing = 0,

    /// <summary>Notes of outings and pieces, and coaches' notes.</summary>
    Notes = 1,

    /// <summary>Heart rates.</summary>
    HeartRate = 2,

    /// <summary>Body measures.</summary>
    BodyMeasures = 4,
}

/// <summary>What may be left out, as it is named in a file.</summary>
internal static class LeftOutNames
{
    public static readonly IReadOnlyDictionary<LeftOut, string> All = new Dictionary<LeftOut, string>
    {
        [LeftOut.Notes] = "notes",
        [LeftOut.HeartRate] = "heart_rate",
        [LeftOut.BodyMeasures] = "body_measures",
    };
}
