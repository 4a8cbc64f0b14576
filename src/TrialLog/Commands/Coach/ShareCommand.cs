using System.CommandLine;
using TrialLog.Application.Coaching;
using TrialLog.Application.Wording;
using TrialLog.Commands.Json;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
using TrialLog.Logbook.Shared;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands.Coach;

/// <summary><c>triallog share --out FILE</c>: a paddler's record, or the squad's, to hand over.</summary>
internal static class ShareCommand
{
    public static Command Build(CommandFrame frame)
    {
        var to = new Option<string>("--out") { Description = "The file to write.", HelpName = "FILE", Required = true };
        var squad = new Option<bool>("--squad") { Description = "Every paddler's record." };
        var without = new Option<string[]>("--without")
        {
            Description = $"What to leave out: {ShareRecord.PartNames}.", HelpName = "PART",
            AllowMultipleArgumentsPerToken = true
        };
        var command = new Command("share", "A paddler's record in a file that people can read and merge takes back.") { to, squad, without,
            frame.Paddler, frame.Json };
        command.Validators.Add(result =>
        {
            if (result.GetValue(squad) && result.GetValue(frame.Paddler) is not null)
                result.AddError("Say --squad or --paddler NAME, not both.");
        });
        frame.OnDesk(command, (parsed, workspace) =>
        {
            string file = parsed.GetRequiredValue(to);
            Paddler? paddler = parsed.GetValue(squad) ? null : workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
            SharedRecord record = ShareRecord.To(workspace, paddler, ShareRecord.Without(parsed.GetValue(without) ?? []), file);
            if (parsed.GetValue(frame.Json))
            {
                JsonOutput.Write(
                    frame.Out,
                    new ShareFacts(Path.GetFullPath(file), record.PaddlerNames, record.OutingCount, record.PieceCount,
                    record.LeftOutNames));
                return;
            }

            frame.Out.WriteLine(
                $"The record of {(paddler is null ? $"{record.PaddlerNames.Count} paddlers" : Quoted.Visible(paddler.Name))} is in " +
                $"{Quoted.Brief(file, 200)}: "
                + $"{Say.Count(record.OutingCount, "outing")}, {Say.Count(record.PieceCount, "piece")}"
                + (record.LeftOutNames.Count == 0 ? "." : $"; left out: {string.Join(", ", record.LeftOutNames).Replace('_', ' ')}."));
            frame.Out.WriteLine("To take it in elsewhere: triallog merge FILE");
        });
        return command;
    }
}
