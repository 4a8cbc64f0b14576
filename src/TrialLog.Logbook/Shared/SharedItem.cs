using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;

namespace TrialLog.Logbook.Shared;

/// <summary>
/// A record as it stands in a shared file. Numbers carry their unit in the property's name; a property that is not
/// known is left out.
/// </summary>
internal abstract record SharedItem
{
    /// <summary>Stable across logbooks.</summary>
    [JsonPropertyOrder(-2)]
    public required Guid Id { get; init; }

    /// <summary>Fingerprints of the versions that this one replaced where it was written, so that a receiver knows the newer from the older.</summary>
    [JsonPropertyOrder(100)]
    public IReadOnlyList<string>? Earlier { get; init; }

    /// <summary>This version without what means something in one logbook only.</summary>
    public virtual SharedItem Whole() => this with { Earlier = null };

    /// <summary>The whole, without what may be left out on request.</summary>
    public virtual SharedItem Core() => Whole();

    /// <summary>What <see cref="Core"/> leaves off, as text to compare.</summary>
    public virtual string Private() => "";

    /// <summary>This version with what it does not know, of what may be left out on request, taken from another.</summary>
    public virtual SharedItem FilledFrom(SharedItem other) => this;

    /// <summary>What it is, for a person: <c>paddle</c>.</summary>
    public abstract string Kind();

    public JsonObject ToJson() => (JsonObject)JsonSerializer.SerializeToNode(this with { Earlier = null }, GetType(), SharedOptions.Compact)!;

    public string ToText() => JsonSerializer.Serialize(this with { Earlier = null }, GetType(), SharedOptions.Compact);

    /// <summary>Tells versions of the whole apart: the first 16 hexadecimal digits of the SHA-256 of its JSON on one line.</summary>
    public string WholePrint() => Print(Whole());

    /// <summary>Tells versions of the core apart.</summary>
    public string CorePrint() => Print(Core());

    private static string Print(SharedItem item) =>
        Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(item, item.GetType(), SharedOptions.Compact)))[..16];
}

/// <summary>A record with a name that is unique in a logbook.</summary>
internal abstract record NamedItem : SharedItem
{
    /// <summary>1 to 80 characters.</summary>
    [JsonPropertyOrder(-1)]
    public required string Name { get; init; }
}
