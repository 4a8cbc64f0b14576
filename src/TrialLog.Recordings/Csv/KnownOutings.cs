using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>What makes rows one outing: paddler, day, and the label, or where there is none the hull.</summary>
internal readonly record struct OutingKey(string Paddler, DateOnly Date, string Label, string Hull)
{
    public static OutingKey Of(string paddler, DateOnly date, string label, string hull) =>
        new(paddler.ToUpperInvariant(), date, label.ToUpperInvariant(), label.Length == 0 ? hull.ToUpperInvariant() : "");
}

/// <summary>The outings of a logbook, found again by what a file says of them.</summary>
internal sealed class KnownOutings
{
    private readonly Dictionary<OutingKey, List<Outing>> _byKey = [];
    private readonly Dictionary<string, List<(Outing Outing, Piece Piece)>> _byOrigin = [];

    public KnownOutings(KnownLog known)
    {
        Dictionary<Guid, string> paddlers = known.Paddlers.ToDictionary(paddler => paddler.Id, paddler => paddler.Name);
        Dictionary<Guid, string> hulls = known.Hulls.ToDictionary(hull => hull.Id, hull => hull.Name);
        IReadOnlyDictionary<Guid, string> labels = OutingLabels.Of(known.Outings);
        foreach (Outing outing in known.Outings)
        {
            var key = OutingKey.Of(paddlers[outing.PaddlerId], outing.Date, labels[outing.Id], hulls[outing.HullId]);
            Into(_byKey, key).Add(outing);
            foreach (Piece piece in outing.Pieces)
            {
                if (piece.Origin is { } origin)
                    Into(_byOrigin, origin).Add((outing, piece));
            }
        }
    }

    /// <summary>Outings under that key; several only where their start times tell them apart.</summary>
    public IReadOnlyList<Outing> Under(OutingKey key) => _byKey.GetValueOrDefault(key) ?? [];

    /// <summary>
    /// Whether the row was imported before, whatever has been changed in the logbook since; or its piece came into this
    /// logbook by another way (a recording, an earlier export) under the same origin.
    /// </summary>
    public bool HasTakenIn(CsvRow row) =>
        _byOrigin.ContainsKey(row.Fingerprint)
        || (row.Piece?.Origin is { } origin && _byOrigin.TryGetValue(origin, out List<(Outing Outing, Piece Piece)>? pieces)
            && pieces.Any(one => one.Outing.Date == row.Date && HasValuesOf(one.Piece, row.Piece)));

    /// <summary>Whether length, distance and time are the same.</summary>
    public static bool HasValuesOf(Piece piece, CsvPiece row) =>
        piece.Length == row.Length && piece.Distance == row.Distance && piece.Time == row.Time;

    private static List<TValue> Into<TKey, TValue>(Dictionary<TKey, List<TValue>> lists, TKey key) where TKey : notnull
    {
        if (!lists.TryGetValue(key, out List<TValue>? list))
            lists[key] = list = [];
        return list;
    }
}
