using System.CommandLine;
using TrialLog.Commands.Json;
using TrialLog.Domain;
using TrialLog.Tuning;
using TrialLog.UseCases;

namespace TrialLog.Commands;

/// <summary><c>triallog curve</c>: speed against length.</summary>
internal static class CurveCommand
{
    public static Command Build(CommandFrame frame)
    {
        var classical = new Option<bool>("--classical") { Description = "Beside it a mixed model by REML, without a prior." };
        var command = new Command("curve", "The response curve: speed against length, with its uncertainty.")
        {
            frame.Paddler, frame.Hull, frame.Paddle, classical, frame.Json,
        };
        frame.OnDesk(command, (parsed, desk) =>
        {
            Chosen chosen = desk.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            TuningQuestion question = desk.Question(chosen);
            Analysis analysis = Tuner.Analyse(question);
            ClassicalFit? fit = parsed.GetValue(classical) ? Classical.Fit(question) : null;
            if (parsed.GetValue(frame.Json))
                Facts.Write(frame.Out, CurveFacts.Of(analysis, fit));
            else
                Write(frame.Out, analysis, fit, frame.Surroundings.Width);
        });
        return command;
    }

    private static void Write(TextWriter to, Analysis analysis, ClassicalFit? fit, int width)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        to.WriteLine($"{Quoted.Visible(analysis.Paddler.Name)} · {Quoted.Visible(analysis.Hull.Name)} · {Quoted.Visible(analysis.Paddle.Name)}");
        to.WriteLine();
        to.WriteLine("  length        speed, % of best   90 % band            chance of being best");
        foreach (CurvePoint point in analysis.Curve.Points)
        {
            double chance = analysis.Best.Probabilities.FirstOrDefault(step => step.Length == point.Length)?.Probability ?? 0;
            string marks = (point.Length == analysis.Best.Length ? " best" : "") + (point.Length == analysis.Current ? " now" : "");
            to.WriteLine($"  {point.Length.ToText(unit),-12} {point.Percent,9:+0.00;-0.00;0.00}        {point.Low,6:+0.00;-0.00;0.00} to {point.High,5:+0.00;-0.00;0.00}   {(chance < 0.005 ? "" : $"{chance * 100,3:0} %"),5} {new string('#', (int)Math.Round(chance * 20))}{marks}");
        }

        to.WriteLine();
        Wrapped.Write(to, analysis.Verdict, width);
        if (fit is null)
            return;
        to.WriteLine();
        to.WriteLine("The classical view (mixed model by REML, no prior)");
        Wrapped.Write(to, fit.Says, width, "  ", 2);
        foreach (Coefficient one in fit.Coefficients)
            to.WriteLine($"  {one.Name,-28} {one.Estimate,10:0.0000} ± {one.StandardError:0.0000}");
    }
}
