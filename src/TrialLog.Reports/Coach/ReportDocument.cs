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
        LengthUnit unit = analysis.Paddler.Unit;
        var names = new Names(contents);
        IReadOnlyList<Advice> advice = AdviceHistory.Of(contents.Cards, contents.Outings);
        var sections = new List<Section?>
        {
            TheAnswer(analysis, unit, sore),
            CautionsSection.Of(CautionsSection.For(analysis)),
            NextOuting(analysis, unit, sore),
            Curve(analysis, unit, sore),
            Progress(contents, unit),
            TrialsSection.Of(contents, advice, names, unit),
            Checks(analysis),
            ClassicalSection.Of(contents.Classical, unit),
            Carried(contents, unit),
            NotesSection.Of(contents, names),
            new("Method", new Paragraph(Method)),
        };
        return new Document(
            $"Paddle length of {PlainText.Line(analysis.Paddler.Name)}",
            $"In {PlainText.Line(analysis.Hull.Name)} with {PlainText.Line(analysis.Paddle.Name)}. {Say.Count(analysis.Outings, "outing")}, {Say.Count(analysis.Pieces, "piece")} that count.",
            [.. sections.OfType<Section>()],
            $"TrialLog {PlainText.Line(contents.Version)}, {Say.Day(contents.Date)}.");
    }

    private static Section TheAnswer(Analysis analysis, LengthUnit unit, bool sore)
    {
        BestLength best = analysis.Best;
        List<Fact> facts = [.. Answer.Figures(analysis).Select(figure => new Fact(figure.Label, figure.Value))];
        if (!sore)
            facts.Insert(1, new("A quarter inch", Say.Chance(best.WithinQuarterInch), Answer.WithinAQuarter(best.WithinQuarterInch, unit)));
        return new("The answer", new Paragraph(PlainText.Line(Verdict.Of(analysis)), Answers: true), new Facts(facts));
    }

    private static Section NextOuting(Analysis analysis, LengthUnit unit, bool sore) => new("Next outing",
        new Cards([CardWords.ToFill(Answer.CardHeading(analysis), analysis, null)]));

    private static Section Curve(Analysis analysis, LengthUnit unit, bool sore) => new("Speed against length",
        new PictureRow([new Figure(ResponsePicture.Of(analysis, unit, sore)), new Figure(ProbabilityPicture.Of(analysis, unit, sore))]),
        new Paragraph((analysis.Flat ? "The curve is so flat that nothing within an inch either way matters. " : "")
            + $"Curvature: {Say.Percent(analysis.Curvature.Median)} of speed per inch squared for a paddler alone in the hull ({Say.Percent(analysis.Curvature.Low)} to {Say.Percent(analysis.Curvature.High)})."));

    private static Section? Progress(ReportContents contents, LengthUnit unit) => contents.Progress.Count == 0 ? null : new("Progress",
        new PictureRow([
            new Figure(ProgressPictures.BestLength(contents.Progress, unit)),
            new Figure(ProgressPictures.GainLeft(contents.Progress, contents.Analysis.WorthwhilePercent)),
        ]));

    private static Section Checks(Analysis analysis) => new("Warnings", analysis.Checks.Count == 0
        ? new Paragraph(Warnings.None)
        : new Bullets([.. Warnings.Of(analysis).Select(PlainText.Line)]));

    private static Section? Carried(ReportContents contents, LengthUnit unit) => contents.Carried.Count == 0 ? null : new("Other hulls and blades",
        new Table("The same search carried over by the seat-height rule and the exposed-shaft rule (common practice, no published source)",
            [new("Hull"), new("Paddle"), new("Blade", true), new("Best length", true), new("Likely range", true), new("Within a quarter inch", true), new("Pieces in it", true), new("Remarks")],
            [.. contents.Carried.Select(carried => (IReadOnlyList<string>)
            [
                PlainText.Line(carried.Hull.Name), PlainText.Line(carried.Paddle.Name), Say.Length(carried.Paddle.Blade, unit), Say.Length(carried.Ideal.Length, unit),
                Say.Range(carried.Best.LikelyLow, carried.Best.LikelyHigh, unit), Say.Chance(carried.Ideal.WithinQuarterInch), $"{carried.PiecesInHull}", Remarks(carried),
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
        return remarks.Count == 0 ? Say.Nothing : string.Join("; ", remarks);
    }
}
