using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Rows;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook.Exchange;

/// <summary>For each record and field, the edits that its value builds upon.</summary>
internal sealed class EditSets
{
    private static readonly IReadOnlySet<long> None = new HashSet<long>();

    private readonly Dictionary<Guid, Dictionary<string, HashSet<long>>> _sets = [];

    /// <summary>What a logbook knows.</summary>
    public static EditSets Of(SqliteConnection connection)
    {
        var sets = new EditSets();
        foreach (EditRow row in connection.Query<EditRow>("""
            WITH undone AS (SELECT number FROM changes WHERE merged AND state IN ('taken back', 'gone'))
            SELECT row_id, field, edit FROM edits
            WHERE change NOT IN undone AND (forgotten IS NULL OR forgotten IN undone)
            """, buffered: false))
            sets.Add(Guid.Parse(row.RowId), row.Field, row.Edit);
        return sets;
    }

    /// <summary>The records that were ever edited.</summary>
    public IEnumerable<Guid> Ids => _sets.Where(record => record.Value.Keys.Any(name => name != RecordFields.Origin))
        .Select(record => record.Key);

    /// <summary>The edits that a field builds upon; the field '' is whether the record is there.</summary>
    public IReadOnlySet<long> Of(Guid id, string field) =>
        _sets.TryGetValue(id, out var fields) && fields.TryGetValue(field, out HashSet<long>? edits) ? edits : None;

    /// <summary>The fields that were ever edited.</summary>
    public IEnumerable<string> Fields(Guid id) => _sets.TryGetValue(id, out var fields) ? fields.Keys : [];

    /// <summary>The edits of all fields together.</summary>
    public IReadOnlySet<long> All(Guid id) =>
        _sets.TryGetValue(id, out var fields)
            ? fields.Where(field => field.Key != RecordFields.Origin).SelectMany(field => field.Value).ToHashSet() : None;

    /// <summary>As it is written in a file; null where there is nothing.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>>? Written(Guid id) => _sets.TryGetValue(id, out var fields)
        ? fields.OrderBy(field => field.Key, StringComparer.Ordinal).ToDictionary(field => field.Key,
            field => (IReadOnlyList<string>)[.. field.Value.Order().Select(edit => edit.ToString("x16", CultureInfo.InvariantCulture))])
        : null;

    /// <summary>Takes in what a file says of a record.</summary>
    /// <exception cref="InvalidValueException">It is not written as edits are.</exception>
    public void Read(Guid id, IReadOnlyDictionary<string, IReadOnlyList<string>>? written)
    {
        foreach ((string field, IReadOnlyList<string> edits) in written ?? new Dictionary<string, IReadOnlyList<string>>())
        {
            foreach (string edit in edits)
            {
                if (edit is not { Length: 16 }
                    || !long.TryParse(edit, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out long number))
                    throw new InvalidValueException($"“{Quoted.Brief(edit)}” is not the number of an edit.");
                Add(id, field, number);
            }
        }
    }

    private void Add(Guid id, string field, long edit)
    {
        if (!_sets.TryGetValue(id, out var fields))
            _sets.Add(id, fields = []);
        if (!fields.TryGetValue(field, out HashSet<long>? edits))
            fields.Add(field, edits = []);
        edits.Add(edit);
    }
}
