using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace TrialLog.Logbook.Shared;

/// <summary>The whole of a shared file.</summary>
internal sealed record SharedContents
{
    /// <summary>What <see cref="Format"/> says in every version.</summary>
    public const string FormatName = "triallog-record";

    /// <summary>The version written now. Docs: <c>docs/logbook.md</c>.</summary>
    public const int CurrentVersion = 2;

    public required string Format { get; init; }
    public required int Version { get; init; }
    public required DateTimeOffset WrittenAt { get; init; }
    public IReadOnlyList<string>? LeftOut { get; init; }
    public required IReadOnlyList<SharedHull> Hulls { get; init; }
    public required IReadOnlyList<SharedPaddle> Paddles { get; init; }
    public required IReadOnlyList<SharedPaddler> Paddlers { get; init; }
    public required IReadOnlyList<SharedOuting> Outings { get; init; }
    public required IReadOnlyList<SharedCard> Cards { get; init; }
    public required IReadOnlyList<SharedTechniqueCheck> TechniqueChecks { get; init; }
    public required IReadOnlyList<SharedNote> CoachNotes { get; init; }
    public IReadOnlyList<SharedSorenessClearance>? SorenessClearances { get; init; }
    public IReadOnlyList<SharedDecision>? Decisions { get; init; }
    public IReadOnlyList<SharedRemoval>? Removed { get; init; }
}

/// <summary>What every version of the format starts with.</summary>
internal sealed record SharedPreamble
{
    public string? Format { get; init; }
    public int Version { get; init; }
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    AllowDuplicateProperties = false,
    RespectNullableAnnotations = true,
    MaxDepth = 12)]
[JsonSerializable(typeof(SharedContents))]
internal sealed partial class SharedJson : JsonSerializerContext;

/// <summary>How a shared file is written and read.</summary>
internal static class SharedOptions
{
    /// <summary>One line, as it is fingerprinted.</summary>
    public static readonly JsonSerializerOptions Compact = With(indented: false);

    /// <summary>For people to read.</summary>
    public static readonly JsonSerializerOptions Readable = With(indented: true);

    public static JsonTypeInfo<SharedContents> Contents => (JsonTypeInfo<SharedContents>)Readable.GetTypeInfo(typeof(SharedContents));

    private static JsonSerializerOptions With(bool indented) => new(SharedJson.Default.Options)
    {
        TypeInfoResolver = SharedJson.Default,
        WriteIndented = indented,
        // The file is no web page: letters of all scripts stand as they are.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };
}

/// <summary>Reads only what tells the version, whatever else a file of another version holds.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, MaxDepth = 12)]
[JsonSerializable(typeof(SharedPreamble))]
internal sealed partial class PreambleJson : JsonSerializerContext;
