using System.Text;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Formats.Fit;
using TrialLog.Recordings.Pieces;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings;

/// <summary>Reads recordings of outings: GPX, TCX and FIT, also gzipped, told apart by their content.</summary>
public static class RecordingReader
{
    /// <summary>
    /// Whether a file that starts like this is to be read as a recording rather than as a table: gzipped, FIT or XML.
    /// A dozen bytes are enough.
    /// </summary>
    public static bool LooksLikeRecording(ReadOnlySpan<byte> beginning) =>
        FileBytes.IsGzip(beginning) || FormatSniffer.IsFit(beginning) || FormatSniffer.IsXml(beginning);

    /// <summary>Reads the recording of one outing; see <see cref="ReadAll"/>.</summary>
    /// <exception cref="RecordingException">It cannot be read, or holds several outings.</exception>
    public static RecordedOuting Read(Stream stream, string fileName, TimeZoneInfo? home = null) =>
        ReadAll(stream, fileName, home) is [var only] ? only
        : throw new RecordingException($"“{Name(fileName)}”: it holds several outings; say which.");

    /// <summary>
    /// Reads a recording to its end and finds its outings, apart by more than two hours, and their pieces. Nothing is kept of where they
    /// were.
    /// </summary>
    /// <param name="stream">The file's bytes.</param>
    /// <param name="fileName">Its name, for messages only.</param>
    /// <param name="home">The user's time zone, for the local time where the file tells only UTC; null: by the sun.</param>
    /// <param name="evenIfCutOff">Whether to take what is whole of a file whose end is missing
    /// (<see cref="RecordingException.CanTakeWhatIsWhole"/>).</param>
    /// <returns>At least one, by time.</returns>
    /// <exception cref="RecordingException">It cannot be read; one sentence for the user says why and what to do.</exception>
    public static IReadOnlyList<RecordedOuting> ReadAll(
        Stream stream, string fileName, TimeZoneInfo? home = null, bool evenIfCutOff = false)
    {
        string name = Name(fileName);
        try
        {
            ArraySegment<byte> bytes = FileBytes.ReadAll(stream);
            RecordingFormat format = FormatSniffer.Sniff(bytes);
            Recording recording = format switch
            {
                RecordingFormat.Gpx => GpxFormat.Read(bytes),
                RecordingFormat.Tcx => TcxFormat.Read(bytes),
                _ => FitFormat.Read(bytes, evenIfCutOff),
            };
            string hash = FileBytes.Hash(bytes);
            IReadOnlyList<Recording> parts = RecordingParts.Of(recording);
            return [.. parts.Select((part, i) => Outing(part, name, format, parts.Count == 1 ? hash : HashOfPart(hash, part), home) with
            {
                Number = i + 1,
            })];
        }
        catch (RecordingException e)
        {
            throw new RecordingException($"“{name}”: {e.Message}", e.InnerException ?? e) { CanTakeWhatIsWhole = e.CanTakeWhatIsWhole };
        }
    }

    private static RecordedOuting Outing(Recording recording, string name, RecordingFormat format, string hash, TimeZoneInfo? home)
    {
        (Track track, double start, double latitude, double longitude, Mended mended) = TrackMaker.Make(recording);
        (DateTimeOffset startedAt, string note) = LocalClock.Choose(start, recording.Offset, longitude, home);
        var doubts = new List<RecordingQuestion>();
        if (mended.IsCutOff)
            doubts.Add(
                new RecordingQuestion(QuestionKind.CutOff, "The end of the file is missing, so a piece may be too. Take what is whole?",
                CanBeConfirmed: true));
        if (Sports.IsNoPaddling(recording.Sport))
            doubts.Add(
                new RecordingQuestion(QuestionKind.Sport, $"The recording says that it is of {recording.Sport}. Was it paddled?",
                CanBeConfirmed: true));
        if (LocalClock.Doubt(startedAt, track.Seconds[^1], latitude, longitude) is { } clock)
            doubts.Add(clock);
        return new RecordedOuting(track, WatchMarks.Of(recording, start, track))
        {
            FileName = name,
            Format = format,
            Hash = hash,
            StartedAt = startedAt,
            ClockNote = note,
            Mended = mended,
            Doubts = doubts,
        };
    }

    private static string HashOfPart(string file, Recording part) =>
        FileBytes.Hash(Encoding.ASCII.GetBytes($"{file} {part.Samples[0].Time:0}"));

    private static string Name(string fileName) => Quoted.Brief(Path.GetFileName(fileName), 60);
}
