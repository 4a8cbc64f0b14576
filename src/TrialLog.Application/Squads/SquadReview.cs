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
    public static SquadContents Of(Workspace workspace, string? hullName, string? paddleName)
    {
        SquadContents squad = Look(workspace, hullName, paddleName);
        NextOuting.Record(workspace, [.. squad.Rows.Where(row => row.Tests).Select(row => row.Analysis!)]);
        return squad;
    }

    /// <summary>As <see cref="Of"/>, noting nothing.</summary>
    public static SquadContents Look(Workspace workspace, string? hullName, string? paddleName)
    {
        if (hullName is not null)
            workspace.HullNamed(hullName);
        if (paddleName is not null)
            workspace.PaddleNamed(paddleName);
        ILookup<Guid, Outing> outings = workspace.Logbook.Outings().ToLookup(outing => outing.PaddlerId);
        var questions = new List<AnalysisInput>();
        var rows = new List<SquadRow>();
        ILookup<Guid, GivenCard> cards = workspace.Logbook.Cards().ToLookup(card => card.PaddlerId);
        foreach (Paddler paddler in workspace.Logbook.Paddlers())
        {
            List<Outing> theirs = [.. outings[paddler.Id]];
            try
            {
                Chosen chosen = (
                    theirs.Count == 0 && hullName is null && paddleName is null ? ByLastCard(workspace, paddler, cards[paddler.Id]) : null)
                    ?? workspace.Choose(paddler, hullName, paddleName, theirs);
                questions.Add(workspace.Question(chosen, theirs));
            }
            catch (RequestException)
            {
                rows.Add(SquadRow.Of(paddler, null, null, null, theirs, workspace.Logbook.SorenessClearances(paddler.Id), workspace.Today));
            }
        }

        rows.AddRange(questions.AsParallel().AsOrdered().Select(Tuner.Analyse).AsEnumerable()
            .Select(analysis => WithItsCard(workspace, SquadRow.Of(analysis, [.. outings[analysis.Paddler.Id]], workspace.Today))));
        return new SquadContents(rows, workspace.Today, ProgramVersion.Text);
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
