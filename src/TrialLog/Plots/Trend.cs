namespace TrialLog.Plots;

/// <summary>A trend in one row of text: a bar an outing, in eighths of a cell.</summary>
internal static class Trend
{
    private const string Eighths = "▁▂▃▄▅▆▇█";
    private const string AsciiLevels = "_.-=+*%#";

    /// <summary>The last values as bars, scaled so that <paramref name="top"/> fills the cell; padded on the left.</summary>
    public static string Draw(IReadOnlyList<double> values, int columns, double top, Strokes strokes)
    {
        string levels = strokes == Strokes.Fine ? Eighths : AsciiLevels;
        IEnumerable<char> bars = values.TakeLast(columns)
            .Select(value => levels[(int)Math.Clamp(Math.Round(value / Math.Max(top, 1e-9) * 7), 0, 7)]);
        return string.Concat(bars).PadLeft(columns);
    }
}
