using System.CommandLine;
using TrialLog.Application.Deciding;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Logbook.Exchange;
using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands.Coach;

/// <summary>
/// <c>triallog merge FILE</c>: takes a shared record in. What both sides edited differently is shown with both versions
/// and decided by the user, or by --keep-here or --take-from-file; never silently.
/// </summary>
internal static class MergeCommand
{
    public static Command Build(CommandFrame frame)
    {
        var file = new Argument<string>("FILE") { Description = "A record written by triallog share." };
        var keep = new Option<bool>("--keep-here") { Description = "Where both sides edited the same, keep what is here." };
        var take = new Option<bool>("--take-from-file") { Description = "Where both sides edited the same, take what is in the file." };
        // As they were once spelled.
        Option<bool> mine = new("--mine") { Hidden = true }, theirs = new("--theirs") { Hidden = true };
        var dry = new Option<bool>("--dry-run") { Description = "Only say what would happen." };
        var command = new Command("merge", "Take a shared record in: no duplicates, nothing overwritten unasked.")
        {
            file, keep, take, mine, theirs, dry, frame.Json,
        };
        command.Validators.Add(result =>
        {
            if ((result.GetValue(keep) || result.GetValue(mine)) && (result.GetValue(take) || result.GetValue(theirs)))
                result.AddError("Say --keep-here or --take-from-file, not both.");
        });
        frame.OnDesk(command, (parsed, workspace) =>
        {
            bool json = parsed.GetValue(frame.Json), dryRun = parsed.GetValue(dry);
            MergePlan plan = Merge.Plan(workspace.Logbook, Sharing.Load(parsed.GetRequiredValue(file)), workspace.Today);
            MergeChoice? all = parsed.GetValue(keep) || parsed.GetValue(mine) ? MergeChoice.KeepHere
                : parsed.GetValue(take) || parsed.GetValue(theirs) ? MergeChoice.TakeFromFile : null;
            if (!json)
                MergeText.WritePlan(frame, plan, dryRun);
            Dictionary<Guid, MergeChoice>? choices = dryRun ? null : Decide(frame, plan, all, ask: !json && frame.ConsoleHost.Interactive);
            if (choices is not null)
                plan.Apply(workspace.Logbook, question => choices[question.Id]);
            if (json)
                JsonOutput.Write(frame.Out, MergeFacts.Of(plan, choices));
            if (choices is null && !dryRun)
            {
                throw new RequestException(frame.ConsoleHost.Interactive && !json
                    ? "Nothing was merged."
                    : $"Nothing was merged: {Say.Count(plan.Questions.Count, "question")} to decide. Keep what is here with --keep-here, " +
                        $"take what is in the file with --take-from-file, or merge on a terminal to decide one by one.");
            }

            if (choices is not null && !json)
                frame.Out.WriteLine(
                    plan.ChangesNothing ? "Nothing to do: everything in it is here already." : "Merged. To take it back: triallog undo");
        }, begins: true);
        return command;
    }

    /// <summary>A choice for every question; null where one is left undecided.</summary>
    private static Dictionary<Guid, MergeChoice>? Decide(CommandFrame frame, MergePlan plan, MergeChoice? all, bool ask)
    {
        var choices = new Dictionary<Guid, MergeChoice>();
        foreach (MergeQuestion question in plan.Questions)
        {
            if ((all ?? (ask ? Ask(frame, question) : null)) is not { } choice)
                return null;
            choices[question.Id] = choice;
        }

        return choices;
    }

    private static MergeChoice? Ask(CommandFrame frame, MergeQuestion question)
    {
        while (true)
        {
            MergeText.WriteQuestion(frame, question);
            frame.Out.Write(question.Kind == MergeQuestionKind.SameName
                ? "  (s)ame, (k)eep both, or (q)uit without merging: "
                : "  (k)eep here, (t)ake from file, or (q)uit without merging: ");
            switch (frame.ConsoleHost.In.ReadLine()?.Trim().ToLowerInvariant())
            {
                case "k" or "keep" or "m" or "mine":
                    return MergeChoice.KeepHere;
                case "s" or "same" when question.Kind == MergeQuestionKind.SameName:
                    return MergeChoice.Same;
                case "t" or "take" or "theirs":
                    return MergeChoice.TakeFromFile;
                case null or "q" or "quit":
                    return null;
            }
        }
    }
}
