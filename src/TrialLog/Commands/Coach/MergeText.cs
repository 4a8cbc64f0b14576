using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands.Coach;

/// <summary>What a merge does, as text.</summary>
internal static class MergeText
{
    public static void WritePlan(CommandFrame frame, MergePlan plan, bool dryRun)
    {
        string would = dryRun ? "Would add" : "Adds", update = dryRun ? "Would update" : "Updates";
        if (plan.Added.Count > 0)
            Wrapped.Write(frame.Out, $"{would} {Kinds(plan.Added)}.", frame.ConsoleHost.Width);
        if (plan.Updated.Count > 0)
            Wrapped.Write(frame.Out, $"{update} {Kinds(plan.Updated)} with a newer version.", frame.ConsoleHost.Width);
        if (plan.Same > 0)
            frame.Out.WriteLine($"{Say.Count(plan.Same, "record")} the same here already.");
        foreach (string remark in plan.Remarks)
            Wrapped.Write(frame.Out, Quoted.Visible(remark), frame.ConsoleHost.Width, "- ", 2);
        if (plan.Conflicts.Count > 0)
            frame.Out.WriteLine($"To decide: {Say.Count(plan.Conflicts.Count, "conflict")}.");
        if (plan.Conflicts.Count > 0 && (dryRun || !frame.ConsoleHost.Interactive))
        {
            foreach (MergeConflict conflict in plan.Conflicts)
                WriteConflict(frame, conflict);
        }
    }

    public static void WriteConflict(CommandFrame frame, MergeConflict conflict)
    {
        Wrapped.Write(frame.Out, $"{Quoted.Visible(conflict.What)}: {Question(conflict.Question)}", frame.ConsoleHost.Width, "? ", 2);
        Wrapped.Write(frame.Out, Quoted.Visible(conflict.Mine), frame.ConsoleHost.Width, "    mine    ", 12);
        Wrapped.Write(frame.Out, Quoted.Visible(conflict.Theirs), frame.ConsoleHost.Width, "    theirs  ", 12);
    }

    private static string Question(MergeQuestion question) => question switch
    {
        MergeQuestion.RemovedHere => "removed here, still in the file",
        MergeQuestion.PieceOrder => "in another order",
        _ => "edited on both sides",
    };

    private static string Kinds(IReadOnlyDictionary<string, int> counts) =>
        string.Join(", ", counts.OrderBy(one => one.Key, StringComparer.Ordinal).Select(one => Say.Count(one.Value, one.Key)));
}
