using System.CommandLine;
using System.Text;
using TrialLog.Application.Files;
using TrialLog.Application.Sizing;
using TrialLog.Commands.Json;
using TrialLog.Domain.Log;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;

namespace TrialLog.Commands.Sizing;

/// <summary><c>triallog order-sheet</c>: what to order or cut.</summary>
internal static class OrderSheetCommand
{
    public static Command Build(CommandFrame frame)
    {
        Option<string?> hull = PaddlerCommand.Text("--hull", "Only this hull; else those paddled and the goal event's.", "NAME");
        Option<string?> paddle = PaddlerCommand.Text("--paddle", "Only this paddle's blade.", "NAME");
        var every = new Option<bool>("--all") { Description = "Every hull, paddled or not." };
        var markdown = new Option<bool>("--markdown") { Description = "As Markdown." };
        Option<string?> file = PaddlerCommand.Text("--out", "Write it to this file; .md makes it Markdown.", "FILE");
        var command = new Command(
            "order-sheet", "What to order or cut: a length for every hull and blade, how sure, and what to tell the maker.")
        {
            frame.Paddler, hull, paddle, every, markdown, file, frame.Json,
        };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Paddler paddler = workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
            OrderSheet sheet = DrawUpOrderSheet.For(
                workspace, paddler, parsed.GetValue(hull), parsed.GetValue(paddle), parsed.GetValue(every));
            workspace.Remember(paddler);
            string? path = parsed.GetValue(file);
            using var written = new StringWriter { NewLine = "\n" };
            if (parsed.GetValue(frame.Json))
                JsonOutput.Write(written, OrderSheetFacts.Of(sheet));
            else
                written.Write(parsed.GetValue(markdown) || path?.EndsWith(".md", StringComparison.OrdinalIgnoreCase) == true
                    ? OrderSheetText.Markdown(sheet) : OrderSheetText.Plain(sheet));
            if (path is null)
            {
                frame.Out.Write(written.ToString());
                return;
            }

            NewFile.Write(workspace, path, written.ToString());
            frame.Out.WriteLine($"Wrote {Path.GetFullPath(path)}");
        });
        return command;
    }
}
