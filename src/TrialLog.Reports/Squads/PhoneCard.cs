using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Squads;

/// <summary>A card for a phone: one page that needs no network, its lengths to be read at arm's length with wet hands.</summary>
internal static class PhoneCard
{
    /// <summary>The page.</summary>
    public static string ToHtml(Analysis analysis, GivenCard? standing, DateOnly date, string version)
    {
        return Html.Write(new Document(
            PlainText.Line(analysis.Paddler.Name),
            $"{PlainText.Line(analysis.Hull.Name)} with {PlainText.Line(analysis.Paddle.Name)}. {Answer.Plan(analysis.Card)}.",
            [
                new("Paddle these, in this order", new LargeLengths(CardReason.Lengths(analysis, standing))),
                CautionsSection.Of(CautionsSection.For(analysis)),
                new("Why these", new Paragraph(PlainText.Line(CardReason.Of(analysis, standing)))),
            ],
            $"TrialLog {PlainText.Line(version)}, {Say.Day(date)}."));
    }

    /// <summary>The card in a line to send: <c>Ilse: paddle in this order 49, 51¼, 51¼, 49 in, OC1 with …</c></summary>
    public static string Message(Analysis analysis, GivenCard? standing) =>
        $"{PlainText.Line(analysis.Paddler.Name)}: paddle in this order {CardReason.InALine(analysis, standing)}, " +
            $"{PlainText.Line(analysis.Hull.Name)} with {PlainText.Line(analysis.Paddle.Name)}, "
        + $"{Answer.Plan(analysis.Card)}. {Cautions.Pain}";
}
