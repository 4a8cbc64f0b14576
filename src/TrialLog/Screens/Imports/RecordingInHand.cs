using TrialLog.Application.Files;
using TrialLog.Application.Logging;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Pieces;
using TrialLog.Screens.Base;

namespace TrialLog.Screens.Imports;

/// <summary>A recording that is being looked at: its pieces as corrected so far, and what was answered.</summary>
internal sealed class RecordingInHand(Session session, RecordedOuting recording)
{
    private readonly Stack<(RecordedOuting Recording, IReadOnlyList<Length>? Typed, int At)> _before = [];
    private GivenCard? _given;
    private IReadOnlyList<Length>? _typed;
    private IReadOnlyList<Outing> _sameTime = [];
    private bool _beside;

    public RecordedOuting Recording { get; private set; } = recording;

    /// <summary>Which piece is pointed at, from 0.</summary>
    public int At { get; set; } = recording.Proposals.TakeWhile(piece => !piece.Kept).Count() is var first
        && first < recording.Proposals.Count ? first : 0;

    /// <summary>The lengths of the pieces that count, in order, as far as they are known.</summary>
    public RecordingLengths Lengths { get; private set; } = RecordingLengths.Unknown;

    /// <summary>Whether the lengths were typed, rather than the card's.</summary>
    public bool HasTypedLengths => _typed is not null;

    /// <summary>How hard the pieces were: one for all, or one a piece; empty where it was not said.</summary>
    public IReadOnlyList<Effort> Efforts { get; set; } = [];

    public Soreness? Soreness { get; set; }

    public Beaufort? Wind { get; set; }

    public string? Place { get; set; }

    /// <summary>The piece that is pointed at; null where there is none.</summary>
    public PieceProposal? Here => At < Recording.Proposals.Count ? Recording.Proposals[At] : null;

    /// <summary>What must be settled before it can be saved, in a sentence; null if nothing.</summary>
    public string? Question
    {
        get
        {
            int kept = Recording.Kept.Count;
            if (kept == 0)
                return "No piece counts. Keep or add one, or leave without saving.";
            if (_typed is { } typed && typed.Count != kept)
                return $"{Say.Count(typed.Count, "length")} typed, but {Say.Count(kept, "piece")} that " +
                    $"{(kept == 1 ? "counts" : "count")}: which is it?";
            if (Lengths.All.Count == 0 && _sameTime.Count == 0)
                return $"No card was open for {session.Chosen!.Paddler.Name} in {session.Chosen.Hull.Name} on that day. Enter: type " +
                    $"the length of each of the {Say.Count(kept, "piece")}.";
            if (Recording.Questions is [var question, ..])
                return question.Kind == QuestionKind.Clock ? $"{question.Says} y: yes · e: type when it began"
                    : question.CanBeConfirmed ? $"{question.Says} y: yes, right as shown" : question.Says;
            if (_sameTime is [var other, ..] && !_beside)
                return $"The log has an outing of that time, {FindOuting.NameOf(other)} with {Say.Count(other.Pieces.Count, "piece")}. " +
                    $"e: lay this over it, its times stay · y: this is another one";
            return Answers.EffortProblem(kept);
        }
    }

    private RecordingAnswers Answers => new()
    {
        Chosen = session.Chosen!,
        Lengths = Lengths.All,
        Efforts = Efforts,
        Soreness = Soreness,
        Wind = Wind,
        Place = Place,
    };

    /// <summary>Looks which card was open, and which outings the log has of that time.</summary>
    public (GivenCard? Given, IReadOnlyList<Outing> SameTime) InLog(Workspace workspace) =>
        (OpenCard.Of(workspace, session.Chosen!, Recording.Date), ImportRecording.SameTime(workspace, session.Chosen!, Recording));

    /// <summary>Takes what the log has.</summary>
    public void Take((GivenCard? Given, IReadOnlyList<Outing> SameTime) known)
    {
        (_given, _sameTime) = known;
        Hold();
    }

    /// <summary>Corrects the recording; it can be undone.</summary>
    /// <exception cref="InvalidValueException">It cannot be; nothing is changed.</exception>
    public void Correct(Func<RecordedOuting, RecordedOuting> correction) => Change(correction(Recording), _typed);

    /// <summary>Types the lengths; null for the card's.</summary>
    public void TypeLengths(IReadOnlyList<Length>? typed) => Change(Recording, typed);

