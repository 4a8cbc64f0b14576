using System.CommandLine;
using TrialLog.Application.Files;
using TrialLog.Application.Squads;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Reports.Calendars;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Squads;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Coach;

/// <summary><c>triallog next --squad</c> for all at once, and <c>next --calendar FILE.ics</c> for the week's card as an entry.</summary>
internal sealed class WeekOptions
{
    private readonly Option<bool> _squad = new("--squad") { Description = "Every paddler, worst first, and this week's cards for all." };

    private readonly Option<string?> _sheet = new(
        "--out")
    { Description = "With --squad: the printable sheet, as .html, .md or .txt.", HelpName = "FILE" };

    private readonly Option<string?> _each = new("--each")
    {
        Description = "With --squad: for each who tests a card for the phone, a calendar entry, a workout for the watch and a line to " +
            "send, into this folder.",
        HelpName = "FOLDER",
    };

    private readonly Option<string?> _calendar = new("--calendar")
    {
        Description = "Put the week's card into a calendar file; the same week again updates its entry.",
        HelpName = "FILE.ics",
    };

    private readonly Option<string?> _day = new(
        "--on")
    { Description = "With --calendar: the day to paddle it; today at first.", HelpName = "DATE" };

    public WeekOptions(Command next)
    {
        foreach (Option option in new Option[] { _squad, _sheet, _each, _calendar, _day })
            next.Options.Add(option);
        next.Validators.Add(result =>
        {
            if (result.GetValue(_sheet) is not null && !result.GetValue(_squad))
                result.AddError("--out goes with --squad; for one paddler: triallog report --out FILE.html");
            if (result.GetValue(_each) is not null && !result.GetValue(_squad))
                result.AddError("--each goes with --squad.");
            if (result.GetValue(_day) is not null && result.GetValue(_calendar) is null && result.GetValue(_each) is null)
                result.AddError("--on goes with --calendar FILE.ics or --each FOLDER.");
        });
    }

    public bool IsSquad(ParseResult parsed) => parsed.GetValue(_squad);

    /// <summary>Reviews the squad.</summary>
    public void ShowSquad(CommandFrame frame, ParseResult parsed, Workspace workspace)
    {
        SquadContents squad = SquadReview.Of(workspace, parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle),
            SquadProgress.On(frame.ConsoleHost, workspace.Logbook.Paddlers().Count));
        IReadOnlyList<SquadRow> rows = SquadOrder.WorstFirst(squad.Rows);
        PutIntoCalendar(parsed, workspace, rows.Where(row => row.Analysis is not null).Select(row => (row.Analysis!, row.StandingCard)),
            forTheCoach: true);
        string? folder = parsed.GetValue(_each);
        IReadOnlyList<string> lines = folder is null ? [] : CardFolder.Write(workspace, rows, folder, Day(parsed, workspace));
        string? sheet = parsed.GetValue(_sheet);
        if (sheet is not null)
        {
            NewFile.Write(workspace, sheet, Path.GetExtension(sheet).ToLowerInvariant() switch
            {
                ".txt" => SquadSheet.ToText(squad),
                ".md" or ".markdown" => SquadSheet.ToMarkdown(squad),
                _ => SquadSheet.ToHtml(squad),
            });
        }

        if (parsed.GetValue(frame.Json))
            JsonOutput.Write(frame.Out, SquadFacts.Of(rows));
        else if (folder is not null)
        {
            frame.Out.WriteLine($"In {Quoted.Brief(folder, 200)}: {Say.Count(lines.Count, "card")} with calendar entries, workouts for " +
                $"the watch and lines to send.");
            foreach (string line in lines)
                Wrapped.Write(frame.Out, line, frame.ConsoleHost.Width, "- ", 2);
        }
        else if (sheet is null)
            frame.Out.Write(SquadSheet.ToText(squad));
        if (sheet is not null && !parsed.GetValue(frame.Json))
            frame.Out.WriteLine($"The squad's sheet is in {Quoted.Brief(sheet, 200)}: {Say.Count(rows.Count, "paddler")}.");
        SayCalendar(frame, parsed, workspace);
    }

    /// <summary>Puts the cards into the calendar, if one was named.</summary>
    public void PutIntoCalendar(ParseResult parsed, Workspace workspace, IEnumerable<(Analysis Analysis, GivenCard? Standing)> analyses,
        bool forTheCoach = false)
    {
        if (parsed.GetValue(_calendar) is { } file)
            WeekCalendar.Put(workspace, analyses, file, Day(parsed, workspace), forTheCoach);
    }

    /// <summary>Says where the cards are, if a calendar was named.</summary>
    public void SayCalendar(CommandFrame frame, ParseResult parsed, Workspace workspace)
    {
        if (parsed.GetValue(_calendar) is { } file && !parsed.GetValue(frame.Json))
            frame.Out.WriteLine($"In {Quoted.Brief(file, 200)} for week {CardCalendar.Week(Day(parsed, workspace) ?? workspace.Today)}; " +
                $"the same week again updates the entry.");
    }

    private DateOnly? Day(ParseResult parsed, Workspace workspace) =>
        parsed.GetValue(_day) is { } text ? TextForms.Date(workspace.Today).Read(text) : null;
}
