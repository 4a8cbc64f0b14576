using System.Text;
using TrialLog.Screens.Shell;

namespace TrialLog.Tests.Recordings.Csv;

/// <summary>A CSV file of a given size that is made while it is read; its rows are bad, so that reading keeps none.</summary>
internal sealed class Endless(long size, bool canSeek, int notes) : Stream
{
    private static readonly byte[] Header = Encoding.UTF8.GetBytes("date,hull,length_in,distance_m,time,notes\n");
    private readonly byte[] _row = Encoding.UTF8.GetBytes("2026-02-30,OC1,49.75,1000,5:32," + new string('x', notes) + "\n");

    public long Given { get; private set; }

    public override bool CanRead => true;

    public override bool CanSeek => canSeek;

    public override bool CanWrite => false;

    public override long Length => canSeek ? size : throw new NotSupportedException();

    public override long Position { get => Given; set => throw new NotSupportedException(); }

    public override int Read(byte[] buffer, int offset, int count)
    {
        int read = (int)Math.Min(count, size - Given);
        for (int done = 0; done < read;)
        {
            ReadOnlySpan<byte> rest = Given < Header.Length ? Header.AsSpan((int)Given)
                : _row.AsSpan((int)((Given - Header.Length) % _row.Length));
            int copied = Math.Min(rest.Length, read - done);
            rest[..copied].CopyTo(buffer.AsSpan(offset + done));
            done += copied;
            Given += copied;
        }

        return read;
    }

    public override void Flush() => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