    /// <summary>Lengths as they are typed; of a blind card its letters will do. Null for an empty text.</summary>
    /// <exception cref="InvalidValueException">One of them is not a length.</exception>
    public IReadOnlyList<Length>? LengthsIn(string text) =>
        text.Length == 0 ? null : RecordingLengths.Read(text, _given, session.Unit);

    /// <summary>Whether something is asked that a yes answers.</summary>
    public bool Asks => Recording.Questions is [{ CanBeConfirmed: true }, ..] || (_sameTime.Count > 0 && !_beside);

    /// <summary>Whether anything was corrected or answered.</summary>
    public bool IsTouched => _before.Count > 0 || Efforts.Count > 0 || Soreness is not null || Wind is not null || Place is not null;

    /// <summary>Takes back what was corrected, confirmed or typed last.</summary>
    /// <exception cref="InvalidValueException">There is nothing to undo.</exception>
    public void Undo()
    {
        if (_before.Count == 0)
            throw new InvalidValueException("There is nothing to undo.");
        (Recording, _typed, At) = _before.Pop();
        Hold();
    }

    private void Change(RecordedOuting to, IReadOnlyList<Length>? typed)
    {
        _before.Push((Recording, _typed, At));
        (Recording, _typed) = (to, typed);
        Hold();
    }

    private void Hold() => (Recording, Lengths) = ImportRecording.HeldAgainst(Recording, _typed, _given, session.Unit);

    /// <summary>Says that what is asked first is right as shown.</summary>
    public void Confirm()
    {
        if (Recording.Questions is [{ CanBeConfirmed: true } question, ..])
            Correct(recording => recording.Confirm(question.Kind));
        else if (Recording.Questions.Count == 0)
            _beside = true;
    }

    /// <summary>Reads the stretches as pieces in the next way there is.</summary>
    /// <exception cref="InvalidValueException">There is but one.</exception>
    public void ReadOtherwise()
    {
        PieceShape[] shapes = [.. Recording.Readings.Select(reading => reading.Shape).Distinct()];
        if (shapes.Length < 2)
            throw new InvalidValueException("The stretches can be read in this way only.");
        Correct(recording => recording.As(shapes[(Array.IndexOf(shapes, recording.Shape) + 1) % shapes.Length]));
    }

    /// <summary>The length of a piece as it may be shown; null where it is left out or not known yet.</summary>
    public string? LengthOf(int piece) => Recording.Proposals[piece].Kept
        ? Lengths.Of(Recording.Proposals.Take(piece).Count(earlier => earlier.Kept), session.Unit) : null;

    /// <summary>Moves one end of the piece that is pointed at.</summary>
    /// <exception cref="InvalidValueException">It cannot lie there; nothing is changed.</exception>
    public void MoveEdge(LegEdge edge, TimeSpan to) => Correct(recording => Moved(recording, edge, to));

    /// <summary>Moves both ends of the piece that is pointed at.</summary>
    /// <exception cref="InvalidValueException">They cannot lie there; nothing is changed.</exception>
    public void MoveTo(TimeSpan start, TimeSpan end) => Correct(recording =>
    {
        // The edge that makes room goes first.
        bool later = start > recording.Proposals[At].Start;
        RecordedOuting room = Moved(recording, later ? LegEdge.End : LegEdge.Start, later ? end : start);
        return Moved(room, later ? LegEdge.Start : LegEdge.End, later ? start : end);
    });

    private RecordedOuting Moved(RecordedOuting recording, LegEdge edge, TimeSpan to) =>
        recording.MoveEdge(At, edge == LegEdge.Start ? 0 : recording.Proposals[At].Legs.Count - 1, edge, to);

    /// <summary>Saves the pieces that count as one outing.</summary>
    /// <exception cref="RequestException">Something is not settled, or cannot be right; nothing was saved.</exception>
    public Outing Save() =>
        Question is { } question ? throw new RequestException(question) : ImportRecording.Save(session.Workspace, Recording, Answers);

    /// <summary>Lays the recording over the outing of that time in the log.</summary>
    /// <exception cref="RequestException">There is not just one, or what belongs to which piece is in doubt; nothing was
    /// changed.</exception>
    public Outing LayOver() => _sameTime is [var only] ? ImportRecording.LayOver(session.Workspace, Recording, only)
        : throw new RequestException(_sameTime.Count == 0 ? "The log has no outing of that time to lay the recording over."
            : $"The log has {_sameTime.Count} outings of that time; which one is meant is not told.");
}
