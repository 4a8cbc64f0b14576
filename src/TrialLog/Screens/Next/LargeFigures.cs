using TrialLog.Plots;

namespace TrialLog.Screens.Next;

/// <summary>Figures three cells wide and three rows high, for a card that is read from the beach.</summary>
internal static class LargeFigures
{
    /// <summary>Rows that a figure takes.</summary>
    public const int Rows = 3;

    // Each figure is three by six small squares, two squares one above the other in a cell.
    private static readonly Dictionary<char, string> Figures = new()
    {
        ['0'] = "###|#.#|#.#|#.#|###|...",
        ['1'] = ".#.|##.|.#.|.#.|###|...",
        ['2'] = "###|..#|###|#..|###|...",
        ['3'] = "###|..#|.##|..#|###|...",
        ['4'] = "#.#|#.#|###|..#|..#|...",
        ['5'] = "###|#..|###|..#|###|...",
        ['6'] = "###|#..|###|#.#|###|...",
        ['7'] = "###|..#|..#|..#|..#|...",
        ['8'] = "###|#.#|###|#.#|###|...",
        ['9'] = "###|#.#|###|..#|###|...",
        ['.'] = "...|...|...|...|.#.|...",
    };

    /// <summary>The three rows of a length: its whole figures large, fraction and unit as they are on the middle row.</summary>
    public static IReadOnlyList<string> Of(string length, Strokes strokes)
    {
        int large = length.TakeWhile(glyph => Figures.ContainsKey(glyph)).Count();
        var rows = new string[Rows];
        for (int row = 0; row < Rows; row++)
        {
            string line = string.Concat(length.Take(large).Select(figure => Row(Figures[figure], row, strokes) + " "));
            rows[row] = line + (row == 1 ? length[large..] : "");
        }

        return rows;
    }

    private static string Row(string figure, int row, Strokes strokes)
    {
        string[] squares = figure.Split('|');
        return string.Concat(Enumerable.Range(0, 3).Select(column => (squares[row * 2][column], squares[row * 2 + 1][column]) switch
        {
            ('#', '#') => strokes == Strokes.Fine ? '█' : '#',
            ('#', _) => strokes == Strokes.Fine ? '▀' : '"',
            (_, '#') => strokes == Strokes.Fine ? '▄' : '_',
            _ => ' ',
        }));
    }
}
