namespace TrialLog.Recordings.Csv;

/// <summary>What was stated about a paddler, a hull or a paddle, by column. Values are of the column's own type.</summary>
internal sealed class CsvFacts
{
    public static readonly CsvFacts None = new([]);

    private readonly Dictionary<CsvColumn, object> _values;

    public CsvFacts(Dictionary<CsvColumn, object> values) => _values = values;

    public IEnumerable<CsvColumn> Columns => _values.Keys;

    public object? this[CsvColumn column] => _values.GetValueOrDefault(column);

    public T? Value<T>(CsvColumn column) where T : struct => _values.TryGetValue(column, out object? value) ? (T)value : null;

    public string? Text(CsvColumn column) => (string?)this[column];
}
