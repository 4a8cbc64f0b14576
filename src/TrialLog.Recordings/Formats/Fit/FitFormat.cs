using System.Buffers.Binary;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Files;

namespace TrialLog.Recordings.Formats.Fit;

/// <summary>
/// Reads FIT files by the published protocol: header, definition, data and compressed-timestamp messages, either byte
/// order, checksums, several files one after the other. Developer fields and messages that say nothing about the
/// outing are stepped over.
/// </summary>
internal static class FitFormat
{
    /// <summary>Reads every record and lap in file order.</summary>
    /// <exception cref="RecordingException">Cut off, damaged or not the protocol.</exception>
    /// <param name="bytes">The file.</param>
    /// <param name="evenIfCutOff">Whether to take what is whole of a file whose end is missing.</param>
    public static Recording Read(ArraySegment<byte> bytes, bool evenIfCutOff = false)
    {
        var activity = new FitActivity();
        ReadOnlySpan<byte> rest = bytes;
        bool cutOff = false;
        while (!cutOff && rest.Length > 0 && rest.ContainsAnyExcept((byte)0))
        {
            int length = ReadFile(rest, activity, evenIfCutOff);
            cutOff = length > rest.Length;
            rest = cutOff ? [] : rest[length..];
        }

        return activity.ToRecording(cutOff);
    }

    // The file's length as it says itself, which is more than there is where its end is missing.
    private static int ReadFile(ReadOnlySpan<byte> file, FitActivity activity, bool evenIfCutOff)
    {
        if (!FormatSniffer.IsFit(file))
            throw Damaged("something else follows its first part");
        int header = file[0];
        if (header > file.Length)
            throw CutOff();
        if (file[1] >> 4 > 2)
            throw new RecordingException(
                $"the FIT file is of protocol version {file[1] >> 4}, newer than this program knows; export the outing as GPX or TCX.");
        if (header >= 14 && BinaryPrimitives.ReadUInt16LittleEndian(file[12..]) is not 0 and ushort headerCheck
            && FitChecksum.Of(file[..12]) != headerCheck)
            throw Damaged("the checksum of its header does not match");
        long size = BinaryPrimitives.ReadUInt32LittleEndian(file[4..]);
        if (header + size + 2 > file.Length)
        {
            if (!evenIfCutOff)
                throw CutOff();
            try
            {
                ReadMessages(file[header..], activity);
            }
            catch (RecordingException)
            {
                // Up to the message that is cut off all was taken.
            }

            return int.MaxValue;
        }

        int end = (int)(header + size);
        if (FitChecksum.Of(file[..(end + 2)]) != 0)
            throw Damaged("its checksum does not match");

        ReadMessages(file[header..end], activity);
        return end + 2;
    }

    private static void ReadMessages(ReadOnlySpan<byte> data, FitActivity activity)
    {
        var definitions = new FitDefinition?[16];
        activity.BeginFile();
        while (data.Length > 0)
        {
            byte head = data[0];
            data = data[1..];
            if ((head & 0xC0) == 0x40)
            {
                definitions[head & 0x0F] = ReadDefinition(ref data, developer: (head & 0x20) != 0);
                continue;
            }

            bool compressed = (head & 0x80) != 0;
            FitDefinition definition = definitions[compressed ? (head >> 5) & 0x03 : head & 0x0F]
                ?? throw Damaged("a message comes before its definition");
            if (definition.Size > data.Length)
                throw Damaged("a message is cut off");
            if (compressed)
                activity.AdvanceTo(head & 0x1F);
            activity.Take(new FitMessage(definition, data[..definition.Size]));
            data = data[definition.Size..];
        }
    }

    private static FitDefinition ReadDefinition(ref ReadOnlySpan<byte> data, bool developer)
    {
        if (data.Length < 5)
            throw Damaged("a definition is cut off");
        bool big = data[1] == 1;
        int message = big ? BinaryPrimitives.ReadUInt16BigEndian(data[2..]) : BinaryPrimitives.ReadUInt16LittleEndian(data[2..]);
        int count = data[4];
        data = data[5..];
        if (data.Length < count * 3)
            throw Damaged("a definition is cut off");
        var fields = new FitField[count];
        int size = 0;
        for (int i = 0; i < count; i++)
        {
            fields[i] = new FitField(data[3 * i], data[3 * i + 1], data[3 * i + 2]);
            size += fields[i].Size;
        }

        data = data[(count * 3)..];
        if (developer)
        {
            if (data.Length < 1 || data.Length < 1 + data[0] * 3)
                throw Damaged("a definition is cut off");
            int developers = data[0];
            for (int i = 0; i < developers; i++)
                size += data[1 + 3 * i + 1];
            data = data[(1 + developers * 3)..];
        }

        return new FitDefinition(message, big, fields, size);
    }

    private static RecordingException CutOff() =>
        new("the FIT file is cut off; copy it again from the watch, or take what is whole of it.") { CanTakeWhatIsWhole = true };

    private static RecordingException Damaged(string how) => new($"the FIT file is damaged ({how}); copy it again from the watch.");
}
