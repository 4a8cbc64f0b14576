using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Reports.Coach;

/// <summary>A trial card in words.</summary>
internal static class CardWords
{
    /// <summary>Distance, effort and rest: <c>4 pieces of 1 km at effort 6, 4:00 easy between</c>.</summary>
    public static string Plan(TrialCard card) => card.Lengths.Count == 1
        ? $"1 piece of {card.Distance} at effort {card.Effort} (CR10)"
        : $"{card.Lengths.Count} pieces of {card.Distance} at effort {card.Effort} (CR10), {card.Rest} easy between";

    public static CardToFill ToFill(string heading, TrialCard card, Said said, string? caution) =>
        new(heading, Plan(card), [.. card.Lengths.Select(said.Setting)], PlainText.Line(card.Reason), caution);
}
