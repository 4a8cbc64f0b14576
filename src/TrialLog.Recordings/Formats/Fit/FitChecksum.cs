namespace TrialLog.Recordings.Formats.Fit;

/// <summary>The 16-bit cyclic redundancy check of the FIT protocol (CRC-16/ARC: polynomial 0x8005, reflected, start 0).</summary>
internal static class FitChecksum
{
    private static readonly ushort[] Table = MakeTable();

    /// <summary>The check value; over data that ends in its own check value (low byte first) it is 0.</summary>
    public static ushort Of(ReadOnlySpan<byte> bytes)
    {
        ushort check = 0;
        foreach (byte b in bytes)
            check = (ushort)((check >> 8) ^ Table[(check ^ b) & 0xFF]);
        return check;
    }

    private static ushort[] MakeTable()
    {
        var table = new ushort[256];
        for (int i = 0; i < 256; i++)
        {
            int value = i;
            for (int bit = 0; bit < 8; bit++)
                value = (value & 1) != 0 ? (value >> 1) ^ 0xA001 : value >> 1;
            table[i] = (ushort)value;
        }

        return table;
    }
}
