using System.Buffers.Binary;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.TestData.Recordings.Simulation;

namespace TrialLog.TestData.Recordings.Writing;

/// <summary>A lap as a watch that leads through a workout writes it.</summary>
/// <param name="Start">Seconds since 1970.</param>
/// <param name="End">Seconds since 1970.</param>
/// <param name="Trigger">0 pressed, 1 by time, 2 by distance.</param>
/// <param name="Intensity">0 active, 1 rest, 2 warm-up, 3 cool-down.</param>
/// <param name="Step">The number of the workout's step.</param>
internal readonly record struct WrittenLap(double Start, double End, int Trigger, int Intensity, int Step);

/// <summary>Writes FIT activity files by the published protocol, for samples and tests only.</summary>
internal sealed class FitWriter
{
    private const double Epoch = 631_065_600;
    private readonly List<byte> data = [];
    private readonly bool bigEndian;

    /// <summary>A writer in that byte order.</summary>
    public FitWriter(bool bigEndian = false) => this.bigEndian = bigEndian;

    /// <summary>A whole activity.</summary>
    /// <param name="points">Points in order.</param>
    /// <param name="presses">Lap presses, seconds since 1970.</param>
    /// <param name="offset">Local time less UTC; null leaves it untold.</param>
    /// <param name="bigEndian">Byte order.</param>
    /// <param name="compressed">Whether records carry compressed timestamps where they can.</param>
    /// <param name="laps">Laps of a workout, instead of presses; null for none.</param>
    /// <param name="steps">The workout's steps, name and intensity; null where the file does not carry them.</param>
    public static byte[] Activity(
        IReadOnlyList<RecordedPoint> points, IReadOnlyList<double> presses, TimeSpan? offset, bool bigEndian = false,
            bool compressed = false,
        IReadOnlyList<WrittenLap>? laps = null, IReadOnlyList<(string Name, int Intensity)>? steps = null)
    {
        var writer = new FitWriter(bigEndian);
        double start = points.Count > 0 ? points[0].Time : Epoch + 1_000_000_000, end = points.Count > 0 ? points[^1].Time : start;
        // File id: type activity, maker “development”.
        writer.Define(0, 0, [(0, 1, 0x00), (1, 2, 0x84), (2, 2, 0x84), (4, 4, 0x86)]);
        writer.Message(0, [4, 255, 0, (long)(start - Epoch)], [1, 2, 2, 4]);
        writer.Define(1, 20, [(253, 4, 0x86), (0, 4, 0x85), (1, 4, 0x85), (3, 1, 0x02), (4, 1, 0x02)]);
        if (compressed)
            writer.Define(2, 20, [(0, 4, 0x85), (1, 4, 0x85), (3, 1, 0x02), (4, 1, 0x02)]);
        long last = long.MinValue;
        foreach (RecordedPoint point in points)
        {
            long time = (long)Math.Round(point.Time - Epoch);
            long[] values = [Semicircles(point.Latitude), Semicircles(point.Longitude), Byte(point.HeartRate), Byte(point.Cadence)];
            if (compressed && time - last is >= 0 and < 32)
                writer.Compressed(2, time, values, [4, 4, 1, 1]);
            else
                writer.Message(1, [time, .. values], [4, 4, 4, 1, 1]);
            last = time;
        }

        for (int i = 0; i < steps?.Count; i++)
        {
            writer.Define(5, 27, [(254, 2, 0x84), (7, 1, 0x00), (0, 24, 0x07)]);
            writer.Message(5, [i, steps[i].Intensity], [2, 1]);
            byte[] name = new byte[24];
            System.Text.Encoding.UTF8.GetBytes(steps[i].Name).CopyTo(name, 0);
            writer.data.AddRange(name);
        }

        if (laps is not null)
        {
            writer.Define(6, 19, [(253, 4, 0x86), (2, 4, 0x86), (7, 4, 0x86), (24, 1, 0x00), (23, 1, 0x00), (71, 2, 0x84)]);
            foreach (WrittenLap lap in laps)
                writer.Message(
                    6, [(long)(lap.End - Epoch), (long)(lap.Start - Epoch), (long)((lap.End - lap.Start) * 1000), lap.Trigger,
                    lap.Intensity, lap.Step], [4, 4, 4, 1, 1, 2]);
        }

        writer.Define(3, 19, [(253, 4, 0x86), (2, 4, 0x86), (7, 4, 0x86), (24, 1, 0x00)]);
        double from = start;
        foreach (double press in laps is null ? presses.Append(end) : [])
        {
            bool pressed = press < end;
            writer.Message(3, [(long)(press - Epoch), (long)(from - Epoch), (long)((press - from) * 1000), pressed ? 0 : 7], [4, 4, 4, 1]);
            from = press;
        }

        if (offset is TimeSpan local)
        {
            writer.Define(4, 34, [(253, 4, 0x86), (5, 4, 0x86)]);
            writer.Message(4, [(long)(end - Epoch), (long)(end - Epoch + local.TotalSeconds)], [4, 4]);
        }

        return writer.ToFile();
    }

