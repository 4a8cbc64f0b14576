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
    private TrialCard? _card;
    private IReadOnlyList<Length>? _typed;
    private IReadOnlyList<Outing> _sameTime = [];
    private bool _beside;

    public RecordedOuting Recording { get; set; } = recording;

    /// <summary>Which piece is pointed at, from 0.</summary>
    public int At { get; set; } = recording.Proposals.TakeWhile(piece => !piece.Kept).Count() is var first
        && first < recording.Proposals.Count ? first : 0;

    /// <summary>Lengths that were typed; null where the card's hold.</summary>
    public IReadOnlyList<Length>? Typed
    {
        get => _typed;
        set
        {
            _typed = value;
            Recording = ImportRecording.HeldAgainst(Recording, _typed, _card);
        }
    }

    public Effort? Effort { get; set; }

    public Soreness? Soreness { get; set; }

    public Beaufort? Wind { get; set; }

    public string? Place { get; set; }

    /// <summary>The lengths of the pieces that count, in order, as far as they are known.</summary>
    public IReadOnlyList<Length> Lengths => Typed ?? _card?.Lengths ?? [];

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
            if (Typed is { } typed && typed.Count != kept)
                return $"{Say.Count(typed.Count, "length")} typed, but {Say.Count(kept, "piece")} that " +
                    $"{(kept == 1 ? "counts" : "count")}: which is it?";
            if (Lengths.Count == 0)
                return $"No card was open for {session.Chosen!.Paddler.Name} in {session.Chosen.Hull.Name} on that day, so say the " +
                    $"length of each of the {Say.Count(kept, "piece")}: l";
            if (Recording.Questions is [var question, ..])
                return question.CanBeConfirmed ? $"{question.Says} y: yes, right as shown" : question.Says;
            return _sameTime is [var other, ..] && !_beside
                ? $"The log has an outing of that time, {FindOuting.NameOf(other)} with {Say.Count(other.Pieces.Count, "piece")}. y: " +
                    $"this is another one"
                : null;
        }
    }

    /// <summary>Looks which card is open.</summary>
    public TrialCard? OpenCard(Workspace workspace) => ImportRecording.Card(workspace, session.Chosen!, Recording.Date);

    /// <summary>Takes the card that is open.</summary>
    public void TakeCard(TrialCard? card)
    {
        _card = card;
        Recording = ImportRecording.HeldAgainst(Recording, _typed, _card);
        _sameTime = ImportRecording.SameTime(session.Workspace, session.Chosen!, Recording);
    }

    /// <summary>Says that what is asked first is right as shown.</summary>
    public void Confirm()
    {
        if (Recording.Questions is [{ CanBeConfirmed: true } question, ..])
            Recording = Recording.Confirm(question.Kind);
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
        Recording = Recording.As(shapes[(Array.IndexOf(shapes, Recording.Shape) + 1) % shapes.Length]);
    }

    /// <summary>The length of a piece; null where it is left out or not known yet.</summary>
    public Length? LengthOf(int piece)
    {
        int order = Recording.Proposals.Take(piece).Count(earlier => earlier.Kept);
        return Recording.Proposals[piece].Kept && order < Lengths.Count ? Lengths[order] : null;
    }

    /// <summary>Moves one end of the piece that is pointed at.</summary>
    /// <exception cref="InvalidValueException">It cannot lie there; nothing is changed.</exception>
    public void MoveEdge(LegEdge edge, TimeSpan to) =>
        Recording = Recording.MoveEdge(At, edge == LegEdge.Start ? 0 : Recording.Proposals[At].Legs.Count - 1, edge, to);

    /// <summary>Moves both ends of the piece that is pointed at.</summary>
    /// <exception cref="InvalidValueException">They cannot lie there; nothing is changed.</exception>
    public void MoveTo(TimeSpan start, TimeSpan end)
    {
        RecordedOuting before = Recording;
        try
        {
            // The edge that makes room goes first.
            bool later = start > Recording.Proposals[At].Start;
            MoveEdge(later ? LegEdge.End : LegEdge.Start, later ? end : start);
            MoveEdge(later ? LegEdge.Start : LegEdge.End, later ? start : end);
        }
        catch (InvalidValueException)
        {
            Recording = before;
            throw;
        }
    }

    /// <summary>Saves the pieces that count as one outing.</summary>
    /// <exception cref="RequestException">Something is not settled, or cannot be right; nothing was saved.</exception>
    public Outing Save() => Question is { } question
        ? throw new RequestException(question)
        : ImportRecording.Save(session.Workspace, Recording, new RecordingAnswers
        {
            Chosen = session.Chosen!,
            Lengths = Lengths,
            Effort = Effort,
            Soreness = Soreness,
            Wind = Wind,
            Place = Place,
        });
}
