using TrialLog.Domain.Log;

namespace TrialLog.Application.Coaching;

/// <summary>A trial card that was given, and what was paddled by it.</summary>
/// <param name="Card">The card as it was given.</param>
/// <param name="Paddled">The outing paddled by it; null while there is none.</param>
/// <param name="Match">How far the outing followed the card.</param>
public sealed record Advice(GivenCard Card, Outing? Paddled, AdviceMatch Match)
{
    /// <summary>How far the outing followed the card, in words: <c>as suggested</c>.</summary>
    public string MatchInWords => Match switch
    {
        AdviceMatch.AsSuggested => "as suggested",
        AdviceMatch.OtherOrder => "another order",
        AdviceMatch.Partly => "partly as suggested",
        AdviceMatch.OtherLengths => "other lengths",
        _ => "not paddled",
    };
}

/// <summary>How far an outing followed a card.</summary>
public enum AdviceMatch
{
    /// <summary>Nothing was paddled by it, as far as the log tells.</summary>
    NotPaddled,

    /// <summary>The card's lengths in the card's order.</summary>
    AsSuggested,

    /// <summary>The card's lengths in another order.</summary>
    OtherOrder,

    /// <summary>At least half of the card's lengths.</summary>
    Partly,

    /// <summary>The outing was logged as the card's, with other lengths.</summary>
    OtherLengths,
}
