using System.CommandLine;
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
using TrialLog.Tuning.Classical;
using TrialLog.Tuning.Model;

namespace TrialLog.Commands;

/// <summary><c>triallog curve</c>: speed against length.</summary>
internal static class CurveCommand
{
    private const int MostColumns = 100, PlotRows = 16;

    public static Command Build(CommandFrame frame)
    {
        var classical = new Option<bool>("--classical") { Description = "Beside it a mixed model by REML, without a prior." };
        var command = new Command("curve", "The response curve: speed against length, and how sure it is.")
        {
            frame.Paddler, frame.Hull, frame.Paddle, classical, frame.Json,
        };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            AnalysisInput question = workspace.Question(chosen);
            Analysis analysis = Tuner.Analyse(question);
            ClassicalFit? fit = parsed.GetValue(classical) ? ClassicalAnalysis.Fit(question) : null;
            if (parsed.GetValue(frame.Json))
                JsonOutput.Write(frame.Out, CurveFacts.Of(analysis, fit));
            else
                Write(frame.Out, analysis, fit, frame.ConsoleHost.Width, StrokesOf.Environment(frame.ConsoleHost.Environment));
        });
        return command;
    }

    // Within an inch of the best or of where the paddler is; the plot shows the rest, and --json tells it.
    private static bool Told(Analysis analysis, Length length) =>
        Math.Abs(length.InchesMoreThan(analysis.Best.Length)) < 1.01 || length == analysis.Current;

    private static void Write(TextWriter to, Analysis analysis, ClassicalFit? fit, int width, Strokes strokes)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        string title =
            $"{Quoted.Visible(analysis.Paddler.Name)} · {Quoted.Visible(analysis.Hull.Name)} · {Quoted.Visible(analysis.Paddle.Name)}";
        if (RestText.Instead(to, title, RestFirst.Page(analysis), width))
            return;
        to.WriteLine(title);
        to.WriteLine();
        Wrapped.Write(to, Verdict.Of(analysis), width);
        to.WriteLine();
        foreach (string line in CurvePlot.Draw(analysis, Math.Min(width - 1, MostColumns), PlotRows, strokes).Lines())
            to.WriteLine(line.TrimEnd());
        to.WriteLine();
        to.WriteLine("  length      faster or slower   likely between     chance of");
        to.WriteLine("              than best, %       (9 times in 10)    being best");
        foreach (CurvePoint point in analysis.Curve.Points.Where(point => Told(analysis, point.Length)))
        {
            double chance = analysis.Best.Probabilities.FirstOrDefault(step => step.Length == point.Length)?.Probability ?? 0;
            string marks = (point.Length == analysis.Best.Length ? "  best" : "")
                + (point.Length == analysis.Current ? analysis.CurrentIsUsual ? "  usual" : "  start" : "");
            to.WriteLine(
                $"  {Say.Length(point.Length, unit),-10}  {Say.Difference(point.Percent),9}          " +
                $"{$"{Say.Difference(point.Low)} and {Say.Difference(point.High)}",-17}  " +
                $"{(chance < 0.005 ? "" : Say.Chance(chance)),6}{marks}".TrimEnd());
        }

        if (fit is null)
            return;
        to.WriteLine();
        to.WriteLine("The classical view (mixed model by REML, no prior)");
        Wrapped.Write(to, ClassicalWords.Of(fit, analysis.Hull, unit), width, "  ", 2);
        foreach (Coefficient one in fit.Coefficients)
            to.WriteLine($"  {one.Name,-28} {one.Estimate,10:0.0000}   standard error {one.StandardError:0.0000}");
    }
}
