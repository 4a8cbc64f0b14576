using TrialLog.Domain.Values;
using TrialLog.Plots;

namespace TrialLog.Tests.Plots;

/// <summary>Pictures that were looked at, and must not change unseen.</summary>
public class PlotDrawings
{
    [Theory]
    [InlineData(70, 18, false, LengthUnit.Inches, true)]
    [InlineData(70, 18, true, LengthUnit.Inches, true)]
    [InlineData(120, 34, false, LengthUnit.Inches, true)]
    [InlineData(70, 18, false, LengthUnit.Centimetres, true)]
    [InlineData(40, 9, false, LengthUnit.Inches, false)]
    [InlineData(40, 9, true, LengthUnit.Centimetres, false)]
    public void A_response_curve_looks_as_it_did(int columns, int rows, bool ascii, LengthUnit unit, bool pieces)
    {
        Sketch sketch = CurvePlot.Draw(DrawnSample.Of(unit), columns, rows, Of(ascii), pieces);
        StoredDrawing.Matches("Plots", $"curve-{columns}x{rows}-{(ascii ? "ascii" : "fine")}-{(unit == LengthUnit.Inches ? "in" : "cm")}",
            sketch.ToString());
    }

    [Theory]
    [InlineData(70, 18, 8, false, LengthUnit.Inches)]
    [InlineData(70, 18, 8, true, LengthUnit.Centimetres)]
    [InlineData(120, 34, 60, false, LengthUnit.Inches)]
    [InlineData(70, 18, 0, false, LengthUnit.Inches)]
    public void Progress_looks_as_it_did(int columns, int rows, int outings, bool ascii, LengthUnit unit)
    {
        Sketch sketch = ProgressPlot.Draw(DrawnSample.Progress(outings), unit, columns, rows, Of(ascii));
        StoredDrawing.Matches(
            "Plots", $"progress-{columns}x{rows}-{outings}-{(ascii ? "ascii" : "fine")}-{(unit == LengthUnit.Inches ? "in" : "cm")}",
            sketch.ToString());
    }

    private static Strokes Of(bool ascii) => ascii ? Strokes.Ascii : Strokes.Fine;
}
