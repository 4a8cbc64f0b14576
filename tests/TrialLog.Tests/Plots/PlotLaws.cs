using CsCheck;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Plots;

public class PlotLaws
{
    private static readonly Gen<(int Columns, int Rows)> Sizes = Gen.Select(Gen.Int[-3, 220], Gen.Int[-3, 70]);

    [Fact]
    public void A_curve_of_any_size_has_just_that_size_and_in_ASCII_nothing_but_ASCII() =>
        Gen.Select(Sizes, Gen.Double[0.001, 30], Gen.Int[0, 60], Gen.Bool).Sample((size, curvature, pieces, centimetres) =>
        {
            var unit = centimetres ? LengthUnit.Centimetres : LengthUnit.Inches;
            Sketch ascii = CurvePlot.Draw(DrawnSample.Of(unit, curvature, pieces), size.Columns, size.Rows, Strokes.Ascii);
            Sketch fine = CurvePlot.Draw(DrawnSample.Of(unit, curvature, pieces), size.Columns, size.Rows, Strokes.Fine);
            Assert.Equal(Math.Max(CurvePlot.FewestColumns, size.Columns), ascii.Columns);
            Assert.Equal(ascii.Rows, ascii.Lines().Count);
            Assert.All(ascii.Lines(), line => Assert.True(line.Length <= ascii.Columns && line.All(glyph => glyph is >= ' ' and <= '~')));
            Assert.Contains(fine.Lines(), line => line.Contains('◆'));
        }, iter: 200);

    [Fact]
    public void Progress_of_any_size_has_just_that_size_and_in_ASCII_nothing_but_ASCII() =>
        Gen.Select(Sizes, Gen.Int[0, 300]).Sample((size, outings) =>
        {
            Sketch sketch = ProgressPlot.Draw(
                DrawnSample.Progress(outings), LengthUnit.Inches, size.Columns, size.Rows, Strokes.Ascii);
            Assert.All(sketch.Lines(), line => Assert.True(line.Length <= sketch.Columns && line.All(glyph => glyph is >= ' ' and <= '~')));
        }, iter: 100);

    [Fact]
    public void Every_Braille_dot_lights_its_own_bit() =>
        Gen.Select(Gen.Int[0, 9], Gen.Int[0, 11]).Sample((x, y) =>
        {
            var sketch = new Sketch(5, 3, Strokes.Fine);
            sketch.Dot(x, y, Ink.Curve);
            char glyph = sketch[x / 2, y / 4].Glyph;
            Assert.Equal(1, System.Numerics.BitOperations.PopCount((uint)glyph - 0x2800));
            for (int row = 0; row < 3; row++)
            {
                for (int column = 0; column < 5; column++)
                    Assert.True((column, row) == (x / 2, y / 4) || sketch[column, row] == PlotCell.Empty);
            }
        });

    [Theory]
    [InlineData("UTF-8 is asked for", "LANG=C.UTF-8", false)]
    [InlineData("the locale is plain C", "LANG=C", true)]
    [InlineData("LC_ALL wins over LANG", "LC_ALL=C LANG=en_GB.UTF-8", true)]
    [InlineData("an empty LC_ALL says nothing", "LC_ALL= LANG=en_GB.utf8", false)]
    [InlineData("ASCII is forced", "LANG=C.UTF-8 TRIALLOG_ASCII=1", true)]
    [InlineData("the bare console", "LANG=C.UTF-8 TERM=linux", true)]
    public void The_locale_tells_which_glyphs_there_are(string when, string variables, bool ascii)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The console of Windows says nothing by its locale.");
        var environment = variables.Split(' ').Select(pair => pair.Split('=')).ToDictionary(pair => pair[0], pair => pair[1]);
        Assert.True(StrokesOf.Environment(environment.GetValueOrDefault) == (ascii ? Strokes.Ascii : Strokes.Fine), when);
    }

    [Fact]
    public void A_trend_is_as_wide_as_asked_and_falls_where_the_values_fall()
    {
        Assert.Equal("   █▆▅▃▁", Trend.Draw([0.4, 0.3, 0.21, 0.1, 0], 8, 0.4, Strokes.Fine));
        Assert.Equal("#", Trend.Draw([0, 9], 1, 1, Strokes.Ascii));
    }
}
