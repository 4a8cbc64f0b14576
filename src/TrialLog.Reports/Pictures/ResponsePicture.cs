using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Reports.Pictures;

/// <summary>Where is the best length, and how sure is that? Speed against length, with its band and the pieces.</summary>
internal static class ResponsePicture
{
    /// <summary>A piece that counts for less than this share of a piece is marked as one that counts for little.</summary>
    public const double LittleWeight = 0.5;

    /// <param name="analysis">What the log says.</param>
    /// <param name="unit">The paddler's unit.</param>
    public static Picture Of(Analysis analysis, LengthUnit unit)
    {
        (double left, double right) = Window(analysis, unit);
        List<CurvePoint> points = [
            .. analysis.Curve.Points.Where(point => Say.OnAxis(point.Length, unit) >= left && Say.OnAxis(point.Length, unit) <= right)];
        List<AdjustedPiece> pieces = [.. analysis.Curve.Pieces];
        List<double> heights =
        [
            0, -analysis.WorthwhilePercent,
                .. points.SelectMany(point => new[] { point.Percent, Math.Max(point.Low, -6), Math.Min(point.High, 6) }),
            .. pieces.Where(piece => piece.Weight >= LittleWeight).Select(piece => piece.Percent),
        ];
        double room = Math.Max(0.1, 0.06 * (heights.Max() - heights.Min()));
        (double bottom, double top) = (heights.Min() - room, heights.Max() + 2 * room);

        PlotModel plot = Drawing.Plot();
        plot.Axes.Add(Drawing.LengthAxis(AxisPosition.Bottom, "Overall length", left, right, unit));
        plot.Axes.Add(Drawing.Axis(AxisPosition.Left, "Speed against the best length, %", bottom, top));
        plot.Series.Add(Band(points, unit));
        plot.Series.Add(Mean(points, unit));
        plot.Annotations.Add(
            Drawing.Across(LineAnnotationType.Horizontal, -analysis.WorthwhilePercent, "", LineStyle.DashDot, Drawing.Quiet));
        if (analysis.Current != analysis.Best.Length)
            plot.Annotations.Add(
                Drawing.Across(LineAnnotationType.Vertical, Say.OnAxis(analysis.Current, unit), " now", LineStyle.Dash, Drawing.Quiet));
        plot.Annotations.Add(
            Drawing.Across(LineAnnotationType.Vertical, Say.OnAxis(analysis.Best.Length, unit), " best", LineStyle.Solid, Drawing.Mark));

        List<AdjustedPiece> beyond = [.. pieces.Where(piece => piece.Percent < bottom || piece.Percent > top)];
        List<AdjustedPiece> within = [.. pieces.Except(beyond)];
        plot.Series.Add(Marks(within.Where(piece => piece.Weight >= LittleWeight), MarkerType.Circle, Drawing.Ink, OxyColors.White, unit));
        plot.Series.Add(
            Marks(within.Where(piece => piece.Weight < LittleWeight), MarkerType.Cross, Drawing.Mark, OxyColors.Undefined, unit));
        plot.Series.Add(Marks(beyond.Select(piece => piece with { Percent = piece.Percent < bottom ? bottom + room / 2 : top - room / 2 }),
            MarkerType.Triangle, Drawing.Mark, OxyColors.Undefined, unit));

        string title = "Response curve";
        string description = Description(analysis, unit, beyond.Count);
        return new Picture(title, description, Key(pieces, beyond), Drawing.Of(plot, "response", title, description));
    }

    // What was paddled, where the paddler is and what is likely, with an inch around, as far as the curve goes.
    private static (double Left, double Right) Window(Analysis analysis, LengthUnit unit)
    {
        List<Length> shown = [analysis.Current, analysis.Best.Length, analysis.Best.LikelyLow, analysis.Best.LikelyHigh,
            .. analysis.Curve.Pieces.Select(piece => piece.Length)];
        double inch = unit == LengthUnit.Centimetres ? 2.54 : 1;
        double left = Say.OnAxis(shown.Min(), unit) - inch, right = Say.OnAxis(shown.Max(), unit) + inch;
        if (analysis.Curve.Points is { Count: > 1 } points)
        {
            left = Math.Max(left, Math.Min(Say.OnAxis(points[0].Length, unit), Say.OnAxis(shown.Min(), unit) - inch / 4));
            right = Math.Min(right, Math.Max(Say.OnAxis(points[^1].Length, unit), Say.OnAxis(shown.Max(), unit) + inch / 4));
        }

        return (left, right);
    }

