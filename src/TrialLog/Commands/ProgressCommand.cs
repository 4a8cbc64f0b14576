using System.CommandLine;
using TrialLog.Commands.Json;
using TrialLog.Domain;
using TrialLog.Plots;
using TrialLog.Tuning;
using TrialLog.UseCases;

namespace TrialLog.Commands;

/// <summary><c>triallog progress</c>: the best length and its range after each outing.</summary>
internal static class ProgressCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("progress", "How the best length and its range moved, outing by outing.") { frame.Paddler, frame.Hull, frame.Paddle, frame.Json };
        frame.OnDesk(command, (parsed, desk) =>
        {
            Chosen chosen = desk.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            IReadOnlyList<ProgressPoint> points = Tuner.Progress(desk.Question(chosen));
            if (parsed.GetValue(frame.Json))
            {
                Facts.Write<IReadOnlyList<ProgressFacts>>(frame.Out, [.. points.Select(ProgressFacts.Of)]);
                return;
            }

            LengthUnit unit = chosen.Paddler.Unit;
            frame.Out.WriteLine($"{Quoted.Visible(chosen.Paddler.Name)} · {Quoted.Visible(chosen.Hull.Name)} · {Quoted.Visible(chosen.Paddle.Name)}");
            frame.Out.WriteLine();
            ProgressText.Write(frame.Out, points, unit);
            frame.Out.WriteLine();
            double worthwhile = chosen.Paddler.WorthwhilePercent ?? TuningSettings.Default.WorthwhilePercent;
            foreach (string line in ProgressPlot.Draw(points, unit, worthwhile, Math.Min(frame.Surroundings.Width - 1, 100), 16, StrokesOf.Environment(frame.Surroundings.Environment)).Lines())
                frame.Out.WriteLine(line.TrimEnd());
        });
        return command;
    }
}
