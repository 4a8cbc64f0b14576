using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Pictures;

/// <summary>Where is the best length, and how sure is that? Speed against length, with its band and the pieces.</summary>
internal static class ResponsePicture
{
    /// <summary>A piece that counts for less than this share of a piece is marked as one that counts for little.</summary>
    public const double LittleWeight = 0.5;

    /// <param name="analysis">What the log says.</param>
    /// <param name="said">The paddler's unit.</param>
    /// <param name="sore">Whether soreness of late limits the lengths, so that the one proposed need not be the best for speed.</param>
    public static Picture Of(Analysis analysis, Said said, bool sore)
    {
        (double left, double right) = Window(analysis, said);
        List<CurvePoint> points = [.. analysis.Curve.Points.Where(point => said.OnAxis(point.Length) >= left && said.OnAxis(point.Length) <= right)];
        List<AdjustedPiece> pieces = [.. analysis.Curve.Pieces];
        List<double> heights =
        [
            0, -analysis.WorthwhilePercent, .. points.SelectMany(point => new[] { point.Percent, Math.Max(point.Low, -6), Math.Min(point.High, 6) }),
            .. pieces.Where(piece => piece.Weight >= LittleWeight).Select(piece => piece.Percent),
        ];
        double room = Math.Max(0.1, 0.06 * (heights.Max() - heights.Min()));
        (double bottom, double top) = (heights.Min() - room, heights.Max() + 2 * room);

        PlotModel plot = Drawing.Plot();
        plot.Axes.Add(Drawing.LengthAxis(AxisPosition.Bottom, "Overall length", left, right, said));
        plot.Axes.Add(Drawing.Axis(AxisPosition.Left, sore ? $"Speed against {said.Setting(analysis.Best.Length)}, %" : "Speed against the best length, %", bottom, top));
        plot.Series.Add(Band(points, said));
        plot.Series.Add(Mean(points, said));
        plot.Annotations.Add(Drawing.Across(LineAnnotationType.Horizontal, -analysis.WorthwhilePercent, "", LineStyle.DashDot, Drawing.Quiet));
        if (analysis.Current != analysis.Best.Length)
            plot.Annotations.Add(Drawing.Across(LineAnnotationType.Vertical, said.OnAxis(analysis.Current), " now", LineStyle.Dash, Drawing.Quiet));
        plot.Annotations.Add(Drawing.Across(LineAnnotationType.Vertical, said.OnAxis(analysis.Best.Length), sore ? " for now" : " best", LineStyle.Solid, Drawing.Mark));

        List<AdjustedPiece> beyond = [.. pieces.Where(piece => piece.Percent < bottom || piece.Percent > top)];
        List<AdjustedPiece> within = [.. pieces.Except(beyond)];
        plot.Series.Add(Marks(within.Where(piece => piece.Weight >= LittleWeight), MarkerType.Circle, Drawing.Ink, OxyColors.White, said));
        plot.Series.Add(Marks(within.Where(piece => piece.Weight < LittleWeight), MarkerType.Cross, Drawing.Mark, OxyColors.Undefined, said));
        plot.Series.Add(Marks(beyond.Select(piece => piece with { Percent = piece.Percent < bottom ? bottom + room / 2 : top - room / 2 }),
            MarkerType.Triangle, Drawing.Mark, OxyColors.Undefined, said));

        string title = "Response curve";
        string description = Description(analysis, said, beyond.Count);
        return new Picture(title, description, Key(pieces, beyond, sore), Drawing.Of(plot, "response", title, description));
    }

