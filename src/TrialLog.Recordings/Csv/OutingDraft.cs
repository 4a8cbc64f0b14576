using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>An outing while its rows are gathered: a new one, or one of the logbook to which pieces are added.</summary>
internal sealed class OutingDraft
{
    private readonly Outing? _existing;
    private readonly NamedRow _first;
    private readonly CsvNames _names;
    private readonly Func<Guid> _newId;
    private readonly List<NamedRow> _pieces = [];
    private readonly List<CsvRow> _conditions = [];
    private readonly Dictionary<int, int> _lineOfOrder = [];

    public OutingDraft(Outing? existing, NamedRow first, CsvNames names, Func<Guid> newId)
    {
        (_existing, _first, _names, _newId) = (existing, first, names, newId);
        Hull = existing is null ? names.Hulls[first.Hull] : names.Hulls.All.First(hull => hull.Id == existing.HullId);
    }

    /// <summary>The outing's hull.</summary>
    public Hull Hull { get; }

    /// <summary>Whether the logbook does not hold the outing.</summary>
    public bool IsNew => _existing is null;

    /// <summary>How many pieces are added.</summary>
    public int Added => _pieces.Count;

    /// <summary>
    /// Whether the logbook's outing holds the row's piece; one that has the same origin but other values is left as it is, with a warning.
    /// </summary>
    public bool Holds(NamedRow row, CappedList<string> warnings)
    {
        CsvPiece piece = row.Row.Piece!;
        foreach (Piece held in _existing?.Pieces ?? [])
        {
            if (piece.Order is { } order && order != held.Order)
                continue;
            if (KnownOutings.HasValuesOf(held, piece) && held.PaddleId == _names.Paddles[row.Paddle!].Id)
                return true;
            if (piece.Origin is not null && piece.Origin == held.Origin && piece.Order is not null)
            {
                warnings.Add($"Line {row.Row.Line}: piece {held.Order} of that outing is in the logbook with other values " +
                    $"({held.Length}, {held.Distance} in {held.Time}); it was not changed. Edit it in the logbook.");
                return true;
            }
        }

        return false;
    }

    /// <summary>Takes a row's piece; what stands against it, if anything does.</summary>
    public (CsvColumn Column, string Reason)? Take(NamedRow row)
    {
        CsvPiece piece = row.Row.Piece!;
        Paddle paddle = _names.Paddles[row.Paddle!];
        if (!paddle.Reaches(piece.Length))
            return (CsvColumn.LengthIn, $"{piece.Length} is outside the range of paddle “{paddle.Name}”, {paddle.Shortest} to " +
                $"{paddle.Longest}; correct the length, or widen the paddle's range first.");
        if (piece.Order is { } order)
        {
            if (_existing?.Pieces.FirstOrDefault(held => held.Order == order) is { } held)
                return (CsvColumn.Piece, $"The logbook has a piece {order} in that outing with other values ({held.Length}, " +
                    $"{held.Distance} in {held.Time}); edit it in the logbook, or number this one differently.");
            if (!_lineOfOrder.TryAdd(order, row.Row.Line))
                return (CsvColumn.Piece, $"Piece {order} of that outing is on line {_lineOfOrder[order]} already; number " +
                    $"this one differently.");
        }

        _pieces.Add(row);
        _conditions.Add(row.Row);
        return null;
    }

    /// <summary>Takes the outing's conditions from a row without a piece.</summary>
    public void TakeConditions(NamedRow row) => _conditions.Add(row.Row);

