using TrialLog.Domain.Values;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>
/// An outing as a recording tells it: when, and its pieces as found, to be corrected and then saved. Immutable: each
/// correction gives a new one. It holds no coordinates.
/// </summary>
public sealed partial record RecordedOuting
{
    private readonly PieceFinder finder;

    internal RecordedOuting(Track track, WatchMarks marks)
    {
        Track = track;
        finder = new PieceFinder(track, marks);
        HasPressedLaps = marks.Presses.Count > 0;
        HasSteps = marks.Steps.Count > 0;
        Readings = finder.Readings();
        Shape = Readings[0].Shape;
        Proposals = Readings[0].Proposals;
        Presses = [.. marks.Presses.Select(at => TimeSpan.FromSeconds(track.Seconds[at]))];
    }

    /// <summary>The name of the file, for messages.</summary>
    public required string FileName { get; init; }

    /// <summary>Which of the file's outings it is, by time, from 1.</summary>
    public int Number { get; init; } = 1;

    /// <summary>Its format, told by its content.</summary>
    public required RecordingFormat Format { get; init; }

    /// <summary>SHA-256 of the unpacked bytes, lower-case hexadecimals: the same for a file and its gzipped copy.</summary>
    public required string Hash { get; init; }

    /// <summary>When the recording began, in local time with its offset from UTC; see <see cref="ClockNote"/>.</summary>
    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>How the local time was told, one plain sentence.</summary>
    public required string ClockNote { get; init; }

    /// <summary>The outing begun at another local time, as the user says.</summary>
    public RecordedOuting StartingAt(DateTime local) => this with
    {
        StartedAt = new DateTimeOffset(DateTime.SpecifyKind(local, DateTimeKind.Unspecified), StartedAt.Offset),
        ClockNote = "Local time as you said.",
        Confirmed = [.. Confirmed, QuestionKind.Clock],
    };

    /// <summary>The day on the water, local.</summary>
    public DateOnly Date => DateOnly.FromDateTime(StartedAt.DateTime);

    /// <summary>When it began, local, to the minute.</summary>
    public TimeOnly Time => new(StartedAt.Hour, StartedAt.Minute);

    /// <summary>How long the recording lasts.</summary>
    public TimeSpan Duration => TimeSpan.FromSeconds(Track.Seconds[^1]);

    /// <summary>What had to be mended, counted.</summary>
    public required Mended Mended { get; init; }

    /// <summary>Whether the paddler pressed for laps, which then set the pieces' edges.</summary>
    public bool HasPressedLaps { get; }

    /// <summary>Whether the watch led through a workout, whose steps then are the pieces.</summary>
    public bool HasSteps { get; }

    /// <summary>When the paddler pressed for a lap, since the recording's start.</summary>
    public IReadOnlyList<TimeSpan> Presses { get; }

    /// <summary>Every piece found, in order, with those that are left out.</summary>
    public IReadOnlyList<PieceProposal> Proposals { get; private init; }

    /// <summary>What is in doubt about the recording itself, apart from its pieces.</summary>
    internal IReadOnlyList<RecordingQuestion> Doubts { get; init; } = [];

    /// <summary>The outing before the last correction; null where nothing was corrected.</summary>
    public RecordedOuting? Before { get; private init; }

    /// <summary>The pieces that count, in order.</summary>
    public IReadOnlyList<PieceProposal> Kept => [.. Proposals.Where(p => p.Kept)];

    /// <summary>
    /// The current along the course, m/s, positive with the first leg of the first piece; in order. Of each round trip that counts; where
    /// there is none, of each two neighbours that went opposite ways.
    /// </summary>
    public IReadOnlyList<double> Currents
    {
        get
        {
            IReadOnlyList<PieceProposal> kept = Kept;
            (Heading Way, double Current)[] all = [.. kept.Where(p => p.CurrentMetresPerSecond is not null)
                .Select(p => (Way(p), p.CurrentMetresPerSecond!.Value))];
            if (all.Length == 0)
                all = [.. kept.Zip(kept.Skip(1)).Where(two => Way(two.First).Cosine(Way(two.Second)) <= -Directions.SameWayCosine)
                    .Select(two => (Way(two.First), (two.First.MetresPerSecond - two.Second.MetresPerSecond) / 2))];
            return [.. all.Select(one => one.Current * (one.Way.Cosine(all[0].Way) < 0 ? -1 : 1))];

            Heading Way(PieceProposal piece) => Track.Between(Index(piece.Legs[0].Start), Index(piece.Legs[0].End));
        }
    }

    /// <summary>The mended track.</summary>
    internal Track Track { get; }

    /// <summary>Speed over time for a plot: about <paramref name="most"/> means over equal times, from the start to the end.</summary>
    /// <param name="most">The most points, 2 or more.</param>
    public IReadOnlyList<SpeedPoint> SpeedSeries(int most)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 2);
        double width = Math.Max(1, (Track.Seconds[^1] + 1) / most);
        var sums = new double[most];
        var counts = new int[most];
        for (int i = 0; i < Track.Count; i++)
        {
            int cell = Math.Min(most - 1, (int)(Track.Seconds[i] / width));
            sums[cell] += Track.Speed[i];
            counts[cell]++;
        }

        int cells = Math.Min(most, (int)Math.Ceiling((Track.Seconds[^1] + 1) / width));
        return [.. Enumerable.Range(0, cells).Select(i =>
            new SpeedPoint(TimeSpan.FromSeconds((i + 0.5) * width), counts[i] > 0 ? sums[i] / counts[i] : null))];
    }
}
