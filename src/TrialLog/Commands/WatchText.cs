using TrialLog.Application.Files;
using TrialLog.Application.Logging;
using TrialLog.Application.Next;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary>Writes the open card as a workout for the watch, and prints it for a phone or a strip of tape.</summary>
internal static class WatchText
{
    /// <exception cref="RequestException">No card is open, or the file cannot be written.</exception>
    public static void Write(CommandFrame frame, Workspace workspace, Chosen chosen, string file, bool quiet)
    {
        GivenCard given = OpenCard.Of(workspace, chosen) ?? throw new RequestException("No card is open, so there is no workout to write.");
        NewFile.Write(workspace, file, WatchWorkout.File(given.Card, chosen.Paddler.Unit, given.Blind, workspace.Now));
        if (quiet)
            return;
        frame.Out.WriteLine();
        frame.Out.WriteLine($"Workout for the watch: {file}. Press the lap button when you are warm. For a strip of tape:");
        frame.Out.WriteLine(WatchWorkout.Strip(given.Card, chosen.Paddler.Unit, given.Blind));
    }
}
