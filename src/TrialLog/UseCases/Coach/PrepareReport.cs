using TrialLog.Domain;
using TrialLog.Reports;
using TrialLog.Tuning;

namespace TrialLog.UseCases.Coach;

/// <summary>Gathers what the coach's report of one paddler is written from.</summary>
internal static class PrepareReport
{
    public static ReportContents Of(Desk desk, Chosen chosen, bool withNotes)
    {
        TuningQuestion question = desk.Question(chosen);
        IReadOnlyList<GivenCard> cards = desk.Logbook.Cards(chosen.Paddler.Id);
        return new ReportContents
        {
            Analysis = Tuner.Analyse(question),
            Outings = question.Outings,
            Hulls = question.Hulls,
            Paddles = question.Paddles,
            Progress = Tuner.Progress(question),
            Cards = cards,
            Carried = Tuner.Carry(question, question.Hulls, question.Paddles),
            Classical = Classical.Fit(question),
            Notes = withNotes ? CoachNotes.About(desk, chosen.Paddler) : [],
            Date = desk.Today,
            Version = ProgramVersion.Text,
        };
    }
}
