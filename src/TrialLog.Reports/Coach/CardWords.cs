using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Coach;

/// <summary>A trial card in words.</summary>
internal static class CardWords
{
    public static CardToFill ToFill(string heading, Analysis analysis, GivenCard? standing, string? caution, Voice voice) =>
        new(heading, Answer.Plan(analysis.Card), CardReason.Lengths(analysis, standing),
            PlainText.Line(CardReason.Of(analysis, standing, voice)),
            caution);
}
