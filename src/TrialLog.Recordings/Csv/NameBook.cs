using TrialLog.Domain.Log;

namespace TrialLog.Recordings.Csv;

/// <summary>The paddlers, or hulls, or paddles that a file names, beside those that a logbook knows. Names do not differ by case.</summary>
/// <typeparam name="T">What is named.</typeparam>
internal sealed class NameBook<T>(string kind, IEnumerable<T> known, Func<T, string> nameOf, Func<T, CsvFacts> factsOf) where T : class
{
    private const int MostCompared = 300;

    private readonly Dictionary<string, T> _things = known.ToDictionary(nameOf, StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, Dictionary<CsvColumn, object>> _stated = new(StringComparer.OrdinalIgnoreCase);
    private readonly CloseNames _close = new(known.Select(nameOf));
    private readonly List<string> _new = [];
    private readonly HashSet<string> _described = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _newNames = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Names that the logbook does not know, in the order of the file.</summary>
    public IReadOnlyList<string> New => _new;

    /// <summary>Notes which names the file describes, as an export does with each: such a name is no slip.</summary>
    public void Hear(string? name, IReadOnlyList<CsvColumn> columns, CsvFacts facts)
    {
        if (name is not null && columns.Any(column => facts[column] is not null))
            _described.Add(name);
    }

    /// <summary>The name of the logbook for which that one is likely a slip; null if it is none.</summary>
    public string? MeantFor(string name) => _described.Contains(name) ? null : _close.To(name);

    /// <summary>
    /// The first of the new names of the file that is much like that one; a file with very many names is not looked through.
    /// </summary>
    public string? AlikeBefore(string name) =>
        _new.Count > MostCompared ? null
            : new CloseNames(_new.TakeWhile(other => !other.Equals(name, StringComparison.OrdinalIgnoreCase))).To(name);

    /// <summary>Whether the logbook does not know that name.</summary>
    public bool IsNew(string name) => _newNames.Contains(name);

    /// <summary>
    /// Notes that a row names it, and what the row states about it; what contradicts an earlier row or the logbook is left aside, what the
    /// logbook does not know is taken in.
    /// </summary>
    public void Mention(string name, IReadOnlyList<CsvColumn> columns, CsvRow row, CappedList<string> warnings)
    {
        if (!_stated.TryGetValue(name, out Dictionary<CsvColumn, object>? stated))
        {
            _stated[name] = stated = [];
            if (!_things.ContainsKey(name) && _newNames.Add(name))
                _new.Add(name);
        }

        if (row.Facts == CsvFacts.None)
            return;
        CsvFacts? before = _things.TryGetValue(name, out T? thing) ? factsOf(thing) : null;
        foreach (CsvColumn column in columns)
        {
            if (row.Facts[column] is not { } value)
                continue;
            string what = $"Line {row.Line}: {column.Name()} {CsvLogWriter.Cell(value)} of {kind} “{name}”";
            if (before?[column] is { } has)
            {
                if (!Same(has, value))
                    warnings.Add($"{what} is left aside; the logbook has {CsvLogWriter.Cell(has)}.");
            }
            else if (stated.TryAdd(column, value))
            {
                if (before is not null)
                    warnings.Add($"{what} is taken in; the logbook had none.");
            }
            else if (!Same(stated[column], value))
            {
                warnings.Add($"{what} is left aside; an earlier row says {CsvLogWriter.Cell(stated[column])}.");
            }
        }
    }

    /// <summary>Everything known and added.</summary>
    public IEnumerable<T> All => _things.Values;

    /// <summary>What the file states about it.</summary>
    public CsvFacts Stated(string name) =>
        _stated.TryGetValue(name, out Dictionary<CsvColumn, object>? stated) ? new CsvFacts(stated) : CsvFacts.None;

    /// <summary>Things of the logbook about which the file states what the logbook does not know, with both together.</summary>
    public IEnumerable<(T Thing, CsvFacts Facts)> Filled() =>
        from stated in _stated
        where stated.Value.Count > 0 && !_newNames.Contains(stated.Key)
        let thing = _things[stated.Key]
        let before = factsOf(thing)
        select (
            thing, new CsvFacts(new(stated.Value.Concat(before.Columns.Select(column => KeyValuePair.Create(column, before[column]!))))));

    /// <summary>Adds a thing that was <see cref="New"/>.</summary>
    public void Add(string name, T thing) => _things.Add(name, thing);

    /// <summary>The thing of that name.</summary>
    public T this[string name] => _things[name];

    private static bool Same(object? a, object b) =>
        a is string one && b is string other ? one.Equals(other, StringComparison.OrdinalIgnoreCase) : b.Equals(a);
}
