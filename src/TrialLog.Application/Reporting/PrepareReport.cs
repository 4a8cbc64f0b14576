using TrialLog.Application.Coaching;
using TrialLog.Application.Next;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Classical;
using TrialLog.Tuning.Model;

namespace TrialLog.Application.Reporting;

/// <summary>Gathers what the coach's report of one paddler is written from.</summary>
internal static class PrepareReport
{
    public static ReportContents Of(Workspace workspace, Chosen chosen, bool withNotes, bool forThePaddler = false)
    {
        AnalysisInput question = workspace.Question(chosen);
        IReadOnlyList<GivenCard> cards = workspace.Logbook.Cards(chosen.Paddler.Id);
        Analysis analysis = Tuner.Analyse(question);
        GivenCard? standing = NextOuting.StandingCard(workspace, analysis);
        return new ReportContents
        {
            Analysis = standing is null ? analysis : analysis with { Card = standing.Card },
            StandingCard = standing,
            Outings = question.Outings,
            Hulls = question.Hulls,
            Paddles = question.Paddles,
            Progress = Tuner.Progress(question),
            Advice = AdviceHistory.Of(cards, question.Outings, workspace.DayOf),
            Carried = Tuner.Carry(question, With(OwnGear.Hulls(workspace, chosen.Paddler, question.Outings), chosen.Hull),
                With(OwnGear.Paddles(workspace, chosen.Paddler, question.Outings), chosen.Paddle)),
            Classical = ClassicalAnalysis.Fit(question),
            Notes = withNotes ? CoachNotes.About(workspace, chosen.Paddler) : [],
            Decisions = [.. workspace.Logbook.Decisions(chosen.Paddler.Id).Where(decision => decision.HullId == chosen.Hull.Id)],
            ForThePaddler = forThePaddler,
            Date = workspace.Today,
            Version = ProgramVersion.Text,
        };
    }

    // What is reported on is on the list even where it is not theirs: the coach named it.
    private static IReadOnlyList<T> With<T>(IReadOnlyList<T> own, T chosen) => own.Contains(chosen) ? own : [chosen, .. own];
}
