using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Tuning;
using TrialLog.Tuning.Model;

namespace TrialLog.Application.Workspaces;

/// <summary>
/// What the settled logs of a logbook's paddlers teach about the start length of another; weighed once a change of the logbook.
/// </summary>
internal sealed class SquadLessons
{
    private readonly Lock _gate = new();
    private (long Change, IReadOnlyList<SquadEvidence> Evidence)? _known;

    /// <summary>The lesson for a paddler of an open logbook; null where fewer than two others have settled.</summary>
    public SquadPrior? For(Workspace workspace, Paddler paddler)
    {
        IReadOnlyList<Paddler> paddlers = workspace.Logbook.Paddlers();
        if (paddlers.Count < 3)
            return null;
        lock (_gate)
        {
            long change = workspace.Logbook.LastChange;
            if (_known is not { } known || known.Change != change)
            {
                _known = known = (change, Evidence(
                    paddlers, workspace.Logbook.Outings(), workspace.Logbook.TechniqueChecks(), workspace.Logbook.Hulls(),
                        workspace.Logbook.Paddles(), workspace.Today));
            }

            return SquadPrior.Of(paddler, known.Evidence, TuningSettings.Default);
        }
    }

    /// <summary>What each log by itself says to others; those that have not settled, or cannot be weighed, say nothing.</summary>
    /// <param name="paddlers">Everybody.</param>
    /// <param name="outings">All outings.</param>
    /// <param name="checks">All technique checks.</param>
    /// <param name="hulls">All hulls.</param>
    /// <param name="paddles">All paddles.</param>
    /// <param name="today">The day asked about.</param>
    public static IReadOnlyList<SquadEvidence> Evidence(
        IReadOnlyList<Paddler> paddlers, IEnumerable<Outing> outings, IEnumerable<TechniqueCheck> checks,
        IReadOnlyList<Hull> hulls, IReadOnlyList<Paddle> paddles, DateOnly today)
    {
        if (paddlers.Count < 3 || paddles.Count == 0)
            return [];
        ILookup<Guid, Outing> outingsOf = outings.ToLookup(outing => outing.PaddlerId);
        ILookup<Guid, TechniqueCheck> checksOf = checks.ToLookup(check => check.PaddlerId);
        return
        [
            .. paddlers.Where(paddler => outingsOf.Contains(paddler.Id)).AsParallel().AsOrdered().Select(paddler => Of(new AnalysisInput
            {
                Paddler = paddler,
                Hull = hulls[0],
                Paddle = paddles[0],
                Hulls = hulls,
                Paddles = paddles,
                Outings = [.. outingsOf[paddler.Id]],
                TechniqueChecks = [.. checksOf[paddler.Id]],
                Today = today,
            })).OfType<SquadEvidence>(),
        ];
    }

    private static SquadEvidence? Of(AnalysisInput input)
    {
        try
        {
            return SquadEvidence.Of(input);
        }
        catch (UnweighableLogException)
        {
            // A log that cannot be weighed teaches nobody; its own paddler is told.
            return null;
        }
    }
}
