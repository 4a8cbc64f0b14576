using System.Xml.Linq;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Reports.Pictures;

/// <summary>
/// The house style of the pictures, and the way from a plot to a drawing that can stand in a page: it scales, carries
/// its title and description, and shares no names with the other drawings of the page. Marks differ in shape and dash,
/// so that a grey print tells as much.
/// </summary>
internal static class Drawing
{
    // So small that on a phone a picture is as wide as it was drawn, and its text as tall: 12 px and more.
    private const int Width = 360, Height = 270;
    private static readonly double[] Steps = [0.25, 0.5, 1, 2, 5, 10, 20, 50];
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static readonly OxyColor Ink = OxyColor.Parse("#1c2b33");
    public static readonly OxyColor Quiet = OxyColor.Parse("#4a5a63");
    public static readonly OxyColor Line = OxyColor.Parse("#0b5560");
    public static readonly OxyColor Band = OxyColor.Parse("#d5e6e6");
    public static readonly OxyColor Mark = OxyColor.Parse("#9a3b12");
    public static readonly OxyColor Rule = OxyColor.Parse("#e3e8ea");

    private static readonly (OxyColor Colour, string Name)[] PageColours =
        [(Ink, "ink"), (Quiet, "quiet"), (Line, "line"), (Band, "band"), (Mark, "mark"), (Rule, "rule"), (OxyColors.White, "paper")];

    public static PlotModel Plot() => new()
    {
        DefaultFont = "Arial",
        DefaultFontSize = 13,
        TextColor = Ink,
        PlotAreaBorderColor = Quiet,
        PlotAreaBorderThickness = new OxyThickness(1, 0, 0, 1),
        Background = OxyColors.White,
        Padding = new OxyThickness(4, 8, 14, 4),
    };

    public static LinearAxis Axis(AxisPosition position, string title, double low, double high) => new()
    {
        LabelFormatter = value => value.ToString("0.##").Replace('-', '\u2212'),
        Position = position,
        Title = title,
        Minimum = low,
        Maximum = high,
        TickStyle = TickStyle.Outside,
        TicklineColor = Quiet,
        MinorTickSize = 0,
        MajorGridlineStyle = position == AxisPosition.Left ? LineStyle.Solid : LineStyle.None,
        MajorGridlineColor = Rule,
        AxisTitleDistance = position == AxisPosition.Left ? 20 : 8,
        IntervalLength = position == AxisPosition.Left ? 40 : 70,
    };

    /// <summary>An upright axis on which each step is ten times the one below.</summary>
    public static LogarithmicAxis TenthsAxis(string title, double low, double high) => new()
    {
        LabelFormatter = value => value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture),
        Position = AxisPosition.Left,
        Title = title,
        Minimum = low,
        Maximum = high,
        TickStyle = TickStyle.Outside,
        TicklineColor = Quiet,
        MinorTickSize = 0,
        MajorGridlineStyle = LineStyle.Solid,
        MajorGridlineColor = Rule,
        AxisTitleDistance = 20,
    };

    /// <summary>A straight line across the plot with words beside it.</summary>
    public static LineAnnotation Across(LineAnnotationType type, double at, string text, LineStyle style, OxyColor colour) => new()
    {
        Type = type,
        X = at,
        Y = at,
        Text = text,
        TextColor = colour,
        Color = colour,
        LineStyle = style,
        StrokeThickness = 1.5,
        TextLinePosition = 0.97,
        TextHorizontalAlignment = HorizontalAlignment.Left,
        TextVerticalAlignment = VerticalAlignment.Bottom,
        TextOrientation = AnnotationTextOrientation.Horizontal,
    };

    /// <summary>Draws the plot.</summary>
    /// <param name="plot">The plot.</param>
    /// <param name="name">A name no other drawing of the page has: letters and hyphens.</param>
    /// <param name="title">A short title.</param>
    /// <param name="description">What it shows.</param>
    public static XElement Of(PlotModel plot, string name, string title, string description)
    {
        XElement drawn = XDocument.Parse(new SvgExporter { Width = Width, Height = Height }.ExportToString(plot)).Root!;
        foreach (XAttribute attribute in drawn.DescendantsAndSelf().Attributes())
        {
            if (attribute.Name.LocalName == "id")
                attribute.Value = $"{name}-{attribute.Value}";
            else if (attribute.Value.StartsWith("url(#", StringComparison.Ordinal))
                attribute.Value = $"url(#{name}-{attribute.Value[5..]}";
            else if (attribute.Name.LocalName == "font-family")
                attribute.Value = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif";
            else if (attribute.Name.LocalName == "style")
                attribute.Value = OfThePage(attribute.Value);
        }

        // Only a style may name a colour of the page.
        foreach (XElement element in drawn.DescendantsAndSelf().ToList())
        {
            if (element.Attribute("fill") is not { } fill)
                continue;
            element.SetAttributeValue("style", $"fill:{OfThePage(fill.Value)};{element.Attribute("style")?.Value}");
            fill.Remove();
        }

        drawn.ReplaceAttributes(
            new XAttribute("xmlns", Svg.NamespaceName),
            new XAttribute("viewBox", $"0 0 {Width} {Height}"),
            new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", $"{name}-title {name}-desc"));
        drawn.AddFirst(
            new XElement(Svg + "title", new XAttribute("id", $"{name}-title"), PlainText.Permitted(title)),
            new XElement(Svg + "desc", new XAttribute("id", $"{name}-desc"), PlainText.Permitted(description)));
        return drawn;
    }

    // The page's own colours, dark or light; where the drawing stands elsewhere, those it was drawn in.
    private static string OfThePage(string style)
    {
        foreach ((OxyColor colour, string name) in PageColours)
        {
            string rgb = $"rgb({colour.R},{colour.G},{colour.B})";
            style = style.Replace(rgb, $"var(--{name},{rgb})", StringComparison.Ordinal);
        }

        return style;
    }

    /// <summary>An axis of overall lengths in the paddler's unit, marked in fractions of an inch or in centimetres.</summary>
    public static LinearAxis LengthAxis(AxisPosition position, string title, double low, double high, LengthUnit unit)
    {
        LinearAxis axis = Axis(position, $"{title}, {Say.Symbol(unit)}", low, high);
        axis.MajorStep = Steps.FirstOrDefault(step => (high - low) / step <= 7, Steps[^1]);
        axis.LabelFormatter = value => Say.OnAxisLabel(value, unit);
        if (position == AxisPosition.Left)
            axis.AxisTitleDistance = 26; // The library's measure of text takes a vulgar fraction for nothing.
        return axis;
    }
}
