using System.CommandLine;
using TrialLog.Application.Wording;
using TrialLog.Commands.Json;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
using TrialLog.Logbook.Sync;
using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands.Coach;

/// <summary><c>triallog sync FOLDER</c>: exchanges with other laptops through a folder that something else keeps in step.</summary>
internal static class SyncCommand
{
    public static Command Build(CommandFrame frame)
    {
        var folder = new Argument<string>(
            "FOLDER")
        { Description = "A folder that a drive, a stick or a shared disk carries between the laptops." };
        var command = new Command("sync",
            "Exchange with other laptops through a folder: each writes its own file and takes in the others'.") { folder, frame.Json };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            bool json = parsed.GetValue(frame.Json), ask = !json && frame.ConsoleHost.Interactive;
            SyncResult result = FolderSync.Run(workspace.Logbook, parsed.GetRequiredValue(folder),
                question => ask ? Ask(frame, question) : MergeChoice.Later, workspace.Today);
            if (json)
                JsonOutput.Write(frame.Out, SyncFacts.Of(result));
            else
                WriteText(frame, result);
        }, begins: true);
        return command;
    }

    private static MergeChoice Ask(CommandFrame frame, MergeQuestion question)
    {
        while (true)
        {
            MergeText.WriteQuestion(frame, question);
            frame.Out.Write(question.Kind == MergeQuestionKind.SameName ? "  (s)ame or (k)eep both: "
                : "  (k)eep here, (t)ake from file, or (l)ater: ");
            switch (frame.ConsoleHost.In.ReadLine()?.Trim().ToLowerInvariant())
            {
                case "s" or "same" when question.Kind == MergeQuestionKind.SameName:
                    return MergeChoice.Same;
                case "k" or "keep":
                    return MergeChoice.KeepHere;
                case "t" or "take":
                    return MergeChoice.TakeFromFile;
                case null or "l" or "later":
                    return MergeChoice.Later;
            }
        }
    }

    private static void WriteText(CommandFrame frame, SyncResult result)
    {
        Wrapped.Write(frame.Out, $"Took in {Say.Count(result.FilesTakenIn, "file")}: {Kinds(result.Added, "added")}, " +
            $"{Kinds(result.Updated, "updated")}, {Kinds(result.Removed, "removed")}.", frame.ConsoleHost.Width);
        foreach (string remark in result.Remarks)
            Wrapped.Write(frame.Out, Quoted.Visible(remark), frame.ConsoleHost.Width, "- ", 2);
        foreach (string unread in result.Unread)
            Wrapped.Write(frame.Out, $"Not read: {Quoted.Visible(unread)}", frame.ConsoleHost.Width, "- ", 2);
        foreach (MergeQuestion question in result.Waiting)
            MergeText.WriteQuestion(frame, question);
        if (result.Waiting.Count > 0)
            Wrapped.Write(frame.Out, $"{Say.Count(result.Waiting.Count, "question")} waiting: run this on a terminal to answer, here or " +
                $"on any of the laptops.", frame.ConsoleHost.Width);
    }

    private static string Kinds(IReadOnlyDictionary<string, int> counts, string done) =>
        counts.Count == 0 ? $"nothing {done}" : $"{string.Join(", ", counts.Select(one => Say.Count(one.Value, one.Key)))} {done}";
}
