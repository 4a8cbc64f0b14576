using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
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
            Wrapped.Write(frame.Out, $"{update} {Kinds(plan.Updated)} with what is newer in the file.", frame.ConsoleHost.Width);
        if (plan.Removed.Count > 0)
            Wrapped.Write(frame.Out, $"{(dryRun ? "Would remove" : "Removes")} {Kinds(plan.Removed)}, as was done there.",
                frame.ConsoleHost.Width);
        if (plan.Same > 0)
            frame.Out.WriteLine($"{Say.Count(plan.Same, "record")} the same here already.");
        foreach (string remark in plan.Remarks)
            Wrapped.Write(frame.Out, Quoted.Visible(remark), frame.ConsoleHost.Width, "- ", 2);
        if (plan.Questions.Count > 0)
            frame.Out.WriteLine($"To decide: {Say.Count(plan.Questions.Count, "question")}.");
        if (plan.Questions.Count > 0 && (dryRun || !frame.ConsoleHost.Interactive))
        {
            foreach (MergeQuestion question in plan.Questions)
                WriteQuestion(frame, question);
        }
    }

    public static void WriteQuestion(CommandFrame frame, MergeQuestion question)
    {
        Wrapped.Write(frame.Out, $"{Quoted.Visible(question.What)}: {Why(question.Kind)}", frame.ConsoleHost.Width, "? ", 2);
        Wrapped.Write(frame.Out, Quoted.Visible(question.Here), frame.ConsoleHost.Width, "    here     ", 13);
        Wrapped.Write(frame.Out, Quoted.Visible(question.InFile), frame.ConsoleHost.Width, "    in file  ", 13);
    }

    private static string Why(MergeQuestionKind kind) => kind switch
    {
        MergeQuestionKind.RemovedHere => "removed here, still in the file",
        MergeQuestionKind.RemovedInFile => "removed in the file, edited here",
        MergeQuestionKind.SameName => "is it the same?",
        MergeQuestionKind.PieceOrder => "in another order",
        _ => "edited on both sides",
    };

    private static string Kinds(IReadOnlyDictionary<string, int> counts) =>
        string.Join(", ", counts.OrderBy(one => one.Key, StringComparer.Ordinal).Select(one => Say.Count(one.Value, one.Key)));
}
