using TrialLog.Application.Logging;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary>Asks on the error stream about what may be a slip in an outing that was saved.</summary>
internal static class DoubtText
{
    public static void Write(CommandFrame frame, Workspace workspace, Outing outing, Outing? before = null)
    {
        IReadOnlyList<string> doubts = OutingDoubts.Of(workspace, outing, before);
        foreach (string doubt in doubts)
            Wrapped.Write(frame.ConsoleHost.Error, doubt, frame.ConsoleHost.Width);
        if (doubts.Count > 0)
            Wrapped.Write(frame.ConsoleHost.Error, $"Saved as typed. To change it: triallog edit {FindOuting.NameOf(outing)} PIECE " +
                $"--time T (or --distance D); to undo: triallog undo", frame.ConsoleHost.Width);
    }
}
