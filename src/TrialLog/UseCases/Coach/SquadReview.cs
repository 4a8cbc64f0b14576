using TrialLog.Domain;
using TrialLog.Reports;
using TrialLog.Tuning;

namespace TrialLog.UseCases.Coach;

/// <summary>What a whole squad does this week: every paddler's analysis, and a card for each.</summary>
internal static class SquadReview
{
    /// <summary>
    /// Analyses every paddler of the logbook, on all processors, and notes the cards as given. A paddler whose hull or
    /// paddle cannot be told is left out with the reason.
    /// </summary>
    public static SquadContents Of(Desk desk, string? hullName, string? paddleName)
    {
        ILookup<Guid, Outing> outings = desk.Logbook.Outings().ToLookup(outing => outing.PaddlerId);
        var questions = new List<TuningQuestion>();
        var leftOut = new List<string>();
        foreach (Paddler paddler in desk.Logbook.Paddlers())
        {
            List<Outing> theirs = [.. outings[paddler.Id]];
            try
            {
                questions.Add(desk.Question(desk.Choose(paddler, hullName, paddleName, theirs), theirs));
            }
            catch (RequestException reason)
            {
                leftOut.Add($"{paddler.Name}: {reason.Message}");
            }
        }

        List<Analysis> analyses = [.. questions.AsParallel().AsOrdered().Select(Tuner.Analyse)];
        NextOuting.Record(desk, analyses);
        return new SquadContents([.. analyses.Select(analysis => SquadMember.Of(analysis, outings[analysis.Paddler.Id]))], desk.Today, ProgramVersion.Text)
        {
            LeftOut = leftOut,
        };
    }
}
