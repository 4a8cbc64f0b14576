using TrialLog.Application.Coaching;
using TrialLog.Application.Next;
using TrialLog.Application.Reporting;
using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Reports.Pictures;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Wording;

namespace TrialLog.Reports.Coach;

/// <summary>What the coach's report says, section by section: the answer first, then what it rests on.</summary>
internal static class ReportDocument
{
    private const string Method =
        "Conditions move the pace between outings far more than paddle length does, so lengths are compared within an "
        + "outing, and each outing has its own level. One model explains every piece at once: the hull's level, the outing, "
        + "the order in the outing, effort, distance, season and wind, and a curve that loses speed with the square of the "
        + "distance from the best length. Lengths in other hulls and with other blades count through the seat-height rule and "
        + "the exposed-shaft rule. What was known beforehand (body measures) enters as a prior and gives way as pieces come in. Pieces far off "
        + "the rest count for less. The best length is the setting with the least expected loss of speed; the likely range "
        + "is the central 90 % of the posterior; the next card is the one expected to win the most.";

    public static Document Of(ReportContents contents)
    {
        Analysis analysis = contents.Analysis;
        bool sore = RecentSoreness.Hurts(RecentSoreness.Worst(contents.Outings, contents.Date));
        var said = new Said(analysis.Paddler.Unit);
        var names = new Names(contents);
        IReadOnlyList<Advice> advice = AdviceHistory.Of(contents.Cards, contents.Outings);
        var sections = new List<Section?>
        {
            Answer(analysis, said, sore),
            CautionsSection.Of(CautionsSection.For(analysis)),
            NextOuting(analysis, said, sore),
            Curve(analysis, said, sore),
            Progress(contents, said),
            TrialsSection.Of(contents, advice, names, said),
            Checks(analysis),
            ClassicalSection.Of(contents.Classical, said),
            Carried(contents, said),
            NotesSection.Of(contents, names),
            new("Method", new Paragraph(Method)),
        };
        return new Document(
            $"Paddle length of {PlainText.Line(analysis.Paddler.Name)}",
            $"In {PlainText.Line(analysis.Hull.Name)} with {PlainText.Line(analysis.Paddle.Name)}. {Spoken.Count(analysis.Outings, "outing")}, {Spoken.Count(analysis.Pieces, "piece")} that count.",
            [.. sections.OfType<Section>()],
            $"TrialLog {PlainText.Line(contents.Version)}, {Said.Day(contents.Date)}.");
    }

    private static Section Answer(Analysis analysis, Said said, bool sore)
    {
        BestLength best = analysis.Best;
        return new("The answer",
            new Paragraph(PlainText.Line(analysis.Verdict), Answers: true),
            new Facts([
                new("Best length", said.Setting(best.Length), $"within a quarter inch: {Spoken.Chance(best.WithinQuarterInch)}"),
                new("Likely range", said.Range(best.LikelyLow, best.LikelyHigh), $"central {Spoken.Chance(best.Level)}"),
                new("Now", said.Setting(analysis.Current), analysis.Current == best.Length ? "this is the best length" : $"moving wins {Said.Percent(analysis.GainFromMovingPercent)}, {Said.Seconds(analysis.GainFromMovingSeconds)} over the goal event"),
                new("Gain left", Said.Percent(analysis.GainLeftPercent), $"{Said.Seconds(analysis.GainLeftSeconds)} in {Said.Duration(analysis.GoalSeconds)}, the goal event; worthwhile is {Said.Percent(analysis.WorthwhilePercent)}"),
                new("A worthwhile gain is left", Spoken.Chance(analysis.ProbabilityWorthwhileLeft), sore ? "but rest comes before testing" : analysis.DiminishingReturns ? "returns have diminished" : "testing still pays"),
                new("Outings to go", Said.OutingsToGo(analysis.OutingsToGo), "until returns diminish; a range is the central 80 %"),
            ]));
    }

    private static Section NextOuting(Analysis analysis, Said said, bool sore) => new("Next outing",
        new Cards([CardWords.ToFill(sore ? "Rest first; this card when it no longer hurts" : analysis.DiminishingReturns ? "Trial card, to test on regardless" : "Trial card", analysis.Card, said, null)]));

    private static Section Curve(Analysis analysis, Said said, bool sore) => new("Speed against length",
        new PictureRow([new Figure(ResponsePicture.Of(analysis, said, sore)), new Figure(ProbabilityPicture.Of(analysis, said, sore))]),
        new Paragraph((analysis.Flat ? "The curve is so flat that nothing within an inch either way matters. " : "")
            + $"Curvature: {Said.Percent(analysis.Curvature.Median)} of speed per inch squared for a paddler alone in the hull ({Said.Percent(analysis.Curvature.Low)} to {Said.Percent(analysis.Curvature.High)})."));

    private static Section? Progress(ReportContents contents, Said said) => contents.Progress.Count == 0 ? null : new("Progress",
        new PictureRow([
            new Figure(ProgressPictures.BestLength(contents.Progress, said)),
            new Figure(ProgressPictures.GainLeft(contents.Progress, contents.Analysis.WorthwhilePercent)),
        ]));

    private static Section Checks(Analysis analysis) => new("Health checks", analysis.Checks.Count == 0
        ? new Paragraph("Nothing found wrong with the trials themselves.")
        : new Bullets([.. analysis.Checks.Select(check => PlainText.Line(check.Says))]));

    private static Section? Carried(ReportContents contents, Said said) => contents.Carried.Count == 0 ? null : new("Other hulls and blades",
        new Table("The same search carried over by the seat-height rule and the exposed-shaft rule (common practice, no published source)",
            [new("Hull"), new("Paddle"), new("Blade", true), new("Best length", true), new("Likely range", true), new("Within a quarter inch", true), new("Pieces in it", true), new("Remarks")],
            [.. contents.Carried.Select(carried => (IReadOnlyList<string>)
            [
                PlainText.Line(carried.Hull.Name), PlainText.Line(carried.Paddle.Name), said.Setting(carried.Paddle.Blade), said.Setting(carried.Ideal.Length),
                said.Range(carried.Best.LikelyLow, carried.Best.LikelyHigh), Spoken.Chance(carried.Ideal.WithinQuarterInch), $"{carried.PiecesInHull}", Remarks(carried),
            ])]));

    private static string Remarks(Assessment carried)
    {
        var remarks = new List<string>();
        if (carried.PiecesInHull == 0)
            remarks.Add("by rule alone");
        if (!carried.InRange)
            remarks.Add("beyond this paddle's range");
        if (carried.DiminishingReturns)
            remarks.Add("returns have diminished");
        return remarks.Count == 0 ? Said.Nothing : string.Join("; ", remarks);
    }
}
