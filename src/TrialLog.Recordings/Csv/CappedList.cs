namespace TrialLog.Recordings.Csv;

/// <summary>Keeps the first so many of what may be very many, and counts them all.</summary>
internal sealed class CappedList<T>(int most)
{
    private readonly List<T> _kept = [];

    /// <summary>How many there were.</summary>
    public int Count { get; private set; }

    /// <summary>The first of them.</summary>
    public IReadOnlyList<T> Kept => _kept;

    public void Add(T item)
    {
        Count++;
        if (_kept.Count < most)
            _kept.Add(item);
    }
}
