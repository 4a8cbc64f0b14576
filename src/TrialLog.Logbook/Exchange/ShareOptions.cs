using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook.Exchange;

/// <summary>What to share.</summary>
/// <param name="PaddlerId">Whose record; null for the whole squad's.</param>
/// <param name="LeftOut">What to leave out.</param>
public sealed record ShareOptions(Guid? PaddlerId = null, LeftOut LeftOut = LeftOut.Nothing);
