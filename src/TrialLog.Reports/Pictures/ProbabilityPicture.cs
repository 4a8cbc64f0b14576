using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Series;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Pictures;

/// <summary>How sure is each setting to be the best one? A bar a setting.</summary>
internal static class ProbabilityPicture
{
    /// <param name="analysis">What the log says.</param>
    /// <param name="unit">The paddler's unit.</param>
    public static Picture Of(Analysis analysis, LengthUnit unit)
    {
        List<StepProbability> steps = [.. analysis.Best.Probabilities];
        double half = 0.38 * Gap(steps, unit);
        PlotModel plot = Drawing.Plot();
        double most = Math.Max(0.05, steps.Select(step => step.Probability).DefaultIfEmpty(0).Max());
        double left = steps.Count == 0 ? 0 : Say.OnAxis(steps[0].Length, unit) - 2 * half;
        double right = steps.Count == 0 ? 1 : Say.OnAxis(steps[^1].Length, unit) + 2 * half;
        plot.Axes.Add(Drawing.LengthAxis(AxisPosition.Bottom, "Overall length", left, right, unit));
        plot.Axes.Add(Drawing.Axis(AxisPosition.Left, "Probability of being the best, %", 0, 108 * most));

        foreach (bool best in new[] { false, true })
        {
            var bars = new RectangleBarSeries
            {
                FillColor = best ? Drawing.Line : Drawing.Band,
                StrokeColor = Drawing.Line,
                StrokeThickness = 1.2,
            };
            foreach (StepProbability step in steps.Where(step => step.Length == analysis.Best.Length == best))
                bars.Items.Add(
                    new RectangleBarItem(Say.OnAxis(step.Length, unit) - half, 0, Say.OnAxis(step.Length, unit) + half,
                    100 * step.Probability));
            plot.Series.Add(bars);
        }

        string title = "Probability of each setting";
        string description = "The probability that each setting is the nearest to the true best length. Most likely first: "
            + string.Join(", ", steps.OrderByDescending(step => step.Probability).ThenBy(step => step.Length).Take(5)
                .Select(step => $"{Say.Length(step.Length, unit)} {Say.Chance(step.Probability)}"))
            + $". Within a quarter inch of {Say.Length(analysis.Best.Length, unit)}: {Say.Chance(analysis.Best.WithinQuarterInch)}.";
        string key = steps.All(step => step.Length != analysis.Best.Length)
            ? $"{Say.Length(analysis.Best.Length, unit)}, the length suggested, is too unlikely to be the best for a bar of its own."
            : "Dark bar: the best length, which loses the least on average and need not be the tallest.";
        return new Picture(title, description, key,
            Drawing.Of(plot, "probability", title, description));
    }

    private static double Gap(List<StepProbability> steps, LengthUnit unit) => steps
        .Zip(steps.Skip(1), (a, b) => Say.OnAxis(b.Length, unit) - Say.OnAxis(a.Length, unit))
        .Where(gap => gap > 0).DefaultIfEmpty(0.25).Min();
}
