using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>Tells rows apart, and knows them again when a longer version of the same file comes.</summary>
internal static class CsvFingerprint
{
    private const string Beginning = "csv:";

    /// <summary>The first half of SHA-256 over the fields, names without regard to case.</summary>
    public static UInt128 Of(
        string? paddler, DateOnly? date, TimeOnly? start, string outing, int? order, string? hull, string? paddle,
        Length? length, Distance? distance, PieceTime? time)
    {
        // The separator cannot occur in a name, so no two rows run together into the same text.
        string fields = string.Join('\u001F',
            paddler?.ToUpperInvariant(), date?.ToString("yyyy-MM-dd"), outing.Length == 0 ? start?.ToString("HH:mm:ss.fffffff") : "",
                outing.ToUpperInvariant(),
            order, hull?.ToUpperInvariant(), paddle?.ToUpperInvariant(), length?.Nanometres, distance?.Micrometres, time?.Milliseconds);
        return BinaryPrimitives.ReadUInt128BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes(fields)));
    }

    /// <summary>As it is kept: <c>csv:</c> and 32 hexadecimal digits.</summary>
    public static string Text(UInt128 print) => Beginning + print.ToString("x32", CultureInfo.InvariantCulture);

    /// <summary>The fingerprint that is kept under that text; null where it is another's.</summary>
    public static UInt128? From(string text) => text.StartsWith(Beginning, StringComparison.Ordinal)
        && UInt128.TryParse(text.AsSpan(Beginning.Length), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out UInt128 print)
        ? print : null;
}
