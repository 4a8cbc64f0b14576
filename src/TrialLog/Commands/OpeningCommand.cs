using System.CommandLine;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Screens;
using TrialLog.Screens.Base;

namespace TrialLog.Commands;

/// <summary>
/// <c>triallog</c> alone: the screens on a terminal, or with <c>--plain</c> the same in sentences; elsewhere what there is.
/// </summary>
internal static class OpeningCommand
{
    public static void Attach(RootCommand root, CommandFrame frame)
    {
        var plain = new Option<bool>("--plain") { Description = "What the screens show, printed in sentences, without screens." };
        foreach (Option option in new Option[] { plain, frame.Paddler, frame.Hull, frame.Paddle })
            root.Options.Add(option);
        root.SetAction(parsed =>
        {
            if (parsed.GetValue(plain))
                return frame.Guarded(() => Print(frame, parsed));
            if (!frame.ConsoleHost.Interactive)
            {
                frame.ConsoleHost.Error.WriteLine(
                    "The screens need a terminal. Their sentences alone: triallog --plain. Commands work anywhere; see: triallog --help");
                return 2;
            }

            return frame.Guarded(() => ScreensProgram.Run(
                () => frame.Open(parsed, begins: true), frame.ConsoleHost.Clock, frame.ConsoleHost.Environment));
        });
    }

    private static void Print(CommandFrame frame, ParseResult parsed)
    {
        using LogbookFile logbook = frame.Open(parsed, begins: false);
        var workspace = new Workspace(logbook, frame.ConsoleHost.Clock);
        Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
        foreach (string line in ScreensInWords.Of(workspace, chosen, Analyses.OfTheTuning))
        {
            if (line.Length == 0)
                frame.Out.WriteLine();
            else
                Wrapped.Write(frame.Out, line.StartsWith("# ", StringComparison.Ordinal) ? line[2..] : line, frame.ConsoleHost.Width);
        }
    }
}
