using TrialLog.Logbook;

namespace TrialLog.Screens.Base;

/// <summary>Tells the states of the log apart, whoever changed it. What changes no answer can be written without a new state.</summary>
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
        int before = Now;
        write();
        (_seen, _version) = (logbook.LastChange, before);
    }
}
