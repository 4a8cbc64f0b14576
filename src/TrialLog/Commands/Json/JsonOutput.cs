using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;

namespace TrialLog.Commands.Json;

/// <summary>Facts as JSON for programs: snake_case names, units in the names, numbers without false digits.</summary>
internal static class JsonOutput
{
    private static readonly FactsContext Context = new(new JsonSerializerOptions(FactsContext.Default.Options)
    {
        // Fractions and names stay readable; the output is a file or a pipe, never a web page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>Writes one value and a line end.</summary>
    public static void Write<T>(TextWriter to, T facts) =>
        to.WriteLine(
            Escaped(to.Encoding is System.Text.ASCIIEncoding, JsonSerializer.Serialize(
            facts, (JsonTypeInfo<T>)(Context.GetTypeInfo(typeof(T)) ?? throw new NotSupportedException(typeof(T).Name)))));

    /// <summary>One value as a node, to which more can be added.</summary>
    public static JsonObject Node<T>(T facts) =>
        JsonSerializer.SerializeToNode(facts, (JsonTypeInfo<T>)Context.GetTypeInfo(typeof(T))!)!.AsObject();

    // What could drive a terminal, or is no ASCII, stands in strings alone, and there it can be escaped without loss.
    private static string Escaped(bool ascii, string json)
    {
        bool Escapes(char c) => PlainText.DrivesATerminal(c) || (ascii && !char.IsAscii(c));
        return !json.Any(Escapes) ? json : string.Concat(json.Select(c => Escapes(c) ? $"\\u{(int)c:x4}" : c.ToString()));
    }

    /// <summary>An enumeration's name as programs see it: <c>seated-reach</c>.</summary>
    public static string Kebab<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    /// <summary>Inches, to a ten-thousandth.</summary>
    public static double Inches(Length length) => Rounded(length.Inches);

    /// <summary>To four decimals, so that the last digits of a processor's arithmetic do not show.</summary>
    public static double Rounded(double value) => Math.Round(value, 4) + 0.0;
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, WriteIndented = true, NewLine = "\n")]
[JsonSerializable(typeof(ErrorFacts))]
[JsonSerializable(typeof(IReadOnlyList<DecisionFacts>))]
[JsonSerializable(typeof(ClearanceFacts))]
[JsonSerializable(typeof(NextFacts))]
[JsonSerializable(typeof(JsonArray))]
[JsonSerializable(typeof(CurveFacts))]
[JsonSerializable(typeof(IReadOnlyList<ProgressFacts>))]
[JsonSerializable(typeof(IReadOnlyList<CheckFacts>))]
[JsonSerializable(typeof(IReadOnlyList<OutingFacts>))]
[JsonSerializable(typeof(IReadOnlyList<PaddlerFacts>))]
[JsonSerializable(typeof(IReadOnlyList<HullFacts>))]
[JsonSerializable(typeof(IReadOnlyList<PaddleFacts>))]
[JsonSerializable(typeof(ReportFacts))]
[JsonSerializable(typeof(IReadOnlyList<NoteFacts>))]
[JsonSerializable(typeof(IReadOnlyList<AdviceFacts>))]
[JsonSerializable(typeof(RederivedFacts))]
[JsonSerializable(typeof(PlanFacts))]
[JsonSerializable(typeof(HeldFacts))]
[JsonSerializable(typeof(ShareFacts))]
[JsonSerializable(typeof(MergeFacts))]
[JsonSerializable(typeof(SyncFacts))]
[JsonSerializable(typeof(BackupFacts))]
[JsonSerializable(typeof(RestoreFacts))]
[JsonSerializable(typeof(VerifyFacts))]
[JsonSerializable(typeof(StartLengthFacts))]
[JsonSerializable(typeof(TransferFacts))]
[JsonSerializable(typeof(TechniqueFacts))]
[JsonSerializable(typeof(IReadOnlyList<TechniqueFacts>))]
[JsonSerializable(typeof(OrderSheetFacts))]
[JsonSerializable(typeof(SteeringFacts))]
[JsonSerializable(typeof(IReadOnlyList<ImportFacts>))]
internal sealed partial class FactsContext : JsonSerializerContext;
