using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Next;

/// <summary>The trial card: each piece's length with a paddle drawn beside it, longer for longer, in the order to paddle.</summary>
internal static class CardPicture
{
    private const int ShortestShaft = 6;

    /// <summary>Draws it at the top left. Gives the row after it.</summary>
    public static int Draw(Brush brush, TrialCard card, Chosen chosen, LengthUnit unit, int width, bool sore)
    {
        bool large = brush.Rows >= 18 + card.Lengths.Count * (LargeFigures.Rows + 1) && width >= 48;
        brush.Text(1, 0, sore ? "! Rest first. When it no longer hurts:" : $"Paddle these {card.Lengths.Count}, in this order", sore ? Tone.Caution : Tone.Title);
        int row = 2;
        if (card.Lengths.Count == 0)
            return 1;
        Length shortest = card.Lengths.Min();
        double spread = Math.Max(0.01, card.Lengths.Max().InchesMoreThan(shortest));
        int shaftColumn = large ? 26 : 17;
        int longestShaft = Math.Max(ShortestShaft + 1, Math.Min(width - shaftColumn - 7, 22));
        for (int index = 0; index < card.Lengths.Count && row < brush.Rows - 4; index++)
        {
            Length length = card.Lengths[index];
            int shaft = ShortestShaft + (int)Math.Round(length.InchesMoreThan(shortest) / spread * (longestShaft - ShortestShaft));
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
                brush.TextTo(shaftColumn - 2, middle, Say.Length(length, unit), Tone.Strong);
            }

            brush.Runs(shaftColumn, middle, ("┠" + new string('─', shaft), Tone.Plain), ("◖██", Tone.Curve));
            row += large ? LargeFigures.Rows + 1 : 1;
        }

        string each = string.Join(", ", card.Lengths.Select(length => Say.Length(length, unit)[..^3]));
        row = brush.Words(1, row + (large ? 0 : 1), width - 3, $"{card.Distance} each at effort {card.Effort}, {card.Rest} easy between", Tone.Plain);
        return brush.Words(1, row, width - 3, $"{each} {chosen.Paddler.Unit switch { LengthUnit.Centimetres => "cm", _ => "in" }}", Tone.Dim);
    }
}
