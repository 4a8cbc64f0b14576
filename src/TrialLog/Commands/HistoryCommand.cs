using System.CommandLine;
using TrialLog.Application.Text;
using TrialLog.Commands.Coach;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary><c>triallog history</c>: the outings, opened to their pieces.</summary>
internal static class HistoryCommand
{
    public static Command Build(CommandFrame frame)
    {
        var last = new Option<int?>("--last") { Description = "Only the latest so many outings.", HelpName = "N" };
        var since = new Option<string?>("--since") { Description = "Only from that date on.", HelpName = "DATE" };
        var command = new Command("history", "The outings and their pieces.") { frame.Paddler, frame.Hull, last, since, frame.Json };
        var advice = new Coach.AdviceOptions(command);
        frame.OnDesk(command, (parsed, workspace) =>
        {
            if (advice.ShowHeld(frame, parsed, workspace))
                return;
            Paddler paddler = workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
            if (advice.Asked(parsed))
            {
                advice.Show(frame, parsed, workspace, paddler);
                return;
            }

            Hull? only = parsed.GetValue(frame.Hull) is { } name ? workspace.HullNamed(name) : null;
            DateOnly from = parsed.GetValue(since) is { } text ? TextForms.Date(workspace.Today).Read(text) : DateOnly.MinValue;
            IEnumerable<Outing> outings = workspace.Logbook.Outings(paddler.Id)
                .Where(outing => (only is null || outing.HullId == only.Id) && outing.Date >= from);
            if (parsed.GetValue(last) is { } count)
                outings = outings.TakeLast(Math.Max(0, count));
            Dictionary<Guid, Hull> hulls = workspace.Logbook.Hulls().ToDictionary(hull => hull.Id);
            Dictionary<Guid, Paddle> paddles = workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id);
            List<Outing> shown = [.. outings];
            if (parsed.GetValue(frame.Json))
                JsonOutput.Write<IReadOnlyList<OutingFacts>>(
                    frame.Out, [.. shown.Select(outing => OutingFacts.Of(outing, paddler, hulls[outing.HullId], paddles))]);
            else if (shown.Count == 0)
                frame.Out.WriteLine($"No outing of {Quoted.Visible(paddler.Name)} to show.");
            else
                shown.ForEach(outing => HistoryText.Write(frame.Out, outing, hulls[outing.HullId], paddles, paddler.Unit));
        });
        return command;
    }
}
