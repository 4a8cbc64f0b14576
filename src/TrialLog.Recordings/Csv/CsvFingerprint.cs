using System.Security.Cryptography;
using System.Text;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>Tells rows apart, and knows them again when a longer version of the same file comes.</summary>
internal static class CsvFingerprint
{
    /// <summary><c>csv:</c> and 32 hexadecimal digits: the first half of SHA-256 over the fields, names without regard to case.</summary>
    public static string Of(
        string? paddler, DateOnly? date, TimeOnly? start, string outing, int? order, string? hull, string? paddle,
        Length? length, Distance? distance, PieceTime? time)
    {
        // The separator cannot occur in a name, so no two rows run together into the same text.
        string fields = string.Join('\u001F',
            paddler?.ToUpperInvariant(), date?.ToString("yyyy-MM-dd"), outing.Length == 0 ? start?.ToString("HH:mm:ss.fffffff") : "",
                outing.ToUpperInvariant(),
            order, hull?.ToUpperInvariant(), paddle?.ToUpperInvariant(), length?.Nanometres, distance?.Micrometres, time?.Milliseconds);
        return "csv:" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(fields)).AsSpan(0, 16));
    }
}
