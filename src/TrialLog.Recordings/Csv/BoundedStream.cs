using System.Security.Cryptography;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>
/// Passes a stream through once, hashing what passes, letting its beginning be looked at first, and stopping at bounds on the whole and on
/// a line.
/// </summary>
internal sealed class BoundedStream : Stream
{
    // A row of 100 MB of separators would be a hundred million cells.
    private const long MostBytesALine = 2_000_000;

    private readonly Stream _inner;
    private readonly long _most;
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private readonly byte[] _beginning;
    private long _given, _sinceLineBreak;

    /// <summary>Wraps a stream and reads its beginning.</summary>
    /// <exception cref="InvalidValueException">The stream is known to be longer than <paramref name="most"/> bytes.</exception>
    public BoundedStream(Stream inner, long most, int beginning)
    {
        (_inner, _most) = (inner, most);
        if (inner.CanSeek && inner.Length - inner.Position > most)
            throw TooLong();
        byte[] buffer = new byte[beginning];
        int read = inner.ReadAtLeast(buffer, beginning, throwOnEndOfStream: false);
        _beginning = buffer[..read];
    }

    /// <summary>The first bytes of the stream.</summary>
    public ReadOnlySpan<byte> Beginning => _beginning;

    /// <summary>SHA-256 of everything that has been read.</summary>
    public string Hash() => Convert.ToHexStringLower(_hash.GetCurrentHash());

    public override int Read(Span<byte> buffer)
    {
        int read;
        if (_given < _beginning.Length)
        {
            ReadOnlySpan<byte> rest = _beginning.AsSpan((int)_given);
            read = Math.Min(rest.Length, buffer.Length);
            rest[..read].CopyTo(buffer);
        }
        else
        {
            read = _inner.Read(buffer);
        }

        _given += read;
        if (_given > _most)
            throw TooLong();
        int lineBreak = buffer[..read].LastIndexOfAny((byte)'\n', (byte)'\r');
        _sinceLineBreak = lineBreak < 0 ? _sinceLineBreak + read : read - 1 - lineBreak;
        if (_sinceLineBreak > MostBytesALine)
            throw new InvalidValueException(
                $"The file has a line of more than {MostBytesALine / 1_000_000} MB, so it cannot be a log; is it the file that you meant?");
        _hash.AppendData(buffer[..read]);
        return read;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    private InvalidValueException TooLong() =>
        new($"The file is larger than {_most / 1_000_000} MB, which is more than a logbook's worth; split it, by year for instance, " +
            $"and import the parts.");

    protected override void Dispose(bool disposing)
    {
        if (disposing)
            _hash.Dispose();
        base.Dispose(disposing);
    }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override void Flush() => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
