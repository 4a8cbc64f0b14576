using System.Collections;
using System.Collections.Specialized;
using Terminal.Gui.Views;
using TrialLog.Application.Logging;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Shared;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Log;

/// <summary>The logbook's lines for the list: only those in sight are ever written out.</summary>
internal sealed class LogbookRows(Look look, LengthUnit unit,
    IReadOnlyList<LogbookRow> rows, IReadOnlySet<Guid> opened, IReadOnlyDictionary<Guid, string> hulls) : IListDataSource
{
    /// <summary>The widths of an outing's columns.</summary>
    private const int DateWidth = 12, HullWidth = 10, PiecesWidth = 12, LengthsWidth = 21, PaceWidth = 11;

#pragma warning disable CS0067 // The rows never change; a new source takes the place of an old one.
    public event NotifyCollectionChangedEventHandler? CollectionChanged;
#pragma warning restore CS0067

    public int Count => rows.Count;

    public int MaxItemLength => 1;

    public bool SuspendCollectionChangedEvent { get; set; }

    public LogbookRow this[int index] => rows[index];

    /// <summary>The headings over the columns.</summary>
    public static string Headings(bool wide) =>
        $"  {"date",-DateWidth}{"hull",-HullWidth}{"pieces",-PiecesWidth}{"lengths",-LengthsWidth}{"fastest",-PaceWidth}" +
            $"{(wide ? "label, soreness, wind, notes" : "notes")}";

    public void Render(ListView listView, bool selected, int item, int col, int row, int width, int viewportX = 0)
    {
        var brush = new Brush(listView, look);
        LogbookRow line = rows[item];
        (string text, Tone tone) = line.Piece is { } piece ? OfPiece(brush, piece, line.Outing) : OfOuting(brush, line.Outing);
        brush.Text(0, row, brush.Cell(text, width), selected && listView.HasFocus ? Tone.Selected : selected ? Tone.Strong : tone);
    }

    /// <summary>Everything that a line says, to be searched; of an outing also what its pieces say.</summary>
    public string WordsOf(int item)
    {
        LogbookRow line = rows[item];
        IEnumerable<string?> said = line.Piece is { } piece
            ? [Say.Length(piece.Length, unit), $"{piece.Distance} {piece.Time} {piece.Notes} {piece.ExcludedBecause}"]
            : [
                $"{line.Outing.Date:yyyy-MM-dd} {line.Outing.Date:d MMMM yyyy}", hulls.GetValueOrDefault(line.Outing.HullId),
                    line.Outing.Label, line.Outing.Notes,
                line.Outing.Place, line.Outing.Water, OutingSummary.Of(line.Outing, unit).Lengths,
                .. opened.Contains(line.Outing.Id) ? [] : line.Outing.Pieces.Select(one => $"{one.Notes} {one.ExcludedBecause}"),
            ];
        return string.Join(' ', said);
    }

    public bool IsMarked(int item) => false;

    public void SetMark(int item, bool value)
    {
    }

    public IList ToList() => Array.Empty<string>();

    public void Dispose()
    {
    }

    private (string Text, Tone Tone) OfOuting(Brush brush, Outing outing)
    {
        OutingSummary summary = OutingSummary.Of(outing, unit);
        string pieces = summary.LeftOut == 0 ? $"{summary.Pieces}" : $"{summary.Pieces}, {summary.LeftOut} out";
        IEnumerable<string> rest = new[]
        {
            outing.Label,
            summary.Soreness is { Halves: > 0 } sore ? $"sore {sore}" : "",
            outing.Wind is { } wind ? $"wind {wind}" : "",
            outing.Notes ?? "",
        }.Where(part => part.Length > 0);
        return ((opened.Contains(outing.Id) ? "▼ " : "▸ ")
            + brush.Cell($"{outing.Date:yyyy-MM-dd}", DateWidth) + brush.Cell(hulls.GetValueOrDefault(outing.HullId, "?"), HullWidth)
            + brush.Cell(pieces, PiecesWidth) + brush.Cell(summary.Lengths, LengthsWidth - 1) + " " + brush.Cell(summary.Pace, PaceWidth)
            + string.Join(" · ", rest), Tone.Plain);
    }

    private (string Text, Tone Tone) OfPiece(Brush brush, Piece piece, Outing outing)
    {
        string line = "     " + brush.Cell($"{piece.Order}", 4) + brush.Cell(Say.Length(piece.Length, unit), 13)
            + brush.Cell(piece.Distance.ToString(), 10)
            + brush.Cell(piece.Time.ToString(), 10) + brush.Cell(Say.Pace(piece), 11);
        return piece.ExcludedBecause is { } reason
            ? (line + "✗ out: " + reason, Tone.Dim)
            : (line + brush.Cell(piece.Effort is { } effort ? $"effort {effort}" : "", 12)
                + string.Join(" · ", new[] { Say.TimedBy(piece, outing), piece.Notes }.Where(part => !string.IsNullOrEmpty(part))),
                    Tone.Plain);
    }
}
