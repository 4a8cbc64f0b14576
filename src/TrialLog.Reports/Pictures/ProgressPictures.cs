using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Pictures;

/// <summary>Is the search converging? The best length with its range, and the gain left, after each outing.</summary>
internal static class ProgressPictures
{
    public static Picture BestLength(IReadOnlyList<ProgressPoint> progress, LengthUnit unit)
    {
        PlotModel plot = Drawing.Plot();
        // While sore, the best length proposed can lie below the likely range for speed.
        double low = progress.Min(point => Math.Min(Say.OnAxis(point.LikelyLow, unit), Say.OnAxis(point.Best, unit)));
        double high = progress.Max(point => Math.Max(Say.OnAxis(point.LikelyHigh, unit), Say.OnAxis(point.Best, unit)));
        double room = 0.1 * (high - low) + 0.05;
        plot.Axes.Add(OutingAxis(progress));
        plot.Axes.Add(Drawing.LengthAxis(AxisPosition.Left, "Best length", low - room, high + room, unit));

        var ranges = new LineSeries { Color = Drawing.Line, StrokeThickness = Math.Clamp(100.0 / progress.Count, 1.5, 5) };
        var best = new LineSeries { Color = Drawing.Ink, StrokeThickness = 1.5, LineStyle = LineStyle.Dash };
        foreach (ProgressPoint point in progress)
        {
            ranges.Points.Add(new DataPoint(point.Outings, Say.OnAxis(point.LikelyLow, unit)));
            ranges.Points.Add(new DataPoint(point.Outings, Say.OnAxis(point.LikelyHigh, unit)));
            ranges.Points.Add(DataPoint.Undefined);
            best.Points.Add(new DataPoint(point.Outings, Say.OnAxis(point.Best, unit)));
        }

        plot.Series.Add(ranges);
        plot.Series.Add(best);
        AddMarks(plot, progress, point => Say.OnAxis(point.Best, unit));
        string title = "Best length by outing";
        string description = From(progress, point => $"best length {Say.Length(point.Best, unit)}, likely range {Say.Range(point.LikelyLow, point.LikelyHigh, unit)}");
        return new Picture(title, description,
            "Diamond: best length known then; filled once returns had diminished. Bar: its likely range, the central 90 %."
                + (progress.Any(point => point.Best < point.LikelyLow || point.Best > point.LikelyHigh) ? " A diamond off its bar: soreness or the paddle left nothing better open." : ""),
            Drawing.Of(plot, "best-length", title, description));
    }

    public static Picture GainLeft(IReadOnlyList<ProgressPoint> progress, double worthwhilePercent)
    {
        PlotModel plot = Drawing.Plot();
        double top = Math.Max(worthwhilePercent, progress.Max(point => point.GainLeftPercent));
        plot.Axes.Add(OutingAxis(progress));
        plot.Axes.Add(Drawing.Axis(AxisPosition.Left, "Gain left, % of speed", -0.05 * top, 1.12 * top));
        plot.Annotations.Add(Drawing.Across(LineAnnotationType.Horizontal, worthwhilePercent, "", LineStyle.Dash, Drawing.Mark));
        var line = new LineSeries { Color = Drawing.Line, StrokeThickness = 2 };
        line.Points.AddRange(progress.Select(point => new DataPoint(point.Outings, point.GainLeftPercent)));
        plot.Series.Add(line);
        AddMarks(plot, progress, point => point.GainLeftPercent);
        string title = "Gain left by outing";
        string description = $"The worthwhile change is {Say.Percent(worthwhilePercent)}. {From(progress, point => $"gain left {Say.Percent(point.GainLeftPercent)}, probability that a worthwhile gain is left {Say.Chance(point.ProbabilityWorthwhileLeft)}")}";
        return new Picture(title, description,
            "Diamond: expected loss of speed at the best length known then; filled once returns had diminished. Dashed: the worthwhile change.",
            Drawing.Of(plot, "gain-left", title, description));
    }

    private static string From(IReadOnlyList<ProgressPoint> progress, Func<ProgressPoint, string> state)
    {
        string first = progress[0].Outings == 0 ? "Before any outing" : $"After {Say.Count(progress[0].Outings, "outing")}";
        return progress.Count == 1
            ? $"{first}: {state(progress[0])}."
            : $"{first}: {state(progress[0])}. After {Say.Count(progress[^1].Outings, "outing")}: {state(progress[^1])}.";
    }

    private static LinearAxis OutingAxis(IReadOnlyList<ProgressPoint> progress)
    {
        LinearAxis axis = Drawing.Axis(AxisPosition.Bottom, "Outings so far", progress[0].Outings - 0.5, progress[^1].Outings + 0.5);
        axis.MinimumMajorStep = 1;
        return axis;
    }

    // Open diamonds while testing pays, filled ones after.
    private static void AddMarks(PlotModel plot, IReadOnlyList<ProgressPoint> progress, Func<ProgressPoint, double> height)
    {
        foreach (bool diminished in new[] { false, true })
        {
            var marks = new ScatterSeries
            {
                MarkerType = MarkerType.Diamond,
                MarkerSize = progress.Count > 30 ? 2.5 : 5,
                MarkerStroke = Drawing.Ink,
                MarkerStrokeThickness = 1.5,
                MarkerFill = diminished ? Drawing.Ink : OxyColors.White,
            };
            marks.Points.AddRange(progress.Where(point => point.DiminishingReturns == diminished)
                .Select(point => new ScatterPoint(point.Outings, height(point))));
            plot.Series.Add(marks);
        }
    }
}