    /// <summary>Writes a definition message.</summary>
    public void Define(int local, int message, (byte Number, byte Size, byte Type)[] fields,
        (byte Number, byte Size, byte Index)[]? developer = null)
    {
        data.Add((byte)(0x40 | (developer is null ? 0 : 0x20) | local));
        data.Add(0);
        data.Add(bigEndian ? (byte)1 : (byte)0);
        Number(message, 2);
        data.Add((byte)fields.Length);
        foreach ((byte number, byte size, byte type) in fields)
            data.AddRange([number, size, type]);
        if (developer is null)
            return;
        data.Add((byte)developer.Length);
        foreach ((byte number, byte size, byte index) in developer)
            data.AddRange([number, size, index]);
    }

    /// <summary>Writes a data message.</summary>
    public void Message(int local, long[] values, int[] sizes)
    {
        data.Add((byte)local);
        Numbers(values, sizes);
    }

    /// <summary>Writes a data message with a compressed timestamp; only local types 0 to 3.</summary>
    public void Compressed(int local, long time, long[] values, int[] sizes)
    {
        data.Add((byte)(0x80 | (local << 5) | (int)(time & 0x1F)));
        Numbers(values, sizes);
    }

    /// <summary>The file: header, messages, checksum.</summary>
    public byte[] ToFile()
    {
        byte[] messages = [.. data];
        var file = new byte[14 + messages.Length + 2];
        file[0] = 14;
        file[1] = 0x20;
        BinaryPrimitives.WriteUInt16LittleEndian(file.AsSpan(2), 2132);
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(4), messages.Length);
        ".FIT"u8.CopyTo(file.AsSpan(8));
        BinaryPrimitives.WriteUInt16LittleEndian(file.AsSpan(12), Checksum(file.AsSpan(0, 12)));
        messages.CopyTo(file, 14);
        BinaryPrimitives.WriteUInt16LittleEndian(file.AsSpan(file.Length - 2), Checksum(file.AsSpan(0, file.Length - 2)));
        return file;
    }

    /// <summary>The protocol's 16-bit check, bit by bit, so that it shares nothing with the reader's.</summary>
    public static ushort Checksum(ReadOnlySpan<byte> bytes)
    {
        int check = 0;
        foreach (byte b in bytes)
        {
            check ^= b;
            for (int bit = 0; bit < 8; bit++)
                check = (check & 1) == 1 ? (check >> 1) ^ 0xA001 : check >> 1;
        }

        return (ushort)check;
    }

    private void Numbers(long[] values, int[] sizes)
    {
        for (int i = 0; i < values.Length; i++)
            Number(values[i], sizes[i]);
    }

    private void Number(long value, int size)
    {
        for (int i = 0; i < size; i++)
            data.Add((byte)(value >> (8 * (bigEndian ? size - 1 - i : i))));
    }

    private static long Semicircles(double degrees) =>
        double.IsNaN(degrees) ? int.MaxValue : (long)Math.Round(degrees * (2147483648.0 / 180));

    private static long Byte(double value) => double.IsNaN(value) ? 0xFF : (long)value;
}
