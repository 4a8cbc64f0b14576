using TrialLog.Application.Logging;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Coaching;

/// <summary>What coaches write about a paddler, an outing or a card.</summary>
internal static class CoachNotes
{
    private const string LastAuthor = "last-author", LongestNote = "4,000";

    /// <summary>The notes on a paddler, the paddler's outings and cards, in the order written: their numbers count from 1.</summary>
    public static IReadOnlyList<CoachNote> About(Workspace workspace, Paddler paddler)
    {
        HashSet<Guid> theirs =
        [
            paddler.Id,
            .. workspace.Logbook.Outings(paddler.Id).Select(outing => outing.Id),
            .. workspace.Logbook.Cards(paddler.Id).Select(card => card.Id),
        ];
        return [.. workspace.Logbook.Notes().Where(note => theirs.Contains(note.AboutId)).OrderBy(note => note.WrittenAt)
            .ThenBy(note => note.Id)];
    }

    /// <summary>Writes a note on the paddler, or on one outing or card of theirs.</summary>
    /// <param name="workspace">The workspace.</param>
    /// <param name="paddler">Whose coach writes.</param>
    /// <param name="text">The text.</param>
    /// <param name="author">Who writes; null for whoever wrote last.</param>
    /// <param name="outing">The outing's name, if the note is on one.</param>
    /// <param name="card">The card's number or id, if the note is on one.</param>
    public static CoachNote Add(Workspace workspace, Paddler paddler, string text, string? author, string? outing, string? card)
    {
        if (outing is not null && card is not null)
            throw new RequestException("A note is on an outing or on a card, not on both; write two.");
        string by = author ?? workspace.Logbook.Setting(LastAuthor)
            ?? throw new RequestException("Say who writes with --by NAME; it is remembered for the next note.");
        (NoteSubject about, Guid id) = outing is not null ? (NoteSubject.Outing, FindOuting.Of(workspace, paddler, outing).Id)
            : card is not null ? (NoteSubject.Card, AdviceReview.CardNamed(workspace, paddler, card).Card.Id)
            : (NoteSubject.Paddler, paddler.Id);
        var note = new CoachNote
        {
            Id = Guid.CreateVersion7(workspace.Now),
            About = about,
            AboutId = id,
            Author = NameRule.Checked(by, "note's author"),
            WrittenAt = workspace.Now,
            Text = text.Trim() is { Length: > 0 and <= 4000 } some ? some
                : throw new InvalidValueException($"A note has 1 to {LongestNote} characters."),
        };
        workspace.Logbook.Change($"Wrote a note on {Subject(workspace, paddler, note)}", logbook => logbook.Put(note));
        workspace.Logbook.SaveSetting(LastAuthor, note.Author);
        return note;
    }

    /// <summary>Removes the note of that number in <see cref="About"/>.</summary>
    public static CoachNote Remove(Workspace workspace, Paddler paddler, int number)
    {
        IReadOnlyList<CoachNote> all = About(workspace, paddler);
        if (number < 1 || number > all.Count)
        {
            throw new RequestException(all.Count == 0
                ? $"There is no note on {paddler.Name}."
                : $"There is no note {number} on {paddler.Name}; they are numbered 1 to {all.Count}. See: triallog note list");
        }

        CoachNote note = all[number - 1];
        workspace.Logbook.Change($"Removed {note.Author}'s note on {Subject(workspace, paddler, note)}",
            logbook => logbook.RemoveNote(note.Id));
        return note;
    }

    /// <summary>What a note is on, for a person.</summary>
    public static string Subject(Workspace workspace, Paddler paddler, CoachNote note) => note.About switch
    {
        NoteSubject.Outing => workspace.Logbook.Outings(paddler.Id).FirstOrDefault(outing => outing.Id == note.AboutId) is { } outing
            ? $"the outing {FindOuting.NameOf(outing)}" : "an outing no longer in the log",
        NoteSubject.Card => workspace.Logbook.Cards(paddler.Id).FirstOrDefault(card => card.Id == note.AboutId) is { } card
            ? $"the card of {workspace.DayOf(card.GivenAt):yyyy-MM-dd}" : "a card no longer in the log",
        _ => paddler.Name,
    };
}
