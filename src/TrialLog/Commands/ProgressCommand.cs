using System.CommandLine;
using TrialLog.Application.Deciding;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands;

/// <summary><c>triallog progress</c>: the best length and its range after each outing.</summary>
internal static class ProgressCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("progress", "How the best length and its range moved, outing by outing.") { frame.Paddler, frame.Hull,
            frame.Paddle, frame.Json };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            bool json = parsed.GetValue(frame.Json);
            string title =
                $"{Quoted.Visible(chosen.Paddler.Name)} · {Quoted.Visible(chosen.Hull.Name)} · {Quoted.Visible(chosen.Paddle.Name)}";
            if (!json && ClearSoreness.Standing(workspace, chosen.Paddler) is not null)
            {
                RestText.Instead(frame.Out, title, RestFirst.Page(Tuner.Analyse(workspace.Question(chosen))), frame.ConsoleHost.Width);
                return;
            }

            IReadOnlyList<ProgressPoint> points = Tuner.Progress(workspace.Question(chosen));
            if (json)
            {
                JsonOutput.Write<IReadOnlyList<ProgressFacts>>(frame.Out, [.. points.Select(ProgressFacts.Of)]);
                return;
            }

            LengthUnit unit = chosen.Paddler.Unit;
            frame.Out.WriteLine(title);
            frame.Out.WriteLine();
            double worthwhile = chosen.Paddler.WorthwhilePercent ?? TuningSettings.Default.WorthwhilePercent;
            ProgressText.Write(frame.Out, points, worthwhile, unit, frame.ConsoleHost.Width);
            frame.Out.WriteLine();
            foreach (
                string line in ProgressPlot.Draw(points, unit, Math.Min(frame.ConsoleHost.Width - 1, 100), 16,
                StrokesOf.Environment(frame.ConsoleHost.Environment)).Lines())
                frame.Out.WriteLine(line.TrimEnd());
        });
        return command;
    }
}
