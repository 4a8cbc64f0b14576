using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Next;

/// <summary>The card: each piece's length with a paddle drawn beside it, longer for longer, in the order to paddle.</summary>
internal static class CardPicture
{
    private const int ShortestShaft = 6;

    /// <summary>The fewest rows that a card takes: heading, pieces, what each piece is.</summary>
    public static int RowsOf(TrialCard card) => card.Lengths.Count + 3;

    /// <summary>The rows from which its lengths are written large.</summary>
    public static int LargeRowsOf(TrialCard card) => 4 + card.Lengths.Count * (LargeFigures.Rows + 1);

    /// <summary>Draws it on the left.</summary>
    /// <param name="brush">The brush.</param>
    /// <param name="top">Its first row.</param>
    /// <param name="rows">How many rows there are for it.</param>
    /// <param name="heading">Over it.</param>
    /// <param name="card">The card.</param>
    /// <param name="unit">The paddler's unit.</param>
    /// <param name="width">Columns for it.</param>
    /// <param name="blind">Whether letters stand for the lengths, which a partner sets.</param>
    public static void Draw(Brush brush, int top, int rows, string heading, TrialCard card, LengthUnit unit, int width, bool blind)
    {
        string[] letters = CardReason.Letters(card.Lengths).Split(' ');
        heading += blind ? ", blind: your partner sets the paddle" : "";
        if (rows < RowsOf(card) && card.Lengths.Count > 0)
        {
            // On a low terminal the lengths stand on one line, whatever else has to give way.
            string lengths = string.Join(" · ", card.Lengths.Select((length, piece) => blind ? letters[piece] : Say.Length(length, unit)));
            int after = brush.Words(1, top, width - 2, $"{heading}: {lengths}", Tone.Strong, most: rows);
            brush.Words(1, after, width - 2, Answer.Plan(card), most: Math.Max(0, top + rows - after));
            return;
        }

        bool large = rows >= LargeRowsOf(card) && width >= 48 && !blind;
        brush.Text(1, top, heading, Tone.Title);
        if (card.Lengths.Count == 0)
            return;
        Length shortest = card.Lengths.Min();
        double spread = Math.Max(0.01, card.Lengths.Max().InchesMoreThan(shortest));
        int shaftColumn = large ? 26 : 17, longestShaft = Math.Max(ShortestShaft + 1, Math.Min(width - shaftColumn - 7, 22));
        int row = top + 1 + (rows > RowsOf(card) ? 1 : 0);
        for (int index = 0; index < card.Lengths.Count && row < top + rows - 1; index++)
        {
            Length length = card.Lengths[index];
            int shaft = blind ? longestShaft
                : ShortestShaft + (int)Math.Round(length.InchesMoreThan(shortest) / spread * (longestShaft - ShortestShaft));
            int middle = large ? row + 1 : row;
            brush.Text(1, middle, $"{index + 1,2}", Tone.Dim);
            if (large)
            {
                IReadOnlyList<string> figures = LargeFigures.Of(Say.Length(length, unit), brush.Strokes);
                for (int line = 0; line < figures.Count; line++)
                    brush.Text(5, row + line, figures[line], Tone.Strong);
            }
            else
            {
                brush.TextTo(shaftColumn - 2, middle, blind ? letters[index] : Say.Length(length, unit), Tone.Strong);
            }

            if (!blind)
                brush.Runs(shaftColumn, middle, ("┠" + new string('─', shaft), Tone.Plain), ("◖██", Tone.Curve));
            row += large ? LargeFigures.Rows + 1 : 1;
        }

        if (top + rows - row > 2)
            row++;
        if (row < top + rows)
            brush.Words(1, row, width - 3, Answer.Plan(card), Tone.Plain, most: top + rows - row);
    }
}
