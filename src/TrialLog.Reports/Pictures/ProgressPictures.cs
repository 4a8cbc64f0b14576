using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
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
        string description = From(progress,
            point => $"best length {Say.Length(point.Best, unit)}, likely range {Say.Range(point.LikelyLow, point.LikelyHigh, unit)}");
        return new Picture(title, description,
            "Diamond: best length known then; filled once it was time to stop. Bar: its likely range."
                + (progress.Any(point => point.Best < point.LikelyLow || point.Best > point.LikelyHigh)
                    ? " A diamond off its bar: soreness or the paddle left nothing better open." : ""),
            Drawing.Of(plot, "best-length", title, description));
    }

    /// <summary>The first half of what the stop rule looks at: the chance of a worthwhile gain against the chance to stop below.</summary>
    public static Picture Chance(IReadOnlyList<ProgressPoint> progress, double worthwhilePercent)
    {
        double stop = TuningSettings.Default.StopBelow;
        string title = "Chance of a worthwhile gain by outing";
        string description = $"The chance that another length is faster by {Say.ChosenPercent(worthwhilePercent)} or more; below " +
            $"{Say.Chance(stop)} it is low enough to stop. "
            + From(progress, point => $"a chance of {Say.Chance(point.ProbabilityWorthwhileLeft)}");
        return new Picture(title, description,
            $"Diamond: the chance then; filled once it was time to stop. Dashed: {Say.Chance(stop)}, low enough to stop.",
            Drawing.Of(Falling(progress, "Chance, % (log scale)", point => 100 * point.ProbabilityWorthwhileLeft, 100 * stop, 0.1, 100),
                "chance", title, description));
    }

    /// <summary>The second half: the gain left against what an outing must win to be worth it.</summary>
    public static Picture GainLeft(IReadOnlyList<ProgressPoint> progress, double pricePercent)
    {
        string title = "Gain left by outing";
        string description = $"What the best length known then costs on average against the true best length. An outing is worth it " +
            $"where it should win {Say.ChosenPercent(pricePercent)} of it. "
            + From(progress, point => $"gain left {Say.Percent(point.GainLeftPercent)}");
        return new Picture(title, description, $"Diamond: gain left then, on average; filled once it was time to stop. Dashed: " +
            $"{Say.ChosenPercent(pricePercent)}, the price of an outing.",
            Drawing.Of(Falling(progress, "Gain left, % (log scale)", point => point.GainLeftPercent, pricePercent, 0.001, 10), "gain-left",
                title, description));
    }

    // Both fall by the same share from outing to outing rather than by the same amount, and their lines lie near nought: hence a
    // logarithmic scale.
    private static PlotModel Falling(
        IReadOnlyList<ProgressPoint> progress, string says, Func<ProgressPoint, double> height, double line, double least, double most)
    {
        PlotModel plot = Drawing.Plot();
        double[] heights = [.. progress.Select(point => Math.Clamp(height(point), least, most))];
        plot.Axes.Add(OutingAxis(progress));
        plot.Axes.Add(Drawing.TenthsAxis(says, Math.Min(line, heights.Min()) / 1.6, Math.Max(line, heights.Max()) * 1.6));
        plot.Annotations.Add(Drawing.Across(LineAnnotationType.Horizontal, line, "", LineStyle.Dash, Drawing.Mark));
        var drawn = new LineSeries { Color = Drawing.Line, StrokeThickness = 2 };
        drawn.Points.AddRange(progress.Select((point, at) => new DataPoint(point.Outings, heights[at])));
        plot.Series.Add(drawn);
        AddMarks(plot, progress, point => Math.Clamp(height(point), least, most));
        return plot;
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
