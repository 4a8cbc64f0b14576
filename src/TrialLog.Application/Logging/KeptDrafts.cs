using System.Text.Json;
using System.Text.Json.Serialization;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Logging;

/// <summary>A change of a logged outing that was begun and not saved.</summary>
/// <param name="Draft">What was typed.</param>
/// <param name="Start">What stood there when it was begun.</param>
/// <param name="Print">The outing's fingerprint then (<see cref="OutingPrint"/>), by which a change made elsewhere meanwhile is
/// noticed.</param>
internal sealed record ChangeDraft(OutingDraft Draft, OutingDraft Start, string Print);

/// <summary>
/// What is half typed, kept in the logbook's drafts: for each paddler one new outing, which the questions of <c>log</c> share,
/// and any number of changes. Where another screen writes into the same draft, this one goes on in a place of its own, so that
/// neither destroys the other's.
/// </summary>
internal sealed class KeptDrafts(Workspace workspace)
{
    private const int Places = 9;

    private readonly Dictionary<Guid, (string Name, string? Text)> _mine = [];

    /// <summary>The paddler's new outing; null where none is half typed. One that cannot be read counts as none.</summary>
    public OutingDraft? New(Guid paddler)
    {
        foreach (string name in NamesOf(paddler))
        {
            if (workspace.Logbook.Draft(name) is { } text && Read(text, OutingDraftJson.Default.OutingDraft) is { } draft)
            {
                _mine[paddler] = (name, text);
                return draft;
            }
        }

        return null;
    }

    /// <summary>Keeps a new outing.</summary>
    public void Keep(OutingDraft draft)
    {
        string text = JsonSerializer.Serialize(draft, OutingDraftJson.Default.OutingDraft);
        string name = Place(draft.Paddler);
        workspace.Logbook.SaveDraft(name, text);
        _mine[draft.Paddler] = (name, text);
    }

    /// <summary>Forgets this screen's new outing of that paddler; another screen's stays.</summary>
    public void DropNew(Guid paddler)
    {
        if (_mine.Remove(paddler, out (string Name, string? Text) mine) && workspace.Logbook.Draft(mine.Name) == mine.Text)
            workspace.Logbook.DropDraft(mine.Name);
    }

    /// <summary>The changes of that paddler's outings that were begun.</summary>
    public IReadOnlyList<ChangeDraft> Changes(Guid paddler) =>
        workspace.Logbook.Draft(ChangesOf(paddler)) is { } text ? Read(text, ChangeDraftJson.Default.ListChangeDraft) ?? [] : [];

    /// <summary>Keeps a change.</summary>
    public void Keep(ChangeDraft change) => Write(change.Draft.Paddler, [.. Without(change.Draft.Paddler, change.Draft.Editing), change]);

    /// <summary>Forgets the change of that outing.</summary>
    public void DropChange(Guid paddler, Guid outing) => Write(paddler, [.. Without(paddler, outing)]);

    private IEnumerable<ChangeDraft> Without(Guid paddler, Guid? outing) => Changes(paddler).Where(kept => kept.Draft.Editing != outing);

    private void Write(Guid paddler, List<ChangeDraft> changes)
    {
        if (changes.Count > 0)
            workspace.Logbook.SaveDraft(ChangesOf(paddler), JsonSerializer.Serialize(changes, ChangeDraftJson.Default.ListChangeDraft));
        else if (workspace.Logbook.Draft(ChangesOf(paddler)) is not null)
            workspace.Logbook.DropDraft(ChangesOf(paddler));
    }

    // The place that this screen wrote to last if nobody else has written there since, else the first that is free.
    private string Place(Guid paddler)
    {
        if (_mine.TryGetValue(paddler, out (string Name, string? Text) mine) && workspace.Logbook.Draft(mine.Name) == mine.Text)
            return mine.Name;
        return NamesOf(paddler).FirstOrDefault(name => workspace.Logbook.Draft(name) is null) ?? NamesOf(paddler).Last();
    }

    private static IEnumerable<string> NamesOf(Guid paddler) =>
        Enumerable.Range(1, Places).Select(place => place == 1 ? $"outing:{paddler}" : $"outing:{paddler}:{place}");

    private static string ChangesOf(Guid paddler) => $"changes:{paddler}";

    private static T? Read<T>(string text, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> kind)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize(text, kind);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

[JsonSerializable(typeof(List<ChangeDraft>))]
internal sealed partial class ChangeDraftJson : JsonSerializerContext;
