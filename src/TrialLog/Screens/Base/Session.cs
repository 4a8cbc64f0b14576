using TrialLog.Application.Logging;
using TrialLog.Application.Next;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Base;

/// <summary>
/// What all screens share: whose length is looked at, what the logbook holds and what was found so far. The logbook itself is
/// only touched on the thread of its queue.
/// </summary>
internal sealed class Session : IDisposable
{
    private readonly LogVersion _version;
    private Analysis? _noted;
    private (Analysis? Found, GivenCard? Given, Analysis? Says) _carded;

    public Session(Workspace workspace, Look look, BackgroundAnalyses findings, LogbookQueue queue)
    {
        (Workspace, Look, Found, Queue) = (workspace, look, findings, queue);
        _version = new LogVersion(workspace.Logbook);
        Drafts = new KeptDrafts(workspace);
        State = Load(null);
        HalfTyped = State.Draft is not null;
        findings.Found += () => Changed?.Invoke();
    }

    public Workspace Workspace { get; }

    public Look Look { get; }

    /// <summary>What was worked out so far.</summary>
    public BackgroundAnalyses Found { get; }

    public LogbookQueue Queue { get; }

    /// <summary>What is half typed; touched on the queue's thread alone.</summary>
    public KeptDrafts Drafts { get; }

    /// <summary>Whether a new outing of the chosen paddler is half typed.</summary>
    public bool HalfTyped { get; set; }

    /// <summary>The window; set before any key is pressed.</summary>
    public IShell Shell { get; set; } = null!;

    /// <summary>What the logbook holds.</summary>
    public LogState State { get; private set; }

    /// <summary>Whose length, in which hull, with which paddle; null while the logbook lacks a paddler or a paddle.</summary>
    public Chosen? Chosen => State.Chosen;

    /// <summary>The unit in which lengths are shown and typed.</summary>
    public LengthUnit Unit => Chosen?.Paddler.Unit ?? State.Unit;

    /// <summary>The day by the clock.</summary>
    public DateOnly Today => Workspace.Today;

    /// <summary>The log or the choice changed, or something was found.</summary>
    public event Action? Changed;

    /// <summary>Whose log it is, in a line.</summary>
    public string Whose() => Chosen is { } chosen ? $"{chosen.Paddler.Name} · {chosen.Hull.Name} · {chosen.Paddle.Name}" : "";

    /// <summary>What the log says of the choice, with the coach's or blind card where one stands; null until it was found.</summary>
    public Analysis? Analysis
    {
        get
        {
            if (Chosen is not { } chosen || Found.Analysis(chosen) is not { } found)
                return null;
            if (NextOuting.StandingCard(State.OpenCard, found) is not { } given)
                return found;
            if (!ReferenceEquals(_carded.Found, found) || _carded.Given != given)
                _carded = (found, given, found with { Card = given.Card });
            return _carded.Says;
        }
    }

    /// <summary>The coach's or blind card that stands in place of the log's own; null where none does.</summary>
    public GivenCard? Given => Chosen is { } chosen && Found.Analysis(chosen) is { } found
        ? NextOuting.StandingCard(State.OpenCard, found) : null;

    /// <summary>What was decided last for the choice; null where nothing was.</summary>
    public Decision? Decided => State.Decisions.LastOrDefault(
        decision => decision.HullId == Chosen?.Hull.Id && decision.PaddleId == Chosen?.Paddle.Id);

    /// <summary>Begins to work something out for the choice, if it is not known.</summary>
    public void Want(FindingKind kind)
    {
        if (State.Input is { } input)
            Found.Want(input, kind, State.CarriedTo);
    }

    /// <summary>Looks at another paddler, hull or paddle.</summary>
    public void LookAt(Func<Workspace, Chosen?> choose) => Queue.Do(
        () =>
        {
            Chosen? chosen = choose(Workspace);
            if (chosen is not null)
                UsualChoice.Keep(Workspace, chosen);
            return Load(chosen ?? State.Chosen);
        },
        (state, failure) =>
        {
            if (failure is null)
                Take(state!);
            else
                Fail(failure);
        });