    // What was paddled, where the paddler is and what is likely, with an inch around, as far as the curve goes.
    private static (double Left, double Right) Window(Analysis analysis, Said said)
    {
        List<Length> shown = [analysis.Current, analysis.Best.Length, analysis.Best.LikelyLow, analysis.Best.LikelyHigh,
            .. analysis.Curve.Pieces.Select(piece => piece.Length)];
        double inch = said.Unit == LengthUnit.Centimetres ? 2.54 : 1;
        double left = said.OnAxis(shown.Min()) - inch, right = said.OnAxis(shown.Max()) + inch;
        if (analysis.Curve.Points is { Count: > 1 } points)
        {
            left = Math.Max(left, Math.Min(said.OnAxis(points[0].Length), said.OnAxis(shown.Min()) - inch / 4));
            right = Math.Min(right, Math.Max(said.OnAxis(points[^1].Length), said.OnAxis(shown.Max()) + inch / 4));
        }

        return (left, right);
    }

    private static AreaSeries Band(IEnumerable<CurvePoint> points, Said said)
    {
        var band = new AreaSeries { Color = Drawing.Line, Fill = Drawing.Band, LineStyle = LineStyle.Dash, StrokeThickness = 1 };
        foreach (CurvePoint point in points)
        {
            band.Points.Add(new DataPoint(said.OnAxis(point.Length), point.High));
            band.Points2.Add(new DataPoint(said.OnAxis(point.Length), point.Low));
        }

        return band;
    }

    private static LineSeries Mean(IEnumerable<CurvePoint> points, Said said)
    {
        var mean = new LineSeries { Color = Drawing.Line, StrokeThickness = 2.5 };
        mean.Points.AddRange(points.Select(point => new DataPoint(said.OnAxis(point.Length), point.Percent)));
        return mean;
    }

    private static ScatterSeries Marks(IEnumerable<AdjustedPiece> pieces, MarkerType shape, OxyColor stroke, OxyColor fill, Said said)
    {
        var marks = new ScatterSeries { MarkerType = shape, MarkerSize = 4, MarkerStroke = stroke, MarkerStrokeThickness = 1.6, MarkerFill = fill };
        marks.Points.AddRange(pieces.Select(piece => new ScatterPoint(said.OnAxis(piece.Length), piece.Percent)));
        return marks;
    }

    private static string Key(List<AdjustedPiece> pieces, List<AdjustedPiece> beyond, bool sore)
    {
        string key = $"Line: mean speed. Shaded between dashes: its central 90 %. Dashes and dots: a worthwhile change below the {(sore ? "length for now, which soreness limits" : "best")}.";
        if (pieces.Any(piece => piece.Weight >= LittleWeight))
            key += " Circle: a piece, adjusted for everything but length.";
        if (pieces.Except(beyond).Any(piece => piece.Weight < LittleWeight))
            key += " Cross: a piece so far off that it counts for less than half.";
        if (beyond.Count > 0)
            key += " Triangle at the edge: a piece beyond the picture.";
        return key;
    }

    private static string Description(Analysis analysis, Said said, int beyond)
    {
        string text = $"Speed against overall length in {PlainText.Line(analysis.Hull.Name)} with {PlainText.Line(analysis.Paddle.Name)}, all else equal. "
            + $"Best length {said.Setting(analysis.Best.Length)}, likely range {said.Range(analysis.Best.LikelyLow, analysis.Best.LikelyHigh)}.";
        foreach ((double inches, string side) in new[] { (-1.0, "shorter"), (1.0, "longer") })
        {
            if (At(analysis, inches) is { } point)
                text += $" One inch {side} is {(point.Percent <= 0 ? "slower" : "faster")} by {Said.Percent(Math.Abs(point.Percent))} (speed there against the best: {Said.Percent(point.Low)} to {Said.Percent(point.High)} with 90 %).";
        }

        text += $" {Spoken.Count(analysis.Curve.Pieces.Count, "piece")} shown.";
        return beyond == 0 ? text : text + $" {beyond} of them beyond the picture.";
    }

    private static CurvePoint? At(Analysis analysis, double inches) => analysis.Curve.Points
        .Where(point => Math.Abs(point.Length.InchesMoreThan(analysis.Best.Length) - inches) < 0.13)
        .MinBy(point => Math.Abs(point.Length.InchesMoreThan(analysis.Best.Length) - inches));
}
