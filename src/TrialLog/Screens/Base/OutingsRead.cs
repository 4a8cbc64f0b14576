using TrialLog.Domain.Log;
using TrialLog.Logbook;

namespace TrialLog.Screens.Base;

/// <summary>The paddlers' outings, read from the logbook once for each state of the log.</summary>
internal sealed class OutingsRead(LogbookFile logbook, LogVersion version)
{
    private readonly Dictionary<Guid, IReadOnlyList<Outing>> _read = [];
    private int _ofVersion = -1;

    /// <summary>The outings of that paddler, by date, time and label.</summary>
    public IReadOnlyList<Outing> Of(Paddler paddler)
    {
        if (_ofVersion != version.Now)
        {
            _read.Clear();
            _ofVersion = version.Now;
        }

        if (!_read.TryGetValue(paddler.Id, out IReadOnlyList<Outing>? outings))
            _read[paddler.Id] = outings = logbook.Outings(paddler.Id);
        return outings;
    }
}
