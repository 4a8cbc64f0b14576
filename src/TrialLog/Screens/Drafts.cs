using System.Text.Json.Serialization;

namespace TrialLog.Screens;

/// <summary>What was typed on the first run and not saved yet.</summary>
internal sealed record FirstRunDraft(
    int Step, string Name, int Unit, int Basis, string Length, int Hull, string Goal,
    string Paddle, string Blade, int Kind, string Shortest, string Longest);

/// <summary>What was typed of an outing and not saved yet.</summary>
internal sealed record OutingDraft(
    Guid Paddler, Guid? Editing, string Date, string Hull, string Paddle, string Wind, string Label, string Soreness, string Notes,
    IReadOnlyList<PieceDraft> Pieces);

/// <summary>What was typed of a piece.</summary>
internal sealed record PieceDraft(Guid? Piece, string Length, string Distance, string Time, string Effort);

/// <summary>Drafts as JSON, in the logbook's own drafts.</summary>
[JsonSerializable(typeof(FirstRunDraft))]
[JsonSerializable(typeof(OutingDraft))]
internal sealed partial class DraftJson : JsonSerializerContext;
