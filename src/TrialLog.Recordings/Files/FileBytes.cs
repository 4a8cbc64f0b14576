using System.IO.Compression;
using System.Security.Cryptography;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Files;

/// <summary>The bytes of a file, unpacked where it was gzipped, never more than a set amount.</summary>
internal static class FileBytes
{
    /// <summary>
    /// The most bytes a recording may have, unpacked. A day at one sample a second is about 20 to 50 MB in the wordiest format.
    /// </summary>
    public const int Most = 96 * 1024 * 1024;

    /// <summary>Whether these first bytes are those of a gzipped file (RFC 1952).</summary>
    public static bool IsGzip(ReadOnlySpan<byte> beginning) => beginning is [0x1F, 0x8B, ..];

    /// <summary>Reads the stream to its end and unpacks it if it is gzipped.</summary>
    /// <exception cref="RecordingException">Too large, damaged, or the stream cannot be read.</exception>
    public static ArraySegment<byte> ReadAll(Stream stream)
    {
        try
        {
            ArraySegment<byte> raw = ReadBounded(stream, stream.CanSeek ? stream.Length - stream.Position : 0);
            if (!IsGzip(raw))
                return raw;
            using var packed = new MemoryStream(raw.Array!, raw.Offset, raw.Count, writable: false);
            using var unpacked = new GZipStream(packed, CompressionMode.Decompress);
            return ReadBounded(unpacked, raw.Count * 4L);
        }
        catch (InvalidDataException e)
        {
            throw new RecordingException("the gzipped file is damaged; copy it again from the watch or its service.", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new RecordingException("the file could not be read to its end; check the disk and try again.", e);
        }
    }

    /// <summary>
    /// SHA-256 of the unpacked bytes in lower-case hexadecimals, so that a file and its gzipped copy are the same recording.
    /// </summary>
    public static string Hash(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static ArraySegment<byte> ReadBounded(Stream stream, long expected)
    {
        if (expected > Most && stream is not GZipStream)
            throw TooLarge();
        // One more than expected, so that a stream of just that length ends without the buffer growing.
        byte[] buffer = new byte[Math.Clamp(expected + 1, 64 * 1024, Most + 1)];
        int filled = 0;
        while (true)
        {
            int read = stream.Read(buffer, filled, buffer.Length - filled);
            if (read == 0)
                return new ArraySegment<byte>(buffer, 0, filled);
            filled += read;
            if (filled > Most)
                throw TooLarge();
            if (filled == buffer.Length)
                Array.Resize(ref buffer, (int)Math.Min(buffer.Length * 2L, Most + 1));
        }
    }

    private static RecordingException TooLarge() =>
        new($"the recording is larger than {Most / (1024 * 1024)} MB unpacked, more than any outing; check that it is the right file.");
}
