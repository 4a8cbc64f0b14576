using System.CommandLine;
using TrialLog.Commands.Json;
using TrialLog.Domain;
using TrialLog.UseCases;

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
        frame.OnDesk(command, (parsed, desk) =>
        {
            Paddler paddler = desk.PaddlerNamed(parsed.GetValue(frame.Paddler));
            if (advice.Asked(parsed))
            {
                advice.Show(frame, parsed, desk, paddler);
                return;
            }

            Hull? only = parsed.GetValue(frame.Hull) is { } name ? desk.HullNamed(name) : null;
            DateOnly from = parsed.GetValue(since) is { } text ? FindOuting.Date(text, desk.Today) : DateOnly.MinValue;
            IEnumerable<Outing> outings = desk.Logbook.Outings(paddler.Id)
                .Where(outing => (only is null || outing.HullId == only.Id) && outing.Date >= from);
            if (parsed.GetValue(last) is { } count)
                outings = outings.TakeLast(Math.Max(0, count));
            Dictionary<Guid, Hull> hulls = desk.Logbook.Hulls().ToDictionary(hull => hull.Id);
            Dictionary<Guid, Paddle> paddles = desk.Logbook.Paddles().ToDictionary(paddle => paddle.Id);
            List<Outing> shown = [.. outings];
            if (parsed.GetValue(frame.Json))
                Facts.Write<IReadOnlyList<OutingFacts>>(frame.Out, [.. shown.Select(outing => OutingFacts.Of(outing, paddler, hulls[outing.HullId], paddles))]);
            else if (shown.Count == 0)
                frame.Out.WriteLine($"No outing of {Quoted.Visible(paddler.Name)} to show.");
            else
                shown.ForEach(outing => HistoryText.Write(frame.Out, outing, hulls[outing.HullId], paddles, paddler.Unit));
        });
        return command;
    }
}