    /// <summary>The outing with what was taken; null where that is nothing.</summary>
    public Outing? Finish(CappedList<string> warnings)
    {
        if (_existing is null ? _conditions.Count == 0 : _pieces.Count == 0)
            return null;
        Outing outing = _existing ?? new Outing
        {
            Id = _newId(),
            PaddlerId = _names.Paddlers[_first.Paddler].Id,
            HullId = Hull.Id,
            Date = _first.Row.Date!.Value,
            Label = _first.Row.Outing,
        };
        outing = outing with
        {
            Time = outing.Time ?? First(row => row.StartTime),
            Wind = outing.Wind ?? First(row => row.Wind),
            Place = outing.Place ?? FirstText(row => row.Place),
            Water = outing.Water ?? FirstText(row => row.Water),
            Notes = outing.Notes ?? FirstText(row => row.OutingNotes),
            Blind = outing.Blind || (IsNew && First(row => row.Blind) == true),
        };
        HashSet<int> taken = [.. _lineOfOrder.Keys, .. outing.Pieces.Select(piece => piece.Order)];
        int order = outing.Pieces.Select(piece => piece.Order).DefaultIfEmpty(0).Max();
        List<Piece> pieces = [.. outing.Pieces];
        foreach (NamedRow row in _pieces)
        {
            if (row.Row.Piece!.Order is { } given)
            {
                order = given;
            }
            else
            {
                do
                    order++;
                while (!taken.Add(order));
            }

            pieces.Add(PieceOf(row, order, outing, warnings));
        }

        return outing with { Pieces = [.. pieces.OrderBy(piece => piece.Order)] };
    }

    private Piece PieceOf(NamedRow row, int order, Outing outing, CappedList<string> warnings)
    {
        CsvPiece piece = row.Row.Piece!;
        return new Piece
        {
            Id = _newId(),
            Order = order,
            PaddleId = _names.Paddles[row.Paddle!].Id,
            Length = piece.Length,
            Distance = piece.Distance,
            Time = piece.Time,
            Effort = piece.Effort,
            HeartRate = piece.HeartRate,
            StrokeRate = piece.StrokeRate,
            Course = piece.Course,
            Soreness = piece.Soreness,
            FadePercent = piece.FadePercent,
            TimedBy = piece.TimedBy,
            SpeedErrorPercent = piece.SpeedErrorPercent,
            ExcludedBecause = piece.ExcludedBecause,
            Notes = WithOddConditions(piece.Notes, row.Row, outing, warnings),
            Origin = piece.Origin ?? row.Row.Fingerprint,
        };
    }

    /// <summary>An outing has one set of conditions; what a row says otherwise is kept in its piece's notes.</summary>
    private static string? WithOddConditions(string? notes, CsvRow row, Outing outing, CappedList<string> warnings)
    {
        Keep(CsvColumn.Wind, row.Wind, outing.Wind);
        Keep(CsvColumn.StartTime, row.StartTime, outing.Time);
        Keep(CsvColumn.Place, row.Place, outing.Place);
        Keep(CsvColumn.Water, row.Water, outing.Water);
        Keep(CsvColumn.OutingNotes, row.OutingNotes, outing.Notes);
        if (row.Blind == true)
            Keep(CsvColumn.Blind, true, outing.Blind);
        return notes;

        void Keep(CsvColumn column, object? said, object? holds)
        {
            if (said is null || said.Equals(holds))
                return;
            string odd = $"{column.Name()}: {CsvLogWriter.Cell(said)}";
            string longer = notes is null ? odd : $"{notes}; {odd}";
            bool fits = longer.Length <= NoteRule.Longest;
            notes = fits ? longer : notes;
            warnings.Add($"Line {row.Line}: {Quoted.Brief(odd)} differs from the rest of the outing " +
                $"({Quoted.Brief(holds is null ? "none" : CsvLogWriter.Cell(holds))}); "
                + (fits ? "kept in the piece's notes." : "left aside, since the piece's notes are full."));
        }
    }

    private T? First<T>(Func<CsvRow, T?> part) where T : struct => _conditions.Select(part).FirstOrDefault(value => value is not null);

    private string? FirstText(Func<CsvRow, string?> part) => _conditions.Select(part).FirstOrDefault(value => value is not null);
}
