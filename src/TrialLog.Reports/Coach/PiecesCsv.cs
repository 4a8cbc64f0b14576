using System.Globalization;
using CsvHelper;
using TrialLog.Application.Coaching;
using TrialLog.Application.Reporting;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Reports.Coach;

/// <summary>The trials for a spreadsheet: a piece a row, what was suggested beside what was paddled.</summary>
internal static class PiecesCsv
{
    private static readonly string[] Header =
    [
        "date", "outing", "hull", "paddle", "piece", "suggested_in", "length_in", "distance_m", "time_s", "effort", "soreness",
        "adjusted_pct", "weight", "best_then_in", "excluded_because", "notes",
    ];

    public static string Write(ReportContents contents)
    {
        var names = new Names(contents);
        Dictionary<Guid, Advice> followed = contents.Advice.Where(given => given.Paddled is not null)
            .ToDictionary(given => given.Paddled!.Id);
        Dictionary<Guid, AdjustedPiece> adjusted = contents.Analysis.Curve.Pieces.DistinctBy(piece => piece.PieceId)
            .ToDictionary(piece => piece.PieceId);
        Dictionary<Guid, ProgressPoint> after = contents.Progress.Where(point => point.OutingId is not null)
            .DistinctBy(point => point.OutingId).ToDictionary(point => point.OutingId!.Value);

        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\r\n" };
        using (var csv = new CsvWriter(text, CsvQuoting.RowsEndingWith("\r\n")))
        {
            Row(csv, Header);
            foreach (Outing outing in contents.Outings.OrderBy(outing => outing.Date).ThenBy(outing => outing.Time ?? TimeOnly.MinValue)
                .ThenBy(outing => outing.Label, StringComparer.Ordinal).ThenBy(outing => outing.Id))
            {
                IReadOnlyList<Length> suggested = followed.GetValueOrDefault(outing.Id)?.Card.Card.Lengths ?? [];
                foreach (Piece piece in outing.Pieces.OrderBy(piece => piece.Order))
                {
                    AdjustedPiece? found = adjusted.GetValueOrDefault(piece.Id);
                    Row(csv,
                        Say.Day(outing.Date), Typed(outing.Label), Typed(names.Hull(outing.HullId)), Typed(names.Paddle(piece.PaddleId)),
                            $"{piece.Order}",
                        piece.Order >= 1 && piece.Order <= suggested.Count ? suggested[piece.Order - 1].ToDecimalInches() : "",
                        piece.Length.ToDecimalInches(), piece.Distance.ToDecimalMetres(), piece.Time.Seconds.ToString("0.###"),
                        piece.Effort?.ToString() ?? "", piece.Soreness?.ToString() ?? "",
                        found?.Percent.ToString("0.000") ?? "", found?.Weight.ToString("0.000") ?? "",
                        after.GetValueOrDefault(outing.Id)?.Best.ToDecimalInches() ?? "", Typed(piece.ExcludedBecause), Typed(piece.Notes));
                }
            }
        }

        return text.ToString();
    }

    private static void Row(CsvWriter csv, params IEnumerable<string> fields)
    {
        foreach (string field in fields)
            csv.WriteField(field);
        csv.NextRecord();
    }

    // The export's guard, and for text after blanks as well, which some spreadsheets pass over.
    private static string Typed(string? text)
    {
        string line = PlainText.Lines(text);
        string start = line.TrimStart();
        return FormulaGuard.Guard(start) == start ? line : "'" + line;
    }
}
