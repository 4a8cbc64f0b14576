using System.Collections.Concurrent;
using TrialLog.Application.Next;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Squads;

/// <summary>What a whole squad does this week: every paddler's analysis, and a card for each.</summary>
internal static class SquadReview
{
    /// <summary>
    /// Analyses every paddler of the logbook, on all processors, and notes the cards as given to those who test. A paddler whose
    /// hull or paddle cannot be told has a row all the same, which says so.
    /// </summary>
    public static SquadContents Of(Workspace workspace, string? hullName, string? paddleName, IProgress<int>? done = null)
    {
        SquadContents squad = Look(workspace, hullName, paddleName, done);
        NextOuting.Record(workspace, [.. squad.Rows.Where(row => row.Tests).Select(row => row.Analysis!)]);
        return squad;
    }

    /// <summary>As <see cref="Of"/>, noting nothing.</summary>
    public static SquadContents Look(Workspace workspace, string? hullName, string? paddleName, IProgress<int>? done = null)
    {
        if (hullName is not null)
            workspace.HullNamed(hullName);
        if (paddleName is not null)
            workspace.PaddleNamed(paddleName);
        var rows = new List<SquadRow>();
        ILookup<Guid, GivenCard> cards = workspace.Logbook.Cards().ToLookup(card => card.PaddlerId);
        int count = 0;

        // One log after the other, as there are processors for them: a large club's logs are not all held at once.
        rows.AddRange(Partitioner.Create(Questions(), EnumerablePartitionerOptions.NoBuffering).AsParallel().AsOrdered()
            .Select(question =>
            {
                Analysis analysis = Tuner.Analyse(question);
                done?.Report(Interlocked.Increment(ref count));
                return WithItsCard(workspace, SquadRow.Of(analysis, question.Outings, workspace.Today));
            }).ToList());
        return new SquadContents(rows, workspace.Today, ProgramVersion.Text);

        IEnumerable<AnalysisInput> Questions()
        {
            foreach (Paddler paddler in workspace.Logbook.Paddlers())
            {
                IReadOnlyList<Outing> theirs = workspace.Logbook.Outings(paddler.Id);
                Chosen? chosen = null;
                try
                {
                    chosen = (theirs.Count == 0 && hullName is null && paddleName is null
                        ? ByLastCard(workspace, paddler, cards[paddler.Id]) : null)
                        ?? workspace.Choose(paddler, hullName, paddleName, theirs);
                }
                catch (RequestException)
                {
                    rows.Add(SquadRow.Of(
                        paddler, null, null, null, theirs, workspace.Logbook.SorenessClearances(paddler.Id), workspace.Today));
                }

                if (chosen is not null)
                    yield return workspace.Question(chosen, theirs);
            }
        }
    }

    // A card that the coach chose, or that only the partner may read, is the one to hand out.
    private static SquadRow WithItsCard(Workspace workspace, SquadRow row) =>
        NextOuting.StandingCard(workspace, row.Analysis!) is { } standing
            ? row with { Analysis = row.Analysis! with { Card = standing.Card }, StandingCard = standing } : row;

    // Before the first outing, the card that was given tells what is going to be paddled.
    private static Chosen? ByLastCard(Workspace workspace, Paddler paddler, IEnumerable<GivenCard> cards) =>
        cards.MaxBy(card => card.GivenAt) is { } last
        && workspace.Logbook.Hulls().FirstOrDefault(hull => hull.Id == last.HullId) is { } hull
        && workspace.Logbook.Paddles().FirstOrDefault(paddle => paddle.Id == last.PaddleId) is { } paddle
            ? new Chosen(paddler, hull, paddle)
            : null;
}
