using System.Diagnostics;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Base;

/// <summary>
/// What the analyses found, kept until the log changes. They run one after the other away from the keyboard; a key stops
/// waiting for them.
/// </summary>
internal sealed class BackgroundAnalyses : IDisposable
{
    private readonly Workspace _workspace;
    private readonly LogVersion _version;
    private readonly OutingsRead _outings;
    private readonly Analyses _analyses;
    private readonly Action<Action> _onScreenThread;
    private readonly Dictionary<(Guid Paddler, Guid Hull, Guid Paddle, FindingKind Kind), object> _found = [];
    private readonly HashSet<(Guid Paddler, Guid Hull, Guid Paddle, FindingKind Kind)> _wanted = [];
    private readonly Stopwatch _since = new();
    private CancellationTokenSource _stop = new();
    private Task _last = Task.CompletedTask;
    private int _ofVersion = -1;
    private string _failure = "";

    /// <param name="workspace">The open logbook.</param>
    /// <param name="version">Tells the state of the log: another number after each change.</param>
    /// <param name="outings">The outings that are looked at.</param>
    /// <param name="analyses">How things are worked out.</param>
    /// <param name="onScreenThread">Runs an action on the thread that owns the screens.</param>
    public BackgroundAnalyses(Workspace workspace, LogVersion version, OutingsRead outings, Analyses analyses, Action<Action> onScreenThread)
    {
        (_workspace, _version, _outings, _analyses, _onScreenThread) = (workspace, version, outings, analyses, onScreenThread);
    }

    /// <summary>Something was found, or waiting for it was stopped.</summary>
    public event Action? Found;

    /// <summary>Whether something is being worked out.</summary>
    public bool IsWorking => _wanted.Count > 0;

    /// <summary>Whether the user stopped it.</summary>
    public bool Stopped { get; private set; }

    /// <summary>What is being worked out, and for how long; empty when nothing is.</summary>
    public string Working => _failure.Length > 0 && !IsWorking ? _failure : IsWorking ? $"Working it out from the log … {_since.Elapsed.TotalSeconds:0.0} s   Esc stops" : Stopped ? "Stopped. r works it out after all" : "";

    /// <summary>What the log says; null until it is worked out, which begins now unless the user stopped it.</summary>
    public Analysis? Analysis(Chosen chosen) => Get(chosen, FindingKind.Analysis, _analyses.Analyse);

    /// <summary>The search, outing by outing; null until it is worked out.</summary>
    public IReadOnlyList<ProgressPoint>? Progress(Chosen chosen) => Get(chosen, FindingKind.Progress, _analyses.Progress);

    /// <summary>The best length in every hull and for every blade; null until it is worked out.</summary>
    public IReadOnlyList<Assessment>? Carried(Chosen chosen) => Get(chosen, FindingKind.Carried, _analyses.Carry);

    /// <summary>Stops waiting for what is being worked out.</summary>
    public void Stop()
    {
        if (!IsWorking)
            return;
        _stop.Cancel();
        _stop.Dispose();
        _stop = new CancellationTokenSource();
        _wanted.Clear();
        Stopped = true;
        Found?.Invoke();
    }

    /// <summary>Works it out after all.</summary>
    public void Resume()
    {
        Stopped = false;
        Found?.Invoke();
    }

    public void Dispose()
    {
        _stop.Cancel();
        _stop.Dispose();
    }

    private T? Get<T>(Chosen chosen, FindingKind kind, Func<AnalysisInput, T> work)
        where T : class
    {
        if (_ofVersion != _version.Now)
        {
            _found.Clear();
            _wanted.Clear();
            _stop.Cancel();
            _stop.Dispose();
            _stop = new CancellationTokenSource();
            _ofVersion = _version.Now;
            Stopped = false;
        }

        var key = (chosen.Paddler.Id, chosen.Hull.Id, chosen.Paddle.Id, kind);
        if (_found.TryGetValue(key, out object? known))
            return (T)known;
        if (!Stopped && _wanted.Add(key))
            Begin(key, _workspace.Question(chosen, _outings.Of(chosen.Paddler)), work);
        return null;
    }

    // What goes wrong in an analysis must not take the screens, and what was typed, with it.
    private static (T? Result, string Failure) Outcome<T>(Func<AnalysisInput, T> work, AnalysisInput question)
        where T : class
    {
        try
        {
            return (work(question), "");
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            return (null, $"This could not be worked out: {failure.Message}");
        }
    }

    private void Begin<T>((Guid Paddler, Guid Hull, Guid Paddle, FindingKind Kind) key, AnalysisInput question, Func<AnalysisInput, T> work)
        where T : class
    {
        if (_wanted.Count == 1)
            _since.Restart();
        CancellationToken stop = _stop.Token;
        _last = _last.ContinueWith(
            _ =>
            {
                if (stop.IsCancellationRequested)
                    return;
                (T? result, string failure) = Outcome(work, question);
                _onScreenThread(() =>
                {
                    if (stop.IsCancellationRequested)
                        return;
                    _wanted.Remove(key);
                    _failure = failure;
                    if (result is null)
                        Stopped = true;
                    else
                        _found[key] = result;
                    Found?.Invoke();
                });
            },
            CancellationToken.None,
            TaskContinuationOptions.None,
            TaskScheduler.Default);
    }
}

/// <summary>The kinds of thing that are worked out from the log.</summary>
internal enum FindingKind
{
    Analysis,
    Progress,
    Carried,
}
