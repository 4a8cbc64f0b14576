using System.CommandLine;
using System.Globalization;
using TrialLog.Application.Files;
using TrialLog.Application.Squads;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Calendars;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Squads;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Coach;

/// <summary>
/// <c>triallog plan --weeks N --paddles P,Q</c>: who of the squad tests what when, with the adjustable paddles there are.
/// </summary>
internal static class PlanCommand
{
    private const int MostWeeks = 26, MostOutings = 50;

    public static Command Build(CommandFrame frame)
    {
        var weeks = new Option<int>("--weeks") { Description = "How many weeks, 1 to 26.", HelpName = "N", DefaultValueFactory = _ => 8 };
        var paddles = new Option<string[]>(
            "--paddles")
        { Description = "The adjustable paddles to lend, with commas between.", HelpName = "P,Q", Required = true };
        var each = new Option<int>("--outings")
        {
            Description = "How often a week each paddle can be lent; once at first.", HelpName = "N",
            DefaultValueFactory = _ => 1
        };
        var race = new Option<string[]>(
            "--race")
        {
            Description = "The race day, of all or of one: 2026-06-13 or \"NAME: 2026-06-13\"; may be repeated.",
            HelpName = "DATE"
        };
        var on = new Option<string?>("--on")
        {
            Description = "The day of the first practice, 2026-05-02; today at first.",
            HelpName = "DATE"
        };
        var sheet = new Option<string?>("--out") { Description = "The printable page, as .html, .md or .txt.", HelpName = "FILE" };
        var calendar = new Option<string?>(
            "--calendar")
        {
            Description = "Put the outings into a calendar file; those no longer in the plan are called off.",
            HelpName = "FILE.ics"
        };
        var command = new Command(
            "plan", "Who of the squad tests what when, with the adjustable paddles there are, by what it should win the squad.")
        {
            weeks, paddles, each, race, on, sheet, calendar, frame.Json,
        };
        foreach ((Option<int> option, int most) in new[] { (weeks, MostWeeks), (each, MostOutings) })
        {
            option.Validators.Add(result =>
            {
                if (result.GetValueOrDefault<int>() is var told && (told < 1 || told > most))
                    result.AddError($"{option.Name} goes from 1 to {most}.");
            });
        }

        frame.OnDesk(command, (parsed, workspace) =>
        {
            DateOnly first = parsed.GetValue(on) is { } text ? Day(text) : workspace.Today;
            string[] names = [.. parsed.GetRequiredValue(paddles)
                .SelectMany(name => name.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))];
            SquadPlan plan = PlanSquad.Of(
                workspace, parsed.GetValue(weeks), names, parsed.GetValue(each), first, Races(workspace, parsed.GetValue(race) ?? []));
            if (parsed.GetValue(calendar) is { } entries)
                WeekCalendar.Put(workspace, Entries(workspace, plan), entries);
            if (parsed.GetValue(sheet) is { } file)
            {
                NewFile.Write(workspace, file, Path.GetExtension(file).ToLowerInvariant() switch
                {
                    ".txt" => PlanPage.ToText(plan),
                    ".md" or ".markdown" => PlanPage.ToMarkdown(plan),
                    _ => PlanPage.ToHtml(plan),
                });
            }

            if (parsed.GetValue(frame.Json))
                JsonOutput.Write(frame.Out, PlanFacts.Of(plan));
            else if (parsed.GetValue(sheet) is { } written)
                frame.Out.WriteLine($"The plan is in {Quoted.Brief(written, 200)}.");
            else
                frame.Out.Write(PlanPage.ToText(plan));
        });
        return command;
    }

    // Whoever has no outing in a week of the plan loses the entry that an older plan put there.
    private static IReadOnlyList<CalendarCard> Entries(Workspace workspace, SquadPlan plan)
    {
        long change = workspace.Logbook.LastChange;
        List<CalendarCard> cards = [
            .. plan.Outings.Select(
            outing => new CalendarCard(outing.Analysis, workspace.Today, outing.Day, change)
            {
                LengthsFollow = outing.Outing > 1, StandingCard = outing.StandingCard, ForTheCoach = true,
            })];
        HashSet<string> planned = [.. cards.Select(card => card.Uid)];
        cards.AddRange(plan.Paddlers.Where(one => one.Row.Analysis is not null)
            .SelectMany(one => Enumerable.Range(1, plan.Weeks)
                .Select(week => new CalendarCard(one.Row.Analysis!, workspace.Today, plan.DayOf(week), change)
                {
                    CalledOff = true, ForTheCoach = true,
                }))
            .Where(card => !planned.Contains(card.Uid)));
        return cards;
    }

    private static Dictionary<Guid, DateOnly> Races(Workspace workspace, string[] told)
    {
        var races = new Dictionary<Guid, DateOnly>();
        foreach (string one in told)
        {
            int colon = one.LastIndexOf(':');
            races[colon < 0 ? Guid.Empty : workspace.PaddlerNamed(one[..colon].Trim()).Id] = Day(one[(colon + 1)..]);
        }

        return races;
    }

    private static DateOnly Day(string text) =>
        DateOnly.TryParseExact(text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
        ? day
        : throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a day to come; write it like 2026-06-13.");
}
