using System.Text.Json;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook.Exchange;

/// <summary>Writes a paddler's record, or the squad's, to a file that people and programs can read, and reads it back.</summary>
public static class Sharing
{
    /// <summary>The largest file that is read, in bytes: no source, well beyond a squad's years.</summary>
    public const int LargestFile = 64 * 1024 * 1024;

    // A piece's two ids alone have 76 bytes, the names of what every piece has and their indents over 124.
    private const int LeastBytesAPiece = 200;

    /// <summary>Writes a record to a file, whole or not at all.</summary>
    /// <exception cref="LogbookException">The file cannot be written, or the record is larger than is read; what was there is
    /// untouched.</exception>
    public static void Save(LogbookFile logbook, ShareOptions options, string path) => Save(logbook, options, path, LargestFile);

    internal static void Save(LogbookFile logbook, ShareOptions options, string path, long largest)
    {
        // A million pieces would be gathered, in a gigabyte, only to be refused.
        if (logbook.CountOfPieces(options.PaddlerId) * LeastBytesAPiece > largest)
            throw BoundedOutput.TooLarge(largest);
        try
        {
            OutputFile.Write(path, file =>
            {
                using var bounded = new BoundedOutput(file, largest);
                Write(logbook, options, bounded);
            });
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new LogbookException($"The record cannot be written to {path} ({e.Message.TrimEnd('.')}); choose another place.", e);
        }
    }

    /// <summary>Writes a record as JSON.</summary>
    public static void Write(LogbookFile logbook, ShareOptions options, Stream to)
    {
        JsonSerializer.Serialize(to, Selection.Of(logbook, options), SharedOptions.Contents);
        to.WriteByte((byte)'\n');
    }

    /// <summary>Reads a record from a file and checks the whole of it.</summary>
    /// <exception cref="LogbookException">It cannot be read, is no record, or holds something that cannot be right; the sentence says
    /// where.</exception>
    public static SharedRecord Load(string path)
    {
        try
        {
            using FileStream file = InputFile.Open(path);
            return Read(file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new LogbookException(
                $"The record {path} cannot be read ({e.Message.TrimEnd('.')}); check its name and that you may read it.", e);
        }
    }

    /// <summary>As <see cref="Load"/>, from a stream.</summary>
    /// <exception cref="LogbookException">It is no record, or holds something that cannot be right; the sentence says where.</exception>
    public static SharedRecord Read(Stream from)
    {
        ReadOnlySpan<byte> bytes = ReadBounded(from);
        try
        {
            ReadOnlySpan<byte> json = bytes.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
            SharedPreamble? preamble = JsonSerializer.Deserialize(json, PreambleJson.Default.SharedPreamble);
            if (preamble?.Format != SharedContents.FormatName)
                throw new LogbookException("The file is not a TrialLog record; ask for it again.");
            if (preamble.Version > SharedContents.CurrentVersion)
                throw new LogbookException("The record was written by a newer version of TrialLog; update TrialLog to read it.");
            if (preamble.Version < 1)
                throw new LogbookException("The record names no version of its format; ask for it again.");

            return new SharedRecord(SharedCheck.Checked(JsonSerializer.Deserialize(json, SharedOptions.Contents)!));
        }
        catch (JsonException e)
        {
            string where = e.LineNumber is long line ? $" at line {line + 1}" : "";
            string what = string.IsNullOrEmpty(e.Path) || e.Path == "$" ? "" : $", in {Quoted.Brief(e.Path, 80)}";
            throw new LogbookException(
                $"The record cannot be understood{where}{what}; it may be cut short or edited: ask for it again.", e);
        }
    }

    private static ReadOnlySpan<byte> ReadBounded(Stream from)
    {
        using var read = new MemoryStream(from.CanSeek ? (int)Math.Clamp(from.Length, 0, LargestFile) : 0);
        byte[] buffer = new byte[81920];
        for (int count; (count = from.Read(buffer)) > 0;)
        {
            if (read.Length + count > LargestFile)
                throw new LogbookException($"The file is larger than {LargestFile / (1024 * 1024)} MB, more than a record is ever; ask " +
                    $"for the records of fewer paddlers.");
            read.Write(buffer, 0, count);
        }
        return read.GetBuffer().AsSpan(0, (int)read.Length);
    }
}
