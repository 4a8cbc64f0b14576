using System.Collections.Concurrent;
using System.Diagnostics.CodeAnalysis;
using TrialLog.Application.Wording;

namespace TrialLog.Screens.Base;

/// <summary>
/// One thread that does, in order, everything the screens want of the logbook, so that no key waits for a disk or for another
/// program that is writing. What is done within a moment is answered before the key returns; the rest is answered later.
/// </summary>
internal sealed class LogbookQueue : IDisposable
{
    /// <summary>How long a key waits for an answer, so that most need no second drawing; well under the 50 ms of an answered key.</summary>
    private static readonly TimeSpan KeyPatience = TimeSpan.FromMilliseconds(25);

    /// <summary>How long the end of the program waits for what is still to be written. Longer than another program is waited for.</summary>
    private static readonly TimeSpan LastPatience = TimeSpan.FromSeconds(8);

    private readonly BlockingCollection<Action> _jobs = [];
    private readonly ConcurrentDictionary<string, Action> _latest = [];
    private readonly Action<Action> _onScreenThread;
    private readonly Thread _thread;
    private int _open;
    private int _awaited;

    /// <param name="onScreenThread">Runs an action on the thread that owns the screens.</param>
    public LogbookQueue(Action<Action> onScreenThread)
    {
        _onScreenThread = onScreenThread;
        _thread = new Thread(Work) { IsBackground = true, Name = "logbook" };
        _thread.Start();
    }

    /// <summary>Whether the user waits for an answer. Asked and changed on the thread of the screens.</summary>
    public bool IsAwaited => _awaited > 0;

    /// <summary>Whether everything is done.</summary>
    public bool IsIdle => Volatile.Read(ref _open) == 0 && _awaited == 0;

    /// <summary>
    /// Does the work, then hands what came of it to <paramref name="then"/> on the thread of the screens: at once if it is quick.
    /// </summary>
    /// <param name="work">What to do; it may throw.</param>
    /// <param name="then">Takes the result, or the failure.</param>
    public void Do<T>(Func<T> work, Action<T?, Exception?> then)
    {
        var posted = new Job<T>(work);
        bool wait = _awaited == 0;
        _awaited++;
        Post(() => posted.Run(() => _onScreenThread(Answer)));
        if (posted.IsDoneWithin(wait ? KeyPatience : TimeSpan.Zero))
            Answer();

        void Answer()
        {
            _awaited--;
            then(posted.Result, posted.Failure);
        }
    }

    /// <summary>Runs an action on the thread of the screens.</summary>
    public void Tell(Action action) => _onScreenThread(action);

    /// <summary>Does the work some time; nobody waits for it.</summary>
    public void Put(Action work) => Post(work);

    /// <summary>As <see cref="Put"/>; of several under one name that were not begun, only the last is done.</summary>
    public void PutLatest(string name, Action work)
    {
        // Every call posts: one that only looked whether another was waiting could look just before that one began, and never be done.
        // Whichever of them comes first does the last work; the others find nothing left.
        _latest[name] = work;
        Post(() =>
        {
            if (_latest.TryRemove(name, out Action? last))
                last();
        });
    }

    /// <summary>Waits until all is done, then ends the thread.</summary>
    public void Dispose()
    {
        if (_jobs.IsAddingCompleted)
            return;
        _jobs.CompleteAdding();
        if (_thread.Join(LastPatience))
            _jobs.Dispose();
    }

    private void Post(Action work)
    {
        if (_jobs.IsAddingCompleted)
            return;
        Interlocked.Increment(ref _open);
        _jobs.Add(work);
    }

    private void Work()
    {
        foreach (Action work in _jobs.GetConsumingEnumerable())
        {
            try
            {
                work();
            }
            finally
            {
                Interlocked.Decrement(ref _open);
            }
        }
    }

    /// <summary>Work whose answer is taken either by the key that waits or, if that gave up, by a later pass of the screens.</summary>
    [SuppressMessage("Reliability", "CA1001",
        Justification = "The other thread may be about to set the event, and it holds no handle unless one is asked for.")]
    private sealed class Job<T>(Func<T> work)
    {
        private const int Running = 0, Done = 1, GivenUp = 2;

        private readonly ManualResetEventSlim _done = new();
        private int _state = Running;

        public T? Result { get; private set; }

        public Exception? Failure { get; private set; }

        public void Run(Action answerLater)
        {
            try
            {
                Result = work();
            }
            catch (Exception failure) when (failure is not OutOfMemoryException)
            {
                Failure = failure;
            }

            if (Interlocked.CompareExchange(ref _state, Done, Running) == Running)
                _done.Set();
            else
                answerLater();
        }

        public bool IsDoneWithin(TimeSpan patience) =>
            _done.Wait(patience) || Interlocked.CompareExchange(ref _state, GivenUp, Running) == Done;
    }
}
