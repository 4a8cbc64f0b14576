using System.CommandLine;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Logbook;
using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands.Coach;

/// <summary>
/// <c>triallog merge FILE</c>: takes a shared record in. What both sides edited differently is shown with both versions
/// and decided by the user, or by --mine or --theirs; never silently.
/// </summary>
internal static class MergeCommand
{
    public static Command Build(CommandFrame frame)
    {
        var file = new Argument<string>("FILE") { Description = "A record written by triallog share." };
        var mine = new Option<bool>("--mine") { Description = "Where both sides edited the same, keep what is here." };
        var theirs = new Option<bool>("--theirs") { Description = "Where both sides edited the same, take what is in the file." };
        var dry = new Option<bool>("--dry-run") { Description = "Only say what would happen." };
        var command = new Command("merge", "Take a shared record in: no duplicates, nothing overwritten unasked.") { file, mine, theirs, dry, frame.Json };
        command.Validators.Add(result =>
        {
            if (result.GetValue(mine) && result.GetValue(theirs))
                result.AddError("Say --mine or --theirs, not both.");
        });
        frame.OnDesk(command, (parsed, workspace) =>
        {
            bool json = parsed.GetValue(frame.Json), dryRun = parsed.GetValue(dry);
            MergePlan plan = Merge.Plan(workspace.Logbook, Sharing.Load(parsed.GetRequiredValue(file)));
            MergeChoice? all = parsed.GetValue(mine) ? MergeChoice.Mine : parsed.GetValue(theirs) ? MergeChoice.Theirs : null;
            if (!json)
                MergeText.WritePlan(frame, plan, dryRun);
            Dictionary<Guid, MergeChoice>? choices = dryRun ? null : Decide(frame, plan, all, ask: !json && frame.ConsoleHost.Interactive);
            if (choices is not null)
                plan.Apply(workspace.Logbook, conflict => choices[conflict.Id]);
            if (json)
                JsonOutput.Write(frame.Out, MergeFacts.Of(plan, choices));
            if (choices is null && !dryRun)
            {
                throw new RequestException(frame.ConsoleHost.Interactive && !json
                    ? "Nothing was merged."
                    : $"Nothing was merged: {Say.Count(plan.Conflicts.Count, "conflict")} to decide. Keep what is here with --mine, take what is in the file with --theirs, or merge on a terminal to decide one by one.");
            }

            if (choices is not null && !json)
                frame.Out.WriteLine(plan.ChangesNothing ? "Nothing to do: everything in it is here already." : "Merged. To take it back: triallog undo");
        });
        return command;
    }

    /// <summary>A choice for every conflict; null where one is left undecided.</summary>
    private static Dictionary<Guid, MergeChoice>? Decide(CommandFrame frame, MergePlan plan, MergeChoice? all, bool ask)
    {
        var choices = new Dictionary<Guid, MergeChoice>();
        foreach (MergeConflict conflict in plan.Conflicts)
        {
            if ((all ?? (ask ? Ask(frame, conflict) : null)) is not { } choice)
                return null;
            choices[conflict.Id] = choice;
        }

        return choices;
    }

    private static MergeChoice? Ask(CommandFrame frame, MergeConflict conflict)
    {
        while (true)
        {
            MergeText.WriteConflict(frame, conflict);
            frame.Out.Write("  Keep (m)ine, take (t)heirs, or (q)uit without merging: ");
            switch (frame.ConsoleHost.In.ReadLine()?.Trim().ToLowerInvariant())
            {
                case "m" or "mine":
                    return MergeChoice.Mine;
                case "t" or "theirs":
                    return MergeChoice.Theirs;
                case null or "q" or "quit":
                    return null;
            }
        }
    }
}
