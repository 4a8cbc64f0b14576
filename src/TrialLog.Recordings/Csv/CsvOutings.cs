using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>Puts rows together into outings, and finds those that the logbook holds already.</summary>
internal sealed class CsvOutings
{
    private readonly KnownOutings _known;
    private readonly CsvNames _names;
    private readonly Func<Guid> _newId;
    private CappedList<string> _warnings;
    private CappedList<CsvProblem> _problems;
    private readonly Dictionary<OutingKey, List<NamedRow>> _groups = [];

    public CsvOutings(KnownLog known, CsvNames names, Func<Guid> newId, CappedList<string> warnings, CappedList<CsvProblem> problems)
    {
        _known = new KnownOutings(known);
        (_names, _newId, _warnings, _problems) = (names, newId, warnings, problems);
    }

    public int Added { get; private set; }

    public int AlreadyThere { get; private set; }

    /// <summary>Takes the rows; a row that is there twice is refused.</summary>
    public void Add(IReadOnlyList<NamedRow> rows)
    {
        var lineOf = new Dictionary<UInt128, int>();
        foreach (NamedRow row in rows)
        {
            if (row.Row.Piece is not null && !lineOf.TryAdd(row.Row.Print, row.Row.Line))
            {
                Refuse(row, null, $"The row is the same as line {lineOf[row.Row.Print]}; remove one, or number them in the column " +
                    $"piece if they are two pieces.");
                continue;
            }

            var key = OutingKey.Of(row.Paddler, row.Row.Date!.Value, row.Row.Outing, row.Hull);
            if (!_groups.TryGetValue(key, out List<NamedRow>? group))
                _groups[key] = group = [];
            group.Add(row);
        }
    }

    /// <summary>
    /// The outings of the rows that say something new, one after the other, so that they need not be held; with other ids each time.
    /// What is warned of and refused is said the first time.
    /// </summary>
    public IEnumerable<(Outing Outing, bool IsNew)> All()
    {
        (Added, AlreadyThere) = (0, 0);
        foreach ((OutingKey key, List<NamedRow> group) in _groups)
        {
            foreach (List<NamedRow> rows in key.Label.Length == 0 ? ByStart(group) : [group])
            {
                if (Of(key, rows) is { } found)
                    yield return found;
            }
        }

        (_warnings, _problems) = (new(0), new(0));
    }

    /// <summary>Rows without a label are one outing for each start time; a row without a time belongs to the row before it.</summary>
    private static IEnumerable<List<NamedRow>> ByStart(List<NamedRow> rows)
    {
        List<TimeOnly> times = [.. rows.Select(row => row.Row.StartTime).OfType<TimeOnly>().Distinct()];
        if (times.Count < 2)
            return [rows];
        TimeOnly last = times[0];
        return rows.GroupBy(row => last = row.Row.StartTime ?? last).Select(group => group.ToList());
    }

    private (Outing, bool)? Of(OutingKey key, List<NamedRow> rows)
    {
        IReadOnlyList<Outing> candidates = _known.Under(key);
        TimeOnly? start = rows.Select(row => row.Row.StartTime).FirstOrDefault(time => time is not null);
        if (key.Label.Length == 0 && start is { } time)
            candidates = [.. candidates.Where(outing => outing.Time is null || outing.Time == time)];
        if (candidates.Count > 1)
        {
            foreach (NamedRow row in rows.Where(row => row.Row.Piece is not null && !CountIfThere(row, null)))
                Refuse(row, CsvColumn.Outing, "The logbook has several outings in this hull on that day; say which by its label, " +
                    "or by its start_time.");
            return null;
        }

        var draft = new OutingDraft(candidates.Count == 0 ? null : candidates[0], rows[0], _names, _newId);
        foreach (NamedRow row in rows)
        {
            if (!row.Hull.Equals(draft.Hull.Name, StringComparison.OrdinalIgnoreCase))
                Refuse(row, CsvColumn.Hull, $"The outing “{Quoted.Brief(row.Row.Outing)}” of {row.Row.Date:yyyy-MM-dd} is in " +
                    $"{draft.Hull.Name}; give an outing in another hull another label.");
            else if (row.Row.Piece is null)
                draft.TakeConditions(row);
            else if (!CountIfThere(row, draft) && draft.Take(row) is { } problem)
                Refuse(row, problem.Column, problem.Reason);
        }

        Outing? outing = draft.Finish(_warnings);
        if (outing is null)
            return null;
        Added += draft.Added;
        return (outing, draft.IsNew);
    }

    private bool CountIfThere(NamedRow row, OutingDraft? draft)
    {
        bool there = _known.HasTakenIn(row.Row) || draft?.Holds(row, _warnings) == true;
        if (there)
            AlreadyThere++;
        return there;
    }

    private void Refuse(NamedRow row, CsvColumn? column, string reason) => _problems.Add(new(row.Row.Line, column?.Name(), reason));
}
