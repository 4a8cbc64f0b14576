using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook;

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

/// <summary>What to share.</summary>
/// <param name="PaddlerId">Whose record; null for the whole squad's.</param>
/// <param name="LeftOut">What to leave out.</param>
public sealed record ShareOptions(Guid? PaddlerId = null, LeftOut LeftOut = LeftOut.Nothing);
