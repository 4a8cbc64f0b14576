using Terminal.Gui.ViewBase;

namespace TrialLog.Screens.Paint;

/// <summary>A view that paints itself with a brush.</summary>
internal abstract class Canvas : View
{
    protected Canvas(Look look)
    {
        Look = look;
        Width = Dim.Fill();
        Height = Dim.Fill();
    }

    public Look Look { get; }

    protected abstract void Paint(Brush brush);

    protected override bool OnDrawingContent(DrawContext? context)
    {
        Paint(new Brush(this, Look));
        return true;
    }
}
