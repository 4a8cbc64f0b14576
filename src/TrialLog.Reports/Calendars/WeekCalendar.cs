using TrialLog.Application.Files;
using TrialLog.Application.Squads;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Calendars;

/// <summary>Puts the week's cards into a calendar file; a week that is there already is updated.</summary>
internal static class WeekCalendar
{
    private const int LargestFile = 32 * 1024 * 1024;

    /// <summary>Puts the cards of who tests there; an entry of this week for somebody who does not is called off.</summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="analyses">Whose cards, each with the coach's or blind card that stands.</param>
    /// <param name="file">The calendar; made if it is missing.</param>
    /// <param name="day">The day to paddle, if one was named.</param>
    /// <param name="forTheCoach">Whether a coach reads it, or each paddler their own.</param>
    /// <exception cref="RequestException">The file is no calendar, or cannot be read or written; what was there is untouched.</exception>
    public static void Put(Workspace workspace, IEnumerable<(Analysis Analysis, GivenCard? Standing)> analyses, string file,
        DateOnly? day, bool forTheCoach = false)
    {
        long change = workspace.Logbook.LastChange;
        Put(workspace,
            [.. analyses.Select(
            one => new CalendarCard(one.Analysis, workspace.Today, day, change)
            {
                StandingCard = one.Standing, CalledOff = !SquadRow.CanTest(one.Analysis, one.Standing),
                ForTheCoach = forTheCoach,
            })], file);
    }

    /// <summary>Puts these entries there.</summary>
    /// <exception cref="RequestException">The file is no calendar, or cannot be read or written; what was there is untouched.</exception>
    public static void Put(Workspace workspace, IReadOnlyList<CalendarCard> cards, string file)
    {
        NewFile.Refuse(workspace, file);
        string? existing = Existing(file);
        string calendar;
        try
        {
            calendar = CardCalendar.Put(existing, cards, workspace.Now, ProgramVersion.Text);
        }
        catch (InvalidValueException reason)
        {
            throw new RequestException($"{Quoted.Brief(file, 200)}: {reason.Message}");
        }

        if (calendar != existing)
            NewFile.Write(workspace, file, calendar);
    }

    private static string? Existing(string file)
    {
        var there = new FileInfo(file);
        if (!there.Exists)
            return null;
        if (there.Length > LargestFile)
            throw new RequestException($"{Quoted.Brief(file, 200)} is larger than {LargestFile / (1024 * 1024)} MB; name another file.");
        return File.ReadAllText(file);
    }
}
