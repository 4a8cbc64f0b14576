using TrialLog.Application.Coaching;
using TrialLog.Application.Reporting;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Coach;

/// <summary>What coaches wrote, oldest first, with who and when.</summary>
internal static class NotesSection
{
    public static Section? Of(ReportContents contents, Names names)
    {
        if (contents.Notes.Count == 0)
            return null;
        return new("Coach's notes", [.. contents.Notes.OrderBy(note => note.WrittenAt).ThenBy(note => note.Id).Select(note =>
            new Quotation($"{PlainText.Line(note.Author)}, {note.WrittenAt.UtcDateTime:yyyy-MM-dd HH:mm} UTC, on " +
                $"{Subject(note, contents, names)}", PlainText.Lines(note.Text)))]);
    }

    private static string Subject(CoachNote note, ReportContents contents, Names names) => note.About switch
    {
        NoteSubject.Outing => contents.Outings.FirstOrDefault(outing => outing.Id == note.AboutId) is { } outing
            ? $"the outing of {Names.Of(outing)}"
            : "an outing no longer in the log",
        NoteSubject.Card => contents.Advice.FirstOrDefault(given => given.Card.Id == note.AboutId) is { Card: var card }
            ? $"the card for {names.Hull(card.HullId)} of {Say.Day(DateOnly.FromDateTime(card.GivenAt.UtcDateTime))}"
            : "a card no longer in the log",
        _ => PlainText.Line(contents.Analysis.Paddler.Name),
    };
}
