using System.Text.Json;
using System.Text.Json.Serialization;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Logging;

/// <summary>What was typed of an outing and not saved yet.</summary>
internal sealed record OutingDraft(
    Guid Paddler, Guid? Editing, string Date, string Hull, string Paddle, string Wind, string Label, string Soreness, string Notes,
    IReadOnlyList<PieceDraft> Pieces);

/// <summary>What was typed of a piece.</summary>
internal sealed record PieceDraft(Guid? Piece, string Length, string Distance, string Time, string Effort);

/// <summary>
/// A paddler's half-typed outing, kept in the logbook's drafts: begun at the questions of <c>log</c> or on the screens, it goes on in
/// either.
/// </summary>
internal static class HalfTypedOuting
{
    public static bool Exists(Workspace workspace, Paddler paddler) => workspace.Logbook.Draft(NameOf(paddler.Id)) is not null;

    /// <summary>The draft; null where there is none. One that cannot be read is dropped.</summary>
    public static OutingDraft? Of(Workspace workspace, Paddler paddler)
    {
        if (workspace.Logbook.Draft(NameOf(paddler.Id)) is not { } text)
            return null;
        try
        {
            return JsonSerializer.Deserialize(text, OutingDraftJson.Default.OutingDraft);
        }
        catch (JsonException)
        {
            Drop(workspace, paddler);
            return null;
        }
    }

    public static void Keep(Workspace workspace, OutingDraft draft) =>
        workspace.Logbook.SaveDraft(NameOf(draft.Paddler), JsonSerializer.Serialize(draft, OutingDraftJson.Default.OutingDraft));

    public static void Drop(Workspace workspace, Paddler paddler) => workspace.Logbook.DropDraft(NameOf(paddler.Id));

    private static string NameOf(Guid paddler) => $"outing:{paddler}";
}

[JsonSerializable(typeof(OutingDraft))]
internal sealed partial class OutingDraftJson : JsonSerializerContext;
