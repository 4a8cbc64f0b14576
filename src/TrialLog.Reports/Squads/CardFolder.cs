using System.Text;
using TrialLog.Application.Files;
using TrialLog.Application.Next;
using TrialLog.Application.Squads;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Calendars;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Squads;

/// <summary>
/// A folder with what to hand out this week: for each who tests a card for the phone, a calendar entry, a workout for the watch and a line
/// to send. Who does not test has none: what an earlier week left there for them is removed.
/// </summary>
internal static class CardFolder
{
    private static readonly string[] Kinds = [".html", ".ics", ".fit", ".txt"];

    /// <summary>Writes the folder; the lines to send, in the order of the list.</summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="rows">The squad, in the order of the list.</param>
    /// <param name="folder">The folder; made if it is missing.</param>
    /// <param name="day">The day to paddle, if one was named.</param>
    /// <exception cref="RequestException">It cannot be made or written to.</exception>
    public static IReadOnlyList<string> Write(Workspace workspace, IReadOnlyList<SquadRow> rows, string folder, DateOnly? day)
    {
        if (string.IsNullOrWhiteSpace(folder) || File.Exists(folder))
            throw new RequestException($"{Quoted.Brief(folder, 200)} is no folder; name one, and it is made if it is missing.");
        Directory.CreateDirectory(folder);
        List<string> lines = [];
        foreach ((SquadRow row, string name) in rows.OrderBy(row => row.Paddler.Id).Zip(Names(rows))
            .OrderBy(one => rows.ToList().IndexOf(one.First)))
        {
            string start = Path.Combine(folder, name);
            if (!row.Tests)
            {
                foreach (string kind in Kinds)
                    File.Delete(start + kind);
                continue;
            }

            Analysis analysis = row.Analysis!;
            string line = PhoneCard.Message(analysis, row.StandingCard);
            NewFile.Write(workspace, start + ".html", PhoneCard.ToHtml(analysis, row.StandingCard, workspace.Today, ProgramVersion.Text));
            WeekCalendar.Put(workspace, [(analysis, row.StandingCard)], start + ".ics", day);
            NewFile.Write(workspace, start + ".fit",
                WatchWorkout.File(analysis.Card, row.Paddler.Unit, row.StandingCard is { Blind: true }, workspace.Now));
            NewFile.Write(workspace, start + ".txt", line + Environment.NewLine);
            lines.Add(line);
        }

        return lines;
    }

    // Letters and digits of the name, so that a file system, a phone and a mail take it; told apart where two come out alike.
    private static List<string> Names(IReadOnlyList<SquadRow> rows)
    {
        HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase);
        List<string> names = [];
        foreach (SquadRow row in rows.OrderBy(row => row.Paddler.Id))
        {
            string plain = string.Join(
                '-', new string([.. row.Paddler.Name.Normalize(NormalizationForm.FormC).Select(c => char.IsLetterOrDigit(c) ? c : ' ')])
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();
            string name = plain.Length == 0 ? "paddler" : plain;
            for (int number = 2; !taken.Add(name); number++)
                name = $"{(plain.Length == 0 ? "paddler" : plain)}-{number}";
            names.Add(name);
        }

        return names;
    }
}
