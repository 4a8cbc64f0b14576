using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook.Exchange;

/// <summary>A shared record that was read and found valid throughout. The format is described in <c>docs/logbook.md</c>.</summary>
public sealed class SharedRecord
{
    internal SharedRecord(SharedContents contents) => Contents = contents;

    internal SharedContents Contents { get; }

    /// <summary>When it was written (UTC).</summary>
    public DateTimeOffset WrittenAt => Contents.WrittenAt;

    /// <summary>The names of the paddlers in it.</summary>
    public IReadOnlyList<string> PaddlerNames => [.. Contents.Paddlers.Select(paddler => paddler.Name)];

    /// <summary>How many outings it holds.</summary>
    public int OutingCount => Contents.Outings.Count;

    /// <summary>How many pieces it holds.</summary>
    public int PieceCount => Contents.Outings.Sum(outing => outing.Pieces?.Count ?? 0);

    /// <summary>What its writer left out, by name: <c>notes</c>, <c>heart_rate</c>, <c>body_measures</c>.</summary>
    public IReadOnlyList<string> LeftOutNames => Contents.LeftOut ?? [];
}
