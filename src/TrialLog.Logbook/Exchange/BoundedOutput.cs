using TrialLog.Domain.Values;

namespace TrialLog.Logbook.Exchange;

/// <summary>Passes on what is written, up to a number of bytes: a record that nobody could read is not handed over.</summary>
internal sealed class BoundedOutput(Stream to, long most) : Stream
{
    private long _written;

    /// <summary>What is said of a record with more bytes.</summary>
    public static LogbookException TooLarge(long most) => new(
        $"The record is larger than {most / (1024 * 1024)} MB, more than is read again; nothing was written: share fewer paddlers at a " +
        $"time.");

    public override bool CanRead => false;
    public override bool CanSeek => false;
    public override bool CanWrite => true;
    public override long Length => throw new NotSupportedException();
    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if ((_written += buffer.Length) > most)
            throw TooLarge(most);
        to.Write(buffer);
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    // The file is flushed by whoever opened it.
    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
    public override void SetLength(long value) => throw new NotSupportedException();
}
