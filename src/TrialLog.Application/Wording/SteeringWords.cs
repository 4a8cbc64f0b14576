using TrialLog.Application.Coaching;
using TrialLog.Domain.Sizing;

namespace TrialLog.Application.Wording;

/// <summary>What is said of a steering paddle.</summary>
internal static class SteeringWords
{
    /// <summary>What to do and what to avoid. Common practice, no source.</summary>
    /// <param name="large">Whether the blade is large.</param>
    public static IReadOnlyList<string> Advice(bool large) =>
    [
        "A steering paddle is personal: this is a length to begin with, never one tuned for speed.",
        "Borrow one of about this length, or set an adjustable shaft to it, and steer a few outings in sheltered water " +
            "before you order or cut.",
        "Try the strokes you steer with most: post, draw, poke, and forward strokes between them.",
        large
            ? "Order the shaft uncut if you like, since it cannot grow, but cut it before you steer in waves. A long shaft lifts the top " +
                "hand, and that is what a large blade forbids."
            : "Leave it long at first: a shaft can be cut, not grown.",
    ];

    /// <summary>Where it could hurt.</summary>
    public static readonly IReadOnlyList<string> Cautions =
    [
        "Never draw or post with the blade deep and the top hand overhead: a big steering blade deep under an overhead arm injures.",
        "If shoulder, elbow or back hurt, stop steering with that paddle; a clinician and a qualified coach decide.",
        "Follow local rules on flotation, leash, cold water and traffic: whoever steers answers for the crew.",
    ];

    /// <summary>Why the length to begin with is what it is.</summary>
    public static string Why(SteeringProposal proposal) => proposal.Large
        ? "The blade is large: the longer it is, the longer the paddle, but with the top hand kept lower than for forward " +
            "strokes, so this is shorter than the exposed-shaft rule alone would give."
        : "The blade is not much larger than a forward blade, so the length is much as for forward paddling.";
}
