using Terminal.Gui.Text;
using Terminal.Gui.ViewBase;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Pictures;
using TrialLog.Tuning.Model;

namespace TrialLog.Screens.Paint;

/// <summary>Writes on a view, within its edges, in glyphs that the terminal has.</summary>
internal readonly ref struct Brush(View view, Look look)
{
    public int Columns => view.Viewport.Width;

    public int Rows => view.Viewport.Height;

    public Strokes Strokes => look.Strokes;

    /// <summary>Writes text from a column on; what does not fit ends in an ellipsis. Gives the column after it.</summary>
    public int Text(int column, int row, string text, Tone tone = Tone.Plain)
    {
        if (row < 0 || row >= Rows || column >= Columns || text.Length == 0)
            return column;
        string fitted = Fit(Quoted.Visible(look.Strokes.Write(text)), Columns - column);
        view.SetAttribute(look.Palette[tone]);
        view.AddStr(column, row, fitted);
        return column + fitted.GetColumns();
    }

    /// <summary>Writes stretches of text one after the other.</summary>
    public int Runs(int column, int row, params ReadOnlySpan<(string Text, Tone Tone)> runs)
    {
        foreach ((string text, Tone tone) in runs)
            column = Text(column, row, text, tone);
        return column;
    }

    /// <summary>Writes text so that it ends at a column.</summary>
    public void TextTo(int endColumn, int row, string text, Tone tone = Tone.Plain) =>
        Text(Math.Max(0, endColumn - look.Strokes.Write(text).GetColumns()), row, text, tone);

    /// <summary>Writes words over as many rows as they need, at most so many. Gives the row after the last.</summary>
    public int Words(int column, int row, int width, string text, Tone tone = Tone.Plain, int most = int.MaxValue)
    {
        IReadOnlyList<string> lines = WordWrap.Lines(look.Strokes.Write(text), width);
        for (int line = 0; line < Math.Min(lines.Count, most); line++)
            Text(column, row++, line == most - 1 && lines.Count > most ? lines[line] + "…" : lines[line], tone);
        return row;
    }

    /// <summary>Writes what stands in place of a screen while soreness stands: rest first, the cautions, when it is there again.</summary>
    public void Rest(IReadOnlyList<string> page)
    {
        int row = 1, width = Math.Min(100, Columns - 4);
        for (int i = 0; i < page.Count; i++)
            row = 1 + Words(2, row, width, i > 0 && i < page.Count - 1 ? "! " + page[i] : page[i],
                i == page.Count - 1 ? Tone.Dim : Tone.Caution);
    }

    /// <summary>Draws a plot.</summary>
    public void Picture(int column, int row, Sketch sketch)
    {
        var run = new System.Text.StringBuilder();
        int columns = Math.Min(sketch.Columns, Columns - column);
        for (int y = 0; y < sketch.Rows && row + y < Rows; y++)
        {
            int from = 0;
            Tone tone = Tone.Plain;
            for (int x = 0; x < columns; x++)
            {
                PlotCell cell = sketch[x, y];
                if (cell.Glyph != ' ' && Palette.ToneOf(cell.Ink) is var own && own != tone)
                {
                    Flush(view, look, run, column + from, row + y, tone);
                    (from, tone) = (x, own);
                }

                run.Append(cell.Glyph);
            }

            Flush(view, look, run, column + from, row + y, tone);
        }

        static void Flush(View view, Look look, System.Text.StringBuilder run, int column, int row, Tone tone)
        {
            if (run.Length == 0)
                return;
            view.SetAttribute(look.Palette[tone]);
            view.AddStr(column, row, run.ToString());
            run.Clear();
        }
    }

    /// <summary>At most so many columns of the text.</summary>
    public string Fit(string text, int width)
    {
        if (text.GetColumns() <= width)
            return text;
        string end = look.Strokes.Write("…");
        if (width <= end.Length)
            return width <= 0 ? "" : end[..Math.Min(end.Length, width)];
        int used = 0, at = 0;
        foreach (System.Text.Rune rune in text.EnumerateRunes())
        {
            int wide = Math.Max(0, rune.GetColumns());
            if (used + wide > width - end.Length)
                break;
            used += wide;
            at += rune.Utf16SequenceLength;
        }

        return text[..at] + end;
    }

    /// <summary>The text cut or padded to so many columns.</summary>
    public string Cell(string text, int width)
    {
        string fitted = Fit(Quoted.Visible(look.Strokes.Write(text)), width);
        return fitted + new string(' ', Math.Max(0, width - fitted.GetColumns()));
    }
}

/// <summary>The glyphs and looks of this terminal.</summary>
internal sealed record Look(Strokes Strokes, Palette Palette)
{
    /// <summary>How many columns a text takes on this terminal.</summary>
    public int ColumnsOf(string text) => Quoted.Visible(Strokes.Write(text)).GetColumns();
}
