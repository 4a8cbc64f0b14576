using System.Text.Json.Serialization;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;

namespace TrialLog.Screens.FirstRun;

/// <summary>What was typed on the first run and not saved yet.</summary>
internal sealed record FirstRunDraft(
    int Step, string Name, int Unit, int Basis, string Length, int Hull, string Goal,
    string Paddle, string Blade, int Kind, string Shortest, string Longest);

/// <summary>The draft as JSON, in the logbook's own drafts.</summary>
[JsonSerializable(typeof(FirstRunDraft))]
internal sealed partial class DraftJson : JsonSerializerContext;
