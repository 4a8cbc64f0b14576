using TrialLog.Application.Next;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Squads;

/// <summary>What a whole squad does this week: every paddler's analysis, and a card for each.</summary>
internal static class SquadReview
{
    /// <summary>
    /// Analyses every paddler of the logbook, on all processors, and notes the cards as given. A paddler whose hull or
    /// paddle cannot be told is left out with the reason.
    /// </summary>
    public static SquadContents Of(Workspace workspace, string? hullName, string? paddleName)
    {
        ILookup<Guid, Outing> outings = workspace.Logbook.Outings().ToLookup(outing => outing.PaddlerId);
        var questions = new List<AnalysisInput>();
        var leftOut = new List<string>();
        ILookup<Guid, GivenCard> cards = workspace.Logbook.Cards().ToLookup(card => card.PaddlerId);
        foreach (Paddler paddler in workspace.Logbook.Paddlers())
        {
            List<Outing> theirs = [.. outings[paddler.Id]];
            try
            {
                Chosen chosen = (theirs.Count == 0 && hullName is null && paddleName is null ? ByLastCard(workspace, paddler, cards[paddler.Id]) : null)
                    ?? workspace.Choose(paddler, hullName, paddleName, theirs);
                questions.Add(workspace.Question(chosen, theirs));
            }
            catch (RequestException reason)
            {
                leftOut.Add($"{paddler.Name}: {reason.Message} A first card settles it: triallog next --paddler \"{paddler.Name}\" --paddle NAME");
            }
        }

        List<Analysis> analyses = [.. questions.AsParallel().AsOrdered().Select(Tuner.Analyse)];
        NextOuting.Record(workspace, analyses);
        return new SquadContents([.. analyses.Select(analysis => SquadMember.Of(analysis, [.. outings[analysis.Paddler.Id]], workspace.Today))], workspace.Today, ProgramVersion.Text)
        {
            LeftOut = leftOut,
        };
    }

    // Before the first outing, the card that was given tells what is going to be paddled.
    private static Chosen? ByLastCard(Workspace workspace, Paddler paddler, IEnumerable<GivenCard> cards) =>
        cards.MaxBy(card => card.GivenAt) is { } last
        && workspace.Logbook.Hulls().FirstOrDefault(hull => hull.Id == last.HullId) is { } hull
        && workspace.Logbook.Paddles().FirstOrDefault(paddle => paddle.Id == last.PaddleId) is { } paddle
            ? new Chosen(paddler, hull, paddle)
            : null;
}
