namespace TrialLog.Logbook.Rows;

/// <summary>An id with a text that belongs to it.</summary>
internal sealed class TextOfId
{
    public string Id { get; init; } = "";
    public string Text { get; init; } = "";
}

/// <summary>How many of something there are of a paddler, or of a paddler with a paddle.</summary>
internal sealed class CountRow
{
    public string PaddlerId { get; init; } = "";
    public string PaddleId { get; init; } = "";
    public int Count { get; init; }
}

/// <summary>A column of a table.</summary>
internal sealed class ColumnRow
{
    public string Name { get; init; } = "";
    public bool Required { get; init; }
    public string? Initially { get; init; }
}

/// <summary>A reference to a row that is not there.</summary>
internal sealed class LostReferenceRow
{
    public string Table { get; init; } = "";
    public string Parent { get; init; } = "";
}

/// <summary>An edit that a field's value builds upon.</summary>
internal sealed class EditRow
{
    public string RowId { get; init; } = "";
    public string Field { get; init; } = "";
    public long Edit { get; init; }
}