    private static AreaSeries Band(IEnumerable<CurvePoint> points, LengthUnit unit)
    {
        var band = new AreaSeries { Color = Drawing.Line, Fill = Drawing.Band, LineStyle = LineStyle.Dash, StrokeThickness = 1 };
        foreach (CurvePoint point in points)
        {
            band.Points.Add(new DataPoint(Say.OnAxis(point.Length, unit), point.High));
            band.Points2.Add(new DataPoint(Say.OnAxis(point.Length, unit), point.Low));
        }

        return band;
    }

    private static LineSeries Mean(IEnumerable<CurvePoint> points, LengthUnit unit)
    {
        var mean = new LineSeries { Color = Drawing.Line, StrokeThickness = 2.5 };
        mean.Points.AddRange(points.Select(point => new DataPoint(Say.OnAxis(point.Length, unit), point.Percent)));
        return mean;
    }

    private static ScatterSeries Marks(IEnumerable<AdjustedPiece> pieces, MarkerType shape, OxyColor stroke, OxyColor fill, LengthUnit unit)
    {
        var marks = new ScatterSeries
        {
            MarkerType = shape, MarkerSize = 4, MarkerStroke = stroke, MarkerStrokeThickness = 1.6,
            MarkerFill = fill
        };
        marks.Points.AddRange(pieces.Select(piece => new ScatterPoint(Say.OnAxis(piece.Length, unit), piece.Percent)));
        return marks;
    }

    private static string Key(List<AdjustedPiece> pieces, List<AdjustedPiece> beyond)
    {
        string key = "Line: mean speed. Shaded between dashes: likely there. Dashes and dots: a worthwhile change below the best.";
        if (pieces.Any(piece => piece.Weight >= LittleWeight))
            key += " Circle: a piece, adjusted for everything but length.";
        if (pieces.Except(beyond).Any(piece => piece.Weight < LittleWeight))
            key += " Cross: a piece so far off that it counts for less than half.";
        if (beyond.Count > 0)
            key += " Triangle at the edge: a piece beyond the picture.";
        return key;
    }

    private static string Description(Analysis analysis, LengthUnit unit, int beyond)
    {
        string text = $"Speed against overall length in {PlainText.Line(analysis.Hull.Name)} with " +
            $"{PlainText.Line(analysis.Paddle.Name)}, all else equal. "
            + $"Best length {Say.Length(analysis.Best.Length, unit)}, likely range "
            + $"{Say.Range(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit)}.";
        foreach ((double inches, string side) in new[] { (-1.0, "shorter"), (1.0, "longer") })
        {
            if (At(analysis, inches) is { } point)
                text += $" An inch {side} is about {Say.Percent(Math.Abs(point.Percent))} {(point.Percent <= 0 ? "slower" : "faster")} " +
                    $"(likely between {Apart(point.Low)} and {Apart(point.High)}).";
        }

        text += $" {Say.Count(analysis.Curve.Pieces.Count, "piece")} shown.";
        return beyond == 0 ? text : text + $" {beyond} of them beyond the picture.";
    }

    private static string Apart(double percent) => percent == 0 ? "as fast"
        : $"{Say.Percent(Math.Abs(percent))} {(percent < 0 ? "slower" : "faster")}";

    private static CurvePoint? At(Analysis analysis, double inches) => analysis.Curve.Points
        .Where(point => Math.Abs(point.Length.InchesMoreThan(analysis.Best.Length) - inches) < 0.13)
        .MinBy(point => Math.Abs(point.Length.InchesMoreThan(analysis.Best.Length) - inches));
}
