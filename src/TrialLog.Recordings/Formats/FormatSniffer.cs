using TrialLog.Domain.Values;
using TrialLog.Recordings.Files;

namespace TrialLog.Recordings.Formats;

/// <summary>Tells formats apart by what is in the file; names lie.</summary>
internal static class FormatSniffer
{
    /// <summary>The format of these bytes.</summary>
    /// <exception cref="RecordingException">It is none that can be read.</exception>
    public static RecordingFormat Sniff(ArraySegment<byte> bytes)
    {
        if (bytes.Count == 0)
            throw new RecordingException("the file is empty; copy it again from the watch.");
        if (IsFit(bytes))
            return RecordingFormat.Fit;
        if (IsXml(bytes))
        {
            string root = XmlDocumentReader.RootName(bytes);
            if (root == "gpx")
                return RecordingFormat.Gpx;
            if (root == "TrainingCenterDatabase")
                return RecordingFormat.Tcx;
        }

        throw new RecordingException("this is no GPX, TCX or FIT recording; export the outing from the watch in one of these formats.");
    }

    /// <summary>Whether a FIT header starts here: its size, then <c>.FIT</c> from the ninth byte.</summary>
    public static bool IsFit(ReadOnlySpan<byte> beginning) =>
        beginning.Length >= 12 && beginning[0] >= 12 && beginning.Slice(8, 4).SequenceEqual(".FIT"u8);

    /// <summary>Whether the first thing said, after a byte order mark and white space, is an angle bracket.</summary>
    public static bool IsXml(ReadOnlySpan<byte> beginning)
    {
        foreach (byte b in beginning)
        {
            if (b == '<')
                return true;
            if (b is not (0xEF or 0xBB or 0xBF or 0xFE or 0xFF or 0 or (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n'))
                return false;
        }

        return false;
    }
}
