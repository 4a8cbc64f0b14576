using TrialLog.Application.Coaching;
using TrialLog.Application.Reporting;
using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;
using TrialLog.Reports.Pictures;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Reports.Coach;

/// <summary>What the coach's report says, section by section: the answer first, then what it rests on.</summary>
internal static class ReportDocument
{
    private const string Method =
        "Conditions move the pace between outings far more than paddle length does, so lengths are compared within an "
        + "outing, and each outing has its own level. One model explains every piece at once: the hull's level, the outing, "
        + "the order in the outing, effort, distance, season and wind, and a curve that loses speed with the square of the "
        + "distance from the best length. Lengths in other hulls and with other blades count through the seat-height rule and "
        + "the exposed-shaft rule. What was known beforehand (body measures) enters as a prior and gives way as pieces come "
        + "in. Pieces far off "
        + "the rest count for less. The best length is the setting with the least expected loss of speed; the likely range "
        + "holds it 9 times in 10; the next card is the one expected to win the most.";

    public static Document Of(ReportContents contents)
    {
        Analysis analysis = contents.Analysis;
        bool sore = analysis.Standing == Standing.Sore;
        LengthUnit unit = analysis.Paddler.Unit;
        Voice voice = contents.ForThePaddler ? Voice.ToThePaddler : new(PlainText.Line(analysis.Paddler.Name));
        var names = new Names(contents);
        IReadOnlyList<Advice> advice = contents.Advice;

        // While it hurts the page says one thing: no card, no forecast, nothing that tells what soreness costs in speed.
        List<Section?> first = sore
            ? [TheAnswer(analysis, voice), Decided(contents, unit), CautionsSection.Of(CautionsSection.For(analysis, voice))]
            :
            [
                TheAnswer(analysis, voice), Curve(analysis, contents.StandingCard, unit, voice),
                .. SecondSheet(Checks(analysis, voice), Search(contents, unit)), Decided(contents, unit),
                    CautionsSection.Of(CautionsSection.For(analysis, voice)),
            ];
        List<Section?> appendices =
        [
            TrialsSection.Outings(contents, advice, names, unit), TrialsSection.Pieces(contents, names, unit),
                sore ? null : Settings(analysis, unit),
            sore ? null : ClassicalSection.Of(contents.Classical, analysis.Hull, unit), sore ? null : Carried(contents, unit),
                NotesSection.Of(contents, names),
            sore ? null : new("Method", new Paragraph(Method)),
        ];
        return new Document(
            $"Paddle length of {PlainText.Line(analysis.Paddler.Name)}",
            $"In {PlainText.Line(analysis.Hull.Name)} with {PlainText.Line(analysis.Paddle.Name)}. " +
                $"{Say.Count(analysis.Outings, "outing")}, {Say.Count(analysis.Pieces, "piece")} that count.",
            [.. first.OfType<Section>()],
            $"TrialLog {PlainText.Line(contents.Version)}, {Say.Day(contents.Date)}.")
        {
            Appendices = [.. appendices.OfType<Section>()],
        };
    }

    private static Section TheAnswer(Analysis analysis, Voice voice) => new("The answer",
        new Paragraph(PlainText.Line(Verdict.Of(analysis, voice)), Answers: true),
        new Facts([.. Answer.Figures(analysis, voice).Select(figure => new Fact(figure.Label, figure.Value))]));

    // The card beside the curve that it comes from, so that both are on the first sheet.
    private static Section Curve(Analysis analysis, GivenCard? standing, LengthUnit unit, Voice voice)
    {
        var curve = new Figure(ResponsePicture.Of(analysis, unit));
        return SquadRow.CanTest(analysis, standing)
            ? new("The curve, and the next outing", new PictureAndCard(curve, new Cards(
                [CardWords.ToFill(
                    $"Next outing: {PlainText.Line(analysis.Hull.Name)} with {PlainText.Line(analysis.Paddle.Name)}", analysis,
                    standing, null, voice)])))
            : new("The curve", curve);
    }

    private static Section? Search(ReportContents contents, LengthUnit unit) => contents.Progress.Count == 0 ? null
        : new("How the search went", new PictureRow(
            [
                new(ProgressPictures.BestLength(contents.Progress, unit)),
                new(ProgressPictures.Chance(contents.Progress, contents.Analysis.WorthwhilePercent)),
                new(ProgressPictures.GainLeft(contents.Progress, contents.Analysis.PricePercent)),
            ]));

    private static IEnumerable<Section> SecondSheet(params IEnumerable<Section?> sections) =>
        sections.OfType<Section>().Select((section, at) => section with { BeginsASheet = at == 0 });

    private static Section? Decided(ReportContents contents, LengthUnit unit) => contents.Decisions.Count == 0 ? null : new("Decided",
        new Bullets(
            [.. contents.Decisions.OrderBy(decision => decision.Date).ThenBy(decision => decision.Id)
            .Select(decision => DecisionWords.Sentence(decision, unit))]));

    private static Section? Checks(Analysis analysis, Voice voice) => analysis.Checks.Count == 0 ? null : new("Warnings",
        new Bullets([.. Warnings.Of(analysis, voice).Select(PlainText.Line)]));

    private static Section Settings(Analysis analysis, LengthUnit unit) => new("How likely each setting is",
        new Figure(ProbabilityPicture.Of(analysis, unit)),
        new Paragraph($"{Answer.WithinAQuarter(analysis.Best.WithinQuarterInch, unit)} of the true best length. "
            + $"Curvature: {Say.Percent(analysis.Curvature.Median)} of speed per inch squared for a paddler alone in the hull, likely "
            + $"{Say.Percent(analysis.Curvature.Low)} to {Say.Percent(analysis.Curvature.High)}."));

    private static Section? Carried(ReportContents contents, LengthUnit unit) =>
        contents.Carried.Count == 0 ? null : new("Hulls and paddles",
        new Table("The same search carried over by the seat-height rule and the exposed-shaft rule (common practice, no published source)",
            [new("Hull"), new("Paddle"), new("Blade", true), new("Best length", true), new("Likely range", true),
                new("Within a quarter inch", true), new("Pieces in it", true), new("Remarks")],
            [.. contents.Carried.Select(carried => (IReadOnlyList<string>)
            [
                PlainText.Line(carried.Hull.Name), PlainText.Line(carried.Paddle.Name), Say.Length(carried.Paddle.Blade, unit),
                    Say.Length(carried.Ideal.Length, unit),
                Say.Range(carried.Best.LikelyLow, carried.Best.LikelyHigh, unit), Say.Chance(carried.Ideal.WithinQuarterInch),
                    $"{carried.PiecesInHull}", Remarks(carried),
            ])]));

    private static string Remarks(Assessment carried)
    {
        var remarks = new List<string>();
        if (carried.PiecesInHull == 0)
            remarks.Add("by rule alone");
        if (!carried.InRange)
            remarks.Add("beyond this paddle's range");
        if (carried.DiminishingReturns)
            remarks.Add("time to stop");
        return remarks.Count == 0 ? Say.Nothing : string.Join("; ", remarks);
    }
}
