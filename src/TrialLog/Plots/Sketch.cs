using System.Text;
using TrialLog.Application.Wording;
using TrialLog.Reports.Coach;

namespace TrialLog.Plots;

/// <summary>A cell of a picture.</summary>
internal readonly record struct PlotCell(char Glyph, Ink Ink)
{
    public static readonly PlotCell Empty = new(' ', Ink.Blank);
}

/// <summary>
/// A grid of terminal cells that is drawn on finer than one dot a cell: 2 × 4 Braille dots for curves and bands,
/// 2 × 2 quarter blocks for marks, eighths of a cell for bars. Text lies over marks, marks over bars, bars over dots.
/// Whatever falls outside the grid is left out.
/// </summary>
internal sealed class Sketch
{
    /// <summary>Dots across and down one cell.</summary>
    public const int DotsAcross = 2, DotsDown = 4;

    private static readonly int[,] BrailleBits = { { 0x01, 0x08 }, { 0x02, 0x10 }, { 0x04, 0x20 }, { 0x40, 0x80 } };
    private const string Quarters = " ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█";
    private const string Eighths = " ▁▂▃▄▅▆▇█";

    private readonly int[,] _dots;
    private readonly int[,] _marks;
    private readonly int[,] _markCounts;
    private readonly Ink[,] _dotInk;
    private readonly Ink[,] _markInk;
    private readonly PlotCell[,] _text;
    private readonly Strokes _strokes;

    public Sketch(int columns, int rows, Strokes strokes)
    {
        (Columns, Rows, _strokes) = (Math.Max(1, columns), Math.Max(1, rows), strokes);
        _dots = new int[Rows, Columns];
        _marks = new int[Rows, Columns];
        _markCounts = new int[Rows, Columns];
        _dotInk = new Ink[Rows, Columns];
        _markInk = new Ink[Rows, Columns];
        _text = new PlotCell[Rows, Columns];
    }

    public int Columns { get; }

    public int Rows { get; }

    /// <summary>Sets one Braille dot. A band gives way to whatever else is in the cell, so that a curve stays a clean line.</summary>
    public void Dot(int x, int y, Ink ink)
    {
        (int column, int row) = (Math.DivRem(x, DotsAcross).Quotient, Math.DivRem(y, DotsDown).Quotient);
        if (x < 0 || y < 0 || column >= Columns || row >= Rows)
            return;
        Ink there = _dotInk[row, column];
        if (ink == Ink.Band && there > Ink.Band)
            return;
        if (there == Ink.Band && ink != Ink.Band)
            _dots[row, column] = 0;
        _dots[row, column] |= BrailleBits[y % DotsDown, x % DotsAcross];
        if (ink > there)
            _dotInk[row, column] = ink;
    }

    /// <summary>Joins two dots.</summary>
    public void Line(int fromX, int fromY, int toX, int toY, Ink ink)
    {
        int steps = Math.Max(1, Math.Max(Math.Abs(toX - fromX), Math.Abs(toY - fromY)));
        if (steps > 100_000)
            return;
        for (int step = 0; step <= steps; step++)
        {
            double share = (double)step / steps;
            Dot((int)Math.Round(fromX + share * (toX - fromX)), (int)Math.Round(fromY + share * (toY - fromY)), ink);
        }
    }

    /// <summary>Sets a quarter block; <paramref name="x"/> and <paramref name="y"/> count dots, as in <see cref="Dot"/>.</summary>
    public void Mark(int x, int y, Ink ink)
    {
        (int column, int row) = (x / DotsAcross, y / DotsDown);
        if (x < 0 || y < 0 || column >= Columns || row >= Rows)
            return;
        _marks[row, column] |= 1 << (x % DotsAcross + (y % DotsDown / 2 * 2));
        _markCounts[row, column]++;
        _markInk[row, column] = ink;
    }

    /// <summary>Fills a column upwards from the bottom of <paramref name="row"/> by so many cells, in eighths.</summary>
    public void Bar(int column, int row, double cells, Ink ink)
    {
        int eighths = (int)Math.Round(cells * 8);
        for (; eighths > 0 && row >= 0; eighths -= 8, row--)
        {
            int part = Math.Min(8, eighths);
            char glyph = _strokes == Strokes.Fine ? Eighths[part] : part switch { 8 => '#', > 4 => '=', > 1 => '-', _ => '_' };
            Put(column, row, glyph, ink);
        }
    }

    /// <summary>Writes text; where the terminal lacks a glyph, another stands for it. Gives the column after it.</summary>
    public int Text(int column, int row, string text, Ink ink)
    {
        foreach (char glyph in _strokes.Write(text))
            Put(column++, row, glyph, ink);
        return column;
    }

    /// <summary>Puts one glyph.</summary>
    public void Put(int column, int row, char glyph, Ink ink)
    {
        if (column >= 0 && row >= 0 && column < Columns && row < Rows)
            _text[row, column] = new(glyph, ink);
    }

    /// <summary>Whether nothing was written or filled there.</summary>
    public bool IsFree(int column, int row) =>
        column >= 0 && row >= 0 && column < Columns && row < Rows && _text[row, column].Glyph == '\0';

    /// <summary>What a cell looks like.</summary>
    public PlotCell this[int column, int row]
    {
        get
        {
            if (_marks[row, column] != 0 && _text[row, column].Ink is Ink.Blank or Ink.Axis)
                return new(_strokes == Strokes.Fine ? Quarters[_marks[row, column]] : _markCounts[row, column] > 1 ? '8' : 'o',
                    _markInk[row, column]);
            if (_text[row, column].Glyph != '\0')
                return _text[row, column];
            return _dots[row, column] == 0 ? PlotCell.Empty : new(DotGlyph(row, column), _dotInk[row, column]);
        }
    }

    private char DotGlyph(int row, int column)
    {
        int dots = _dots[row, column];
        if (_strokes == Strokes.Fine)
            return (char)(0x2800 + dots);
        if (_dotInk[row, column] is not (Ink.Curve or Ink.Best or Ink.Now))
            return _dotInk[row, column] == Ink.Faint ? ',' : ':';
        bool high = (dots & 0x09) != 0, low = (dots & 0xC0) != 0;
        return (high, low) switch { (true, true) => '|', (true, false) => '\'', (false, true) => '.', _ => '-' };
    }

    /// <summary>The picture as lines of text without trailing blanks.</summary>
    public IReadOnlyList<string> Lines()
    {
        var lines = new string[Rows];
        var line = new StringBuilder(Columns);
        for (int row = 0; row < Rows; row++)
        {
            line.Clear();
            for (int column = 0; column < Columns; column++)
                line.Append(this[column, row].Glyph);
            lines[row] = line.ToString().TrimEnd();
        }

        return lines;
    }

    /// <summary>The picture as text.</summary>
    public override string ToString() => string.Join('\n', Lines());
}
