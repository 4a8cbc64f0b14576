using System.CommandLine;
using TrialLog.Logbook;
using TrialLog.Screens;

namespace TrialLog.Commands;

/// <summary><c>triallog</c> alone: the screens on a terminal; elsewhere what there is.</summary>
internal static class OpeningCommand
{
    public static void Attach(RootCommand root, CommandFrame frame) => root.SetAction(parsed =>
    {
        if (!frame.ConsoleHost.Interactive)
        {
            frame.ConsoleHost.Error.WriteLine("The screens need a terminal. Commands work anywhere; see: triallog --help");
            return 2;
        }

        return frame.Guarded(() =>
        {
            using LogbookFile logbook = LogbookFile.Open(frame.StorePath(parsed));
            ScreensProgram.Run(logbook, frame.ConsoleHost.Clock, frame.ConsoleHost.Environment);
        });
    });
}
