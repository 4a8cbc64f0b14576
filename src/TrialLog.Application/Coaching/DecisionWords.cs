using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Coaching;

/// <summary>What was decided about a length, in a sentence.</summary>
internal static class DecisionWords
{
    /// <summary>One decision: <c>3 May 2026: ordered at 49½ in, by Tova Lind (settled since April).</c></summary>
    public static string Of(Decision decision, LengthUnit unit)
    {
        string length = Say.Length(decision.Length, unit);
        string done = decision.Kind switch
        {
            DecisionKind.Ordered => $"ordered at {length}",
            DecisionKind.Cut => $"cut to {length}",
            DecisionKind.Delivered => $"delivered at {length}",
            DecisionKind.Kept => $"kept at {length}",
            _ => $"raced at {length}",
        };
        return $"{Say.DayInWords(decision.Date)}: {done}"
            + (decision.By is { } by ? $", by {PlainText.Line(by)}" : "") + (decision.Because is { } because ? $" ({PlainText.Line(because)})" : "") + ".";
    }
}
