using TrialLog.Application.Coaching;
using TrialLog.Application.Reporting;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Reports.Pictures;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Reports.Coach;

/// <summary>What was suggested, what was paddled, and every piece.</summary>
internal static class TrialsSection
{
    /// <summary>The outings and what was suggested for them, and the cards that nobody followed.</summary>
    public static Section Outings(ReportContents contents, IReadOnlyList<Advice> advice, Names names, LengthUnit unit)
    {
        List<Outing> outings = InOrder(contents);
        if (outings.Count == 0 && advice.Count == 0)
            return new("Outings", new Paragraph("No outing is logged yet."));
        var blocks = new List<Block>();
        if (outings.Count > 0)
            blocks.Add(OutingRows(contents, outings, advice, names, unit));
        if (contents.Analysis.Standing != Standing.Sore && advice.Where(given => given.Paddled is null).ToList() is { Count: > 0 } open)
            blocks.Add(Open(open, names, unit));
        return new("Outings", [.. blocks]);
    }

    /// <summary>Every piece; null where there is none.</summary>
    public static Section? Pieces(ReportContents contents, Names names, LengthUnit unit) =>
        InOrder(contents) is { Count: > 0 } outings
            ? new("Pieces", contents.Analysis.Standing == Standing.Sore ? PiecesAlone(outings, names, unit)
            : PieceRows(contents.Analysis, outings, names, unit)) : null;

    // While it hurts what was paddled, and not what it says of lengths.
    private static Table PiecesAlone(List<Outing> outings, Names names, LengthUnit unit) => new("Every piece",
        [new("Outing"), new("Piece", true), new("Paddle"), new("Length", true), new("Distance", true), new("Time", true),
            new("Pace", true), new("Effort", true), new("Sore", true)],
        [.. from outing in outings
            from piece in outing.Pieces.OrderBy(piece => piece.Order)
            select Row(outing, piece, names, unit)]);

    private static IReadOnlyList<string> Row(Outing outing, Piece piece, Names names, LengthUnit unit) =>
    [
        Names.OnTwoLines(outing), $"{piece.Order}", names.Paddle(piece.PaddleId), Say.Length(piece.Length, unit),
        piece.Distance.ToString(), piece.Time.ToString(), Say.Pace(piece), piece.Effort?.ToString() ?? Say.Nothing,
        piece.Soreness?.ToString() ?? Say.Nothing,
    ];

    private static List<Outing> InOrder(ReportContents contents) =>
        [.. contents.Outings.OrderBy(outing => outing.Date).ThenBy(outing => outing.Time ?? TimeOnly.MinValue)
        .ThenBy(outing => outing.Label, StringComparer.Ordinal).ThenBy(outing => outing.Id)];

    private static Table OutingRows(
        ReportContents contents, List<Outing> outings, IReadOnlyList<Advice> advice, Names names, LengthUnit unit)
    {
        Dictionary<Guid, Advice> followed = advice.Where(given => given.Paddled is not null).ToDictionary(given => given.Paddled!.Id);
        if (contents.Analysis.Standing == Standing.Sore)
            return new Table("Outings: what was paddled", [new("Outing"), new("Hull"), new("Conditions"), new("Paddled")],
                [.. outings.Select(outing => (IReadOnlyList<string>)
                [
                    Names.OnTwoLines(outing), names.Hull(outing.HullId), Conditions(outing), Paddled(outing, null, unit),
                ])]);
        Dictionary<Guid, ProgressPoint> after = contents.Progress.Where(point => point.OutingId is not null)
            .DistinctBy(point => point.OutingId).ToDictionary(point => point.OutingId!.Value);
        return new Table("Outings: what was suggested and what was paddled, and the best length known after it",
            [new("Outing"), new("Hull"), new("Conditions"), new("Suggested"), new("Paddled"), new("Best length then", true)],
            [.. outings.Select(outing => (IReadOnlyList<string>)
            [
                Names.OnTwoLines(outing), names.Hull(outing.HullId), Conditions(outing),
                followed.TryGetValue(outing.Id, out Advice? given) ? Say.Order(given.Card.Card.Lengths, unit) : Say.Nothing,
                Paddled(outing, given, unit),
                after.TryGetValue(outing.Id, out ProgressPoint? point)
                    ? $"{Say.Length(point.Best, unit)}\n({Say.Range(point.LikelyLow, point.LikelyHigh, unit)})" : Say.Nothing,
            ])]);
    }

    private static string Paddled(Outing outing, Advice? given, LengthUnit unit)
    {
        string lengths = Say.Order(outing.Pieces.OrderBy(piece => piece.Order).Select(piece => piece.Length), unit);
        return given is null ? lengths : $"{lengths}\n({given.MatchInWords})";
    }

    private static string Conditions(Outing outing)
    {
        var words = new List<string>();
        if (outing.Wind is { } wind)
            words.Add($"wind Beaufort {wind}");
        if (!string.IsNullOrWhiteSpace(outing.Water))
            words.Add(PlainText.Line(outing.Water));
        if (!string.IsNullOrWhiteSpace(outing.Place))
            words.Add(PlainText.Line(outing.Place));
        return words.Count == 0 ? Say.Nothing : string.Join(", ", words);
    }

    private static Table Open(List<Advice> open, Names names, LengthUnit unit) => new("Cards given that no outing has followed",
        [new("Given (UTC)"), new("Hull"), new("Paddle"), new("Lengths"), new("Best length then", true)],
        [.. open.Select(given => (IReadOnlyList<string>)
        [
            Say.Day(DateOnly.FromDateTime(given.Card.GivenAt.UtcDateTime)), names.Hull(given.Card.HullId),
                names.Paddle(given.Card.PaddleId),
            Say.Order(given.Card.Card.Lengths, unit), Say.Length(given.Card.Best, unit),
        ])]);

    private static Table PieceRows(Analysis analysis, List<Outing> outings, Names names, LengthUnit unit)
    {
        Dictionary<Guid, AdjustedPiece> adjusted = analysis.Curve.Pieces.DistinctBy(piece => piece.PieceId)
            .ToDictionary(piece => piece.PieceId);
        return new Table(
            "Every piece. Adjusted: speed against the best length, all but length taken out, where the piece is on the curve above",
            [new("Outing"), new("Piece", true), new("Paddle"), new("Length", true), new("Distance", true), new("Time", true),
                new("Pace", true), new("Effort", true), new("Sore", true), new("Adjusted", true), new("Counts")],
            [.. from outing in outings
                from piece in outing.Pieces.OrderBy(piece => piece.Order)
                let found = adjusted.GetValueOrDefault(piece.Id)
                select (IReadOnlyList<string>)
                [
                    .. Row(outing, piece, names, unit),
                    found is null ? Say.Nothing : Say.Difference(found.Percent) + "%", Counts(piece, found),
                ]]);
    }

    private static string Counts(Piece piece, AdjustedPiece? adjusted) => piece.ExcludedBecause is { } reason
        ? $"no: {PlainText.Line(reason)}"
        : adjusted switch
        {
            { Weight: < ResponsePicture.LittleWeight } => $"little, {Say.Chance(adjusted.Weight)}: far off the rest",
            _ => "yes",
        };
}
