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

    /// <summary>The edits that each field's value builds upon, by field; fields never edited are left out.</summary>
    [JsonPropertyOrder(100)]
    public IReadOnlyDictionary<string, IReadOnlyList<string>>? Edits { get; init; }

    /// <summary>Fields that the writer left out: absent does not mean cleared.</summary>
    [JsonPropertyOrder(101)]
    public IReadOnlyList<string>? Untold { get; init; }

    /// <summary>Fingerprints by which the first version told newer records from older; read and not used.</summary>
    [JsonPropertyOrder(102)]
    public IReadOnlyList<string>? Earlier { get; init; }

    /// <summary>What it is, for a person: <c>paddle</c>.</summary>
    public abstract string Kind();

    /// <summary>The table that holds it.</summary>
    public abstract string Table();

    /// <summary>
    /// The record that it hangs on: an outing's paddler, a piece's outing is told by where it stands; null for what stands alone.
    /// </summary>
    public virtual Guid? Container() => null;

    /// <summary>The record alone, without what tells versions apart.</summary>
    public virtual SharedItem Plain() => this with { Edits = null, Untold = null, Earlier = null };

    /// <summary>The record as JSON without what tells versions apart.</summary>
    public JsonObject ToJson() => (JsonObject)JsonSerializer.SerializeToNode(Plain(), SharedOptions.Compact.GetTypeInfo(GetType()))!;

    /// <summary>As <see cref="ToJson"/>, as text.</summary>
    public string ToText() => JsonSerializer.Serialize(Plain(), SharedOptions.Compact.GetTypeInfo(GetType()));
}

/// <summary>A record with a name that is unique in a logbook.</summary>
internal abstract record NamedItem : SharedItem
{
    /// <summary>1 to 80 characters, without the number by which one logbook keeps it apart from another of that name.</summary>
    [JsonPropertyOrder(-1)]
    public required string Name { get; init; }
}

/// <summary>A record that is no longer there.</summary>
internal sealed record SharedRemoval
{
    /// <summary>The record that was removed.</summary>
    public required Guid Id { get; init; }

    /// <summary>The record that it became, where two were joined.</summary>
    public Guid? Into { get; init; }

    /// <summary>The edits that whoever removed it knew of, by field; the removal itself stands under the empty name.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyList<string>> Edits { get; init; }
}
