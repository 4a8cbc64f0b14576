using System.CommandLine;

namespace TrialLog.Commands;

/// <summary><c>triallog</c> alone: the screens on a terminal; elsewhere what there is.</summary>
internal static class OpeningCommand
{
    public static void Attach(RootCommand root, CommandFrame frame) => root.SetAction(parsed =>
    {
        frame.Surroundings.Error.WriteLine("The screens need a terminal. Commands work anywhere; see: triallog --help");
        return 2;
    });
}
