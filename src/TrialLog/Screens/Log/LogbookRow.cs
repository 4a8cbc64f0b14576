using TrialLog.Domain.Log;

namespace TrialLog.Screens.Log;

/// <summary>A line of the logbook: an outing, or one of its pieces where the outing is opened.</summary>
internal readonly record struct LogbookRow(Outing Outing, Piece? Piece);
