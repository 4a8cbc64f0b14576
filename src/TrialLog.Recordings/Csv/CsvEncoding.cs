using System.Text;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>Tells from a file's first bytes how its text is encoded.</summary>
internal static class CsvEncoding
{
    /// <summary>
    /// Stands in the decoded text for bytes that are no text. A noncharacter (Unicode 23.7), so it is in no honest file,
    /// and a row that has it can be refused by its line while the others are read.
    /// </summary>
    public const char NoText = '\uFDD0';

    /// <summary>The encoding, and how many bytes of byte order mark come first: UTF-8, or UTF-16 or UTF-32 of either order.</summary>
    /// <exception cref="InvalidValueException">Empty, a zipped spreadsheet, or not text at all.</exception>
    public static (Encoding Encoding, int Mark) Of(ReadOnlySpan<byte> beginning)
    {
        if (beginning.IsEmpty)
            throw new InvalidValueException("The file is empty; it needs a header row and a row for each piece.");
        if (beginning.StartsWith("PK\u0003\u0004"u8))
            throw new InvalidValueException("The file is a spreadsheet or a zip file, not CSV; save it as “CSV UTF-8” first.");

        (Encoding? encoding, int mark) = beginning switch
        {
            [0xEF, 0xBB, 0xBF, ..] => (Encoding.UTF8, 3),
            [0xFF, 0xFE, 0, 0, ..] => (Encoding.UTF32, 4),
            [0, 0, 0xFE, 0xFF, ..] => (new UTF32Encoding(bigEndian: true, byteOrderMark: true), 4),
            [0xFF, 0xFE, ..] => (Encoding.Unicode, 2),
            [0xFE, 0xFF, ..] => (Encoding.BigEndianUnicode, 2),
            [not 0, 0, not 0, 0, ..] => (Encoding.Unicode, 0),
            [0, not 0, 0, not 0, ..] => (Encoding.BigEndianUnicode, 0),
            _ => ((Encoding?)Encoding.UTF8, 0),
        };
        encoding = Encoding.GetEncoding(
            encoding!.CodePage, EncoderFallback.ExceptionFallback, new DecoderReplacementFallback(NoText.ToString()));
        if (encoding.GetString(beginning[mark..]).Contains('\0'))
            throw new InvalidValueException("The file is not text, so it cannot be CSV; is it the file that you meant?");
        return (encoding, mark);
    }
}
