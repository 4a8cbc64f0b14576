using TrialLog.Application.Logging;
using TrialLog.Application.Next;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Base;
using TrialLog.Screens.Next;
using TrialLog.Screens.Squads;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens;

/// <summary>What the screens show, in sentences alone: for those who cannot see them, and where there is no terminal for them.</summary>
internal static class ScreensInWords
{
    /// <summary>The paragraphs; a line that begins with <c>#</c> is a heading.</summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="chosen">Whose length, in which hull, with which paddle.</param>
    /// <param name="analyses">The analyses.</param>
    public static IEnumerable<string> Of(Workspace workspace, Chosen chosen, Analyses analyses)
    {
        IReadOnlyList<Outing> outings = workspace.Logbook.Outings(chosen.Paddler.Id);
        AnalysisInput question = workspace.Question(chosen, outings);
        Analysis found = analyses.Analyse(question);
        GivenCard? given = NextOuting.StandingCard(OpenCard.Of(workspace, chosen), found);
        Analysis analysis = given is null ? found : found with { Card = given.Card };
        HashSet<Guid> blind = [.. outings.Where(outing => outing.Blind).Select(outing => outing.Id)];
        IReadOnlyList<ProgressPoint> points = analyses.Progress(question);
        double worthwhile = chosen.Paddler.WorthwhilePercent ?? TuningSettings.Default.WorthwhilePercent;
        List<string> lines =
        [
            $"# {PlainText.Line(chosen.Paddler.Name)}, {PlainText.Line(chosen.Hull.Name)} with {PlainText.Line(chosen.Paddle.Name)}",
            .. HomeText.InWords(analysis, given).Split('\n'),
            "", "# The curve", .. PictureWords.Curve(analysis, blind),
            "", "# Progress", .. points.Count == 0 ? [] : PictureWords.Progress(points, worthwhile, chosen.Paddler.Unit),
            "", "# The season", .. PictureWords.Season(outings, chosen.Paddler.Unit),
        ];
        SquadState squad = SquadState.Read(workspace);
        if (squad.Paddlers.Count > 1)
        {
            Dictionary<Chosen, Analysis> all = squad.Paddlers.Where(one => one.Input is not null)
                .ToDictionary(one => one.Chosen!, one => analyses.Analyse(one.Input!));
            lines.AddRange(
                ["", "# Squad", .. SquadState.InWords(squad.Rows(one => all.GetValueOrDefault(one), workspace.Today), workspace.Today)]);
        }

        return lines;
    }
}
