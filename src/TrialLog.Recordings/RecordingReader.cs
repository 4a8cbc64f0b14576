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

    /// <summary>Reads a recording to its end and finds its pieces. Nothing is kept of where it was.</summary>
    /// <param name="stream">The file's bytes.</param>
    /// <param name="fileName">Its name, for messages only.</param>
    /// <param name="home">The user's time zone, for the local time where the file tells only UTC; null: by the sun.</param>
    /// <exception cref="RecordingException">It cannot be read; one sentence for the user says why and what to do.</exception>
    public static RecordedOuting Read(Stream stream, string fileName, TimeZoneInfo? home = null)
    {
        string name = Quoted.Brief(Path.GetFileName(fileName), 60);
        try
        {
            ArraySegment<byte> bytes = FileBytes.ReadAll(stream);
            RecordingFormat format = FormatSniffer.Sniff(bytes);
            Recording recording = format switch
            {
                RecordingFormat.Gpx => GpxFormat.Read(bytes),
                RecordingFormat.Tcx => TcxFormat.Read(bytes),
                _ => FitFormat.Read(bytes),
            };
            string hash = FileBytes.Hash(bytes);
            (Track track, double start, double longitude, Mended mended) = TrackMaker.Make(recording);
            (DateTimeOffset startedAt, string note) = LocalClock.Choose(start, recording.Offset, longitude, home);
            return new RecordedOuting(track, WatchMarks.Of(recording, start, track))
            {
                FileName = name,
                Format = format,
                Hash = hash,
                StartedAt = startedAt,
                ClockNote = note,
                Mended = mended,
            };
        }
        catch (RecordingException e)
        {
            throw new RecordingException($"“{name}”: {e.Message}", e.InnerException ?? e);
        }
    }
}
