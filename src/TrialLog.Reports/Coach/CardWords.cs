using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Coach;

/// <summary>A trial card in words.</summary>
internal static class CardWords
{
    public static CardToFill ToFill(string heading, Analysis analysis, string? caution) =>
        new(heading, Answer.Plan(analysis.Card), [.. analysis.Card.Lengths.Select(length => Say.Length(length, analysis.Paddler.Unit))],
            PlainText.Line(CardReason.Of(analysis)), caution);
}
