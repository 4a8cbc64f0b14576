using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Deciding;

/// <summary>Takes down word that soreness is gone, by whom and why; without it, or a later outing that says so, pain stands.</summary>
internal static class ClearSoreness
{
    /// <summary>The soreness that stands for a paddler today; null where there is none.</summary>
    public static StandingSoreness? Standing(Workspace workspace, Paddler paddler) =>
        StandingSoreness.Of(workspace.Logbook.Outings(paddler.Id), workspace.Logbook.SorenessClearances(paddler.Id), workspace.Today);

    /// <summary>Clears it.</summary>
    /// <exception cref="RequestException">There is none.</exception>
    public static (SorenessClearance Clearance, StandingSoreness Was) Of(Workspace workspace, Paddler paddler, string by, string? because)
    {
        StandingSoreness was = Standing(workspace, paddler)
            ?? throw new RequestException($"No soreness of {Quoted.Visible(paddler.Name)} stands; there is nothing to clear.");
        if (!NoteRule.TryCheck(because, "reason", out string? why, out string? problem))
            throw new InvalidValueException(problem);
        var clearance = new SorenessClearance
        {
            Id = Guid.CreateVersion7(workspace.Now),
            PaddlerId = paddler.Id,
            Date = workspace.Today,
            By = NameRule.Checked(by, "person who says so"),
            Because = why,
        };
        workspace.Logbook.Change($"Took down that {paddler.Name}'s soreness is gone, says {clearance.By}",
            logbook => logbook.Put(clearance));
        workspace.Remember(paddler);
        return (clearance, was);
    }
}
