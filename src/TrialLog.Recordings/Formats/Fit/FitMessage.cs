using System.Buffers.Binary;
using System.Text;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Formats.Fit;

/// <summary>How the data messages of one local type are laid out.</summary>
/// <param name="Message">The global message number.</param>
/// <param name="BigEndian">Byte order of its numbers.</param>
/// <param name="Fields">Its fields in order.</param>
/// <param name="Size">Bytes of a data message in all, developer fields counted.</param>
internal sealed record FitDefinition(int Message, bool BigEndian, FitField[] Fields, int Size);

/// <summary>One field of a definition.</summary>
internal readonly record struct FitField(byte Number, byte Size, byte BaseType);

/// <summary>One data message: the numbers in its bytes, by field number.</summary>
internal readonly ref struct FitMessage(FitDefinition definition, ReadOnlySpan<byte> bytes)
{
    private readonly ReadOnlySpan<byte> bytes = bytes;

    /// <summary>The global message number.</summary>
    public int Number => definition.Message;

    /// <summary>
    /// The whole number in that field (the first, of an array); null where it is absent, marked invalid or no whole number.
    /// </summary>
    public long? Whole(int field)
    {
        int at = 0;
        foreach (FitField f in definition.Fields)
        {
            if (f.Number == field)
                return Whole(f, bytes.Slice(at, f.Size));
            at += f.Size;
        }

        return null;
    }

    /// <summary>The text in that field, up to its end; null where there is none.</summary>
    public string? Text(int field)
    {
        int at = 0;
        foreach (FitField f in definition.Fields)
        {
            if (f.Number == field && (f.BaseType & 0x1F) == 7)
            {
                ReadOnlySpan<byte> text = bytes.Slice(at, f.Size);
                int end = text.IndexOf((byte)0);
                text = end < 0 ? text : text[..end];
                return text.Length == 0 ? null : Quoted.Brief(Encoding.UTF8.GetString(text), 60);
            }

            at += f.Size;
        }

        return null;
    }

    private long? Whole(FitField field, ReadOnlySpan<byte> value)
    {
        bool big = definition.BigEndian;
        // Base type numbers and their invalid values are those of the FIT protocol; bit 7 marks numbers of several bytes.
        switch (field.BaseType & 0x1F)
        {
            case 0 or 2 or 13 when value.Length >= 1:
                return Unless(value[0], 0xFF);
            case 10 when value.Length >= 1:
                return Unless(value[0], 0);
            case 1 when value.Length >= 1:
                return Unless((sbyte)value[0], sbyte.MaxValue);
            case 3 when value.Length >= 2:
                return Unless(big ? BinaryPrimitives.ReadInt16BigEndian(value) : BinaryPrimitives.ReadInt16LittleEndian(value),
                    short.MaxValue);
            case 4 when value.Length >= 2:
                return Unless(big ? BinaryPrimitives.ReadUInt16BigEndian(value) : BinaryPrimitives.ReadUInt16LittleEndian(value),
                    ushort.MaxValue);
            case 11 when value.Length >= 2:
                return Unless(big ? BinaryPrimitives.ReadUInt16BigEndian(value) : BinaryPrimitives.ReadUInt16LittleEndian(value), 0);
            case 5 when value.Length >= 4:
                return Unless(big ? BinaryPrimitives.ReadInt32BigEndian(value) : BinaryPrimitives.ReadInt32LittleEndian(value),
                    int.MaxValue);
            case 6 when value.Length >= 4:
                return Unless(big ? BinaryPrimitives.ReadUInt32BigEndian(value) : BinaryPrimitives.ReadUInt32LittleEndian(value),
                    uint.MaxValue);
            case 12 when value.Length >= 4:
                return Unless(big ? BinaryPrimitives.ReadUInt32BigEndian(value) : BinaryPrimitives.ReadUInt32LittleEndian(value), 0);
            default:
                return null;
        }
    }

    private static long? Unless(long value, long invalid) => value == invalid ? null : value;
}