    /// <summary>Looks at another paddler, hull or paddle.</summary>
    public void LookAt(Chosen chosen) => LookAt(_ => chosen);

    /// <summary>
    /// Changes the logbook, as the user asked, then shows it as it is now. What cannot be done is said in its own sentence.
    /// </summary>
    /// <param name="change">Changes it, on the queue's thread.</param>
    /// <param name="then">Goes on from there, on the thread of the screens.</param>
    public void Change<T>(Func<Workspace, T> change, Action<T> then) => Queue.Do(
        () => (Result: change(Workspace), State: Load(State.Chosen)),
        (done, failure) =>
        {
            if (failure is null)
            {
                Take(done.State);
                then(done.Result);
            }
            else
            {
                LookForChanges();
                Fail(failure);
            }
        });

    /// <summary>Asks the logbook something.</summary>
    /// <param name="question">Reads it, on the queue's thread.</param>
    /// <param name="then">Takes the answer, on the thread of the screens.</param>
    public void Ask<T>(Func<Workspace, T> question, Action<T> then) => Queue.Do(
        () => (Answer: question(Workspace), Seen: true),
        (answer, failure) =>
        {
            if (failure is null)
                then(answer.Answer);
            else
                Fail(failure);
        });

    /// <summary>As <see cref="Change{T}"/>, for an outing that is shown: where somebody else changed it since, nothing is done.</summary>
    public void ChangeOuting(Outing shown, Action<Workspace, Outing> change, Action then)
    {
        int known = State.Version;
        Change(workspace => workspace.Logbook.Provided(
            () =>
            {
                if (_version.Now != known && !OutingPrint.Of(workspace, shown).Equals(OutingPrint.Of(shown), StringComparison.Ordinal))
                    throw OutingPrint.ChangedElsewhere(shown);
            },
            () => change(workspace, shown)),
            then);
    }

    /// <summary>As <see cref="Change{T}"/>, where nothing comes of it but the change.</summary>
    public void Change(Action<Workspace> change, Action then) => Change(workspace =>
        {
            change(workspace);
            return true;
        },
        _ => then());

    /// <summary>Reads the logbook again where somebody else changed it.</summary>
    public void LookForChanges()
    {
        if (!Queue.IsIdle)
            return;
        int known = State.Version;
        Chosen? chosen = State.Chosen;
        Queue.Put(() =>
        {
            if (_version.Now == known)
                return;
            LogState state = Load(chosen);
            Queue.Tell(() =>
            {
                // A key's own change may have been shown in between, and is newer.
                if (State.Version == known)
                    Take(state);
            });
        });
    }

    /// <summary>Notes that the card of that analysis was shown: a coach wants to see later what was suggested when.</summary>
    public void NoteGiven(Analysis analysis)
    {
        if (ReferenceEquals(analysis, _noted))
            return;
        _noted = analysis;
        Queue.Put(() => Tried(() => _version.Aside(() => NextOuting.Record(Workspace, [analysis]))));
    }

    /// <summary>Writes something beside the log, such as a draft, when there is time.</summary>
    public void PutLatest(string name, Action<Workspace> write) => Queue.PutLatest(name, () => Tried(() => write(Workspace)));

    public void Dispose()
    {
        Queue.Dispose();
        Found.Dispose();
    }

    private LogState Load(Chosen? chosen) => LogState.Load(Workspace, _version, Drafts, chosen);

    private void Take(LogState state)
    {
        if (state.Version != State.Version)
            Found.Forget();
        State = state;
        Changed?.Invoke();
    }

    // The message of a failure that nobody waits for comes up all the same.
    private void Tried(Action write)
    {
        try
        {
            write();
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            Queue.Tell(() => Fail(failure));
        }
    }

    private void Fail(Exception failure)
    {
        if (!Shell.Says(failure))
            throw new InvalidOperationException(failure.Message, failure);
    }
}
