using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>What an import is told besides the file.</summary>
public sealed record CsvReadOptions
{
    /// <summary>The day of the import. A row may be dated one day later at most, since somewhere it already is tomorrow.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>The unit that new paddlers read and type lengths in, and that the range of a new paddle is rounded to.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Inches;

    /// <summary>Whether the good rows are taken when others are refused. If not, one wrong row means that nothing is added.</summary>
    public bool SkipBad { get; init; }

    /// <summary>
    /// Whether a name that is close to one of the logbook's is taken as new. If not, its rows are refused: it is more likely a slip.
    /// </summary>
    public bool NewNames { get; init; }

    /// <summary>Whose rows they are where a row does not say; null for the only paddler there is.</summary>
    public string? Paddler { get; init; }

    /// <summary>Which paddle it was where a row does not say; null for the only paddle there is.</summary>
    public string? Paddle { get; init; }
}
