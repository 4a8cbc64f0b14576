using TrialLog.Logbook;

namespace TrialLog.Screens.Base;

/// <summary>
/// Tells the states of the log apart, whoever changed it. What changes no answer can be written without a new state. Used on
/// the thread of the logbook's queue alone.
/// </summary>
internal sealed class LogVersion(LogbookFile logbook)
{
    private long _seen = logbook.LastChange;
    private int _version;

    /// <summary>The state: another number after each change.</summary>
    public int Now
    {
        get
        {
            long change = logbook.LastChange;
            if (change != _seen)
                (_seen, _version) = (change, _version + 1);
            return _version;
        }
    }

    /// <summary>Writes something that no answer depends on, such as that a card was given.</summary>
    public void Aside(Action write)
    {
        _ = Now;
        long before = _seen;
        write();
        // Anything more than that one change is another program's, and shows up at the next look.
        if (logbook.LastChange == before + 1)
            _seen = before + 1;
    }
}
