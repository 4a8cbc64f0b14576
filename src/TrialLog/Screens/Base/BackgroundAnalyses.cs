using System.Diagnostics;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Screens.Entry;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Base;

/// <summary>
/// What the analyses found, kept until the log changes. They run one after the other away from the keyboard; a key stops
/// waiting for them. Reading what was found begins nothing, so that painting may.
/// </summary>
internal sealed class BackgroundAnalyses : IDisposable
{
    private readonly Analyses _analyses;
    private readonly Action<Action> _onScreenThread;
    private readonly Dictionary<(Guid Paddler, Guid Hull, Guid Paddle, FindingKind Kind), object> _found = [];
    private readonly HashSet<(Guid Paddler, Guid Hull, Guid Paddle, FindingKind Kind)> _wanted = [];
    private readonly Stopwatch _since = new();
    private CancellationTokenSource _stop = new();
    private Task _last = Task.CompletedTask;
    private string _failure = "";

    /// <param name="analyses">How things are worked out.</param>
    /// <param name="onScreenThread">Runs an action on the thread that owns the screens.</param>
    public BackgroundAnalyses(Analyses analyses, Action<Action> onScreenThread)
    {
        (_analyses, _onScreenThread) = (analyses, onScreenThread);
    }

    /// <summary>Something was found, or waiting for it was stopped.</summary>
    public event Action? Found;

    /// <summary>Whether something is being worked out.</summary>
    public bool IsWorking => _wanted.Count > 0;

    /// <summary>Whether the user stopped it.</summary>
    public bool Stopped { get; private set; }

    /// <summary>What is being worked out, and for how long; empty when nothing is.</summary>
    public string Working => _failure.Length > 0 && !IsWorking ? _failure
        : IsWorking ? $"Working it out from the log … {_since.Elapsed.TotalSeconds:0.0} s   Esc stops"
        : Stopped ? "Stopped. F5 works it out after all" : "";

    /// <summary>What the log says; null until it was found.</summary>
    public Analysis? Analysis(Chosen chosen) => Known<Analysis>(chosen, FindingKind.Analysis);

    /// <summary>The search, outing by outing; null until it was found.</summary>
    public IReadOnlyList<ProgressPoint>? Progress(Chosen chosen) => Known<IReadOnlyList<ProgressPoint>>(chosen, FindingKind.Progress);

    /// <summary>The best length in every hull and for every blade; null until it was found.</summary>
    public IReadOnlyList<Assessment>? Carried(Chosen chosen) => Known<IReadOnlyList<Assessment>>(chosen, FindingKind.Carried);

    /// <summary>Begins to work it out, unless it is known, begun, or the user stopped it.</summary>
    /// <param name="input">What it is worked out from.</param>
    /// <param name="kind">What is wanted.</param>
    /// <param name="paddles">To which paddles lengths are carried.</param>
    public void Want(AnalysisInput input, FindingKind kind, IReadOnlyList<Paddle>? paddles = null)
    {
        var key = (input.Paddler.Id, input.Hull.Id, input.Paddle.Id, kind);
        if (Stopped || _found.ContainsKey(key) || !_wanted.Add(key))
            return;
        Func<AnalysisInput, object> work = kind switch
        {
            FindingKind.Analysis => _analyses.Analyse,
            FindingKind.Progress => _analyses.Progress,
            _ => question => _analyses.Carry(question, paddles ?? []),
        };
        Begin(key, () => work(input));
    }

    /// <summary>The log changed: nothing is known any more.</summary>
    public void Forget()
    {
        _found.Clear();
        Cancel();
        (Stopped, _failure) = (false, "");
    }

    /// <summary>Stops waiting for what is being worked out.</summary>
    public void Stop()
    {
        if (!IsWorking)
            return;
        Cancel();
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

    private T? Known<T>(Chosen chosen, FindingKind kind)
        where T : class => (T?)_found.GetValueOrDefault((chosen.Paddler.Id, chosen.Hull.Id, chosen.Paddle.Id, kind));

    private void Cancel()
    {
        _wanted.Clear();
        _stop.Cancel();
        _stop.Dispose();
        _stop = new CancellationTokenSource();
    }

    // What goes wrong in an analysis must not take the screens, and what was typed, with it.
    private static (object? Result, string Failure) Outcome(Func<object> work)
    {
        try
        {
            return (work(), "");
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            return (null, $"This could not be worked out: {failure.Message}");
        }
    }

    private void Begin((Guid Paddler, Guid Hull, Guid Paddle, FindingKind Kind) key, Func<object> work)
    {
        if (_wanted.Count == 1)
            _since.Restart();
        CancellationToken stop = _stop.Token;
        _last = _last.ContinueWith(_ =>
            {
                if (stop.IsCancellationRequested)
                    return;
                (object? result, string failure) = Outcome(work);
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
