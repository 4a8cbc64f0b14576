using System.CommandLine;
using TrialLog.Application.Files;
using TrialLog.Application.Reporting;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Coach;

/// <summary><c>triallog report --out FILE.html</c>: the coach's report of one paddler.</summary>
internal static class ReportCommand
{
    private const string StandardOutput = "-";

    public static Command Build(CommandFrame frame)
    {
        var to = new Option<string>("--out")
        {
            Description = "The file to write; - for the standard output.", HelpName = "FILE",
            Required = true
        };
        var format = new Option<string?>(
            "--format")
        { Description = "html, md or csv; else by the file's name.", HelpName = "html|md|csv" };
        var notes = new Option<bool>("--notes") { Description = "With the coach's notes." };
        var paddlers = new Option<bool>(
            "--for-paddler")
        { Description = "For the paddler, who is spoken to as “you”; else for the coach." };
        var command = new Command("report", "A page for the coach: the answer, the pictures behind it, and every trial.")
        {
            to, format, notes, paddlers, frame.Paddler, frame.Hull, frame.Paddle, frame.Json,
        };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            string file = parsed.GetRequiredValue(to);
            ReportFormat kind = ReportFormats.Of(parsed.GetValue(format), file);
            Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            ReportContents contents = PrepareReport.Of(workspace, chosen, parsed.GetValue(notes), parsed.GetValue(paddlers));
            string text = kind.Write(contents);
            if (file == StandardOutput)
            {
                frame.ConsoleHost.Raw.Write(text);
                return;
            }

            NewFile.Write(workspace, file, text);
            if (parsed.GetValue(frame.Json))
                JsonOutput.Write(
                    frame.Out,
                    new ReportFacts(Path.GetFullPath(file), kind.Spelled(), chosen.Paddler.Name, chosen.Hull.Name, chosen.Paddle.Name,
                    contents.Analysis.Outings, contents.Analysis.Pieces, contents.Notes.Count));
            else
                frame.Out.WriteLine($"The report of {Quoted.Visible(chosen.Paddler.Name)} in {Quoted.Visible(chosen.Hull.Name)} with " +
                    $"{Quoted.Visible(chosen.Paddle.Name)} is in {Quoted.Brief(file, 200)}.");
        });
        return command;
    }
}
