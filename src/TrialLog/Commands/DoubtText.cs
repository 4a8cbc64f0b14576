using TrialLog.Domain;
using TrialLog.UseCases;

namespace TrialLog.Commands;

/// <summary>Asks on the error stream about what may be a slip in an outing that was saved.</summary>
internal static class DoubtText
{
    public static void Write(CommandFrame frame, Desk desk, Outing outing, Outing? before = null)
    {
        IReadOnlyList<string> doubts = OutingDoubts.Of(desk, outing, before);
        foreach (string doubt in doubts)
            Wrapped.Write(frame.Surroundings.Error, doubt, frame.Surroundings.Width);
        if (doubts.Count > 0)
            Wrapped.Write(frame.Surroundings.Error, $"It is kept as it is. To mend a piece: triallog edit {FindOuting.NameOf(outing)} PIECE --time T (or --distance D); to take it all back: triallog undo", frame.Surroundings.Width);
    }
}
