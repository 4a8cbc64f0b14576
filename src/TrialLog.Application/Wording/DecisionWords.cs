using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Wording;

/// <summary>Decisions in words.</summary>
internal static class DecisionWords
{
    /// <summary><c>ordered 49¼ in on 3 May 2026</c>.</summary>
    public static string Short(Decision decision, LengthUnit unit) =>
        $"{Done(decision.Kind)} {Say.Length(decision.Length, unit)} on {Say.DayInWords(decision.Date)}";

    /// <summary>The decision in a sentence, with who and why.</summary>
    public static string Sentence(Decision decision, LengthUnit unit)
    {
        string done = Short(decision, unit);
        return $"{char.ToUpperInvariant(done[0])}{done[1..]}{(decision.By is null ? "" : $", by {PlainText.Line(decision.By)}")}" +
            $"{(decision.Because is null ? "" : $": {PlainText.Line(decision.Because).TrimEnd('.')}")}.";
    }

    /// <summary>
    /// The decision with what comes after it: the season after speaks of whether it held. While it hurts, of the decision alone.
    /// </summary>
    public static string WithAfter(Decision decision, int outingsSince, Analysis analysis, LengthUnit unit) =>
        analysis.Standing == Standing.Sore ? Sentence(decision, unit)
            : $"{Sentence(decision, unit)} {After(decision, outingsSince, analysis.Ideal.Length, unit)}";

    /// <summary>What comes after a decision, once nothing hurts.</summary>
    public static string After(Decision decision, int outingsSince, Length bestNow, LengthUnit unit)
    {
        string since = outingsSince == 0 ? "Nothing was paddled since" : $"{Say.Count(outingsSince, "outing")} since";
        double more = bestNow.InchesMoreThan(decision.Length);
        return decision.Kind is DecisionKind.Raced or DecisionKind.Kept or DecisionKind.Delivered or DecisionKind.Cut && outingsSince > 0
            ? Math.Abs(more) < 0.2 ? $"{since}: the log still points to {Say.Length(decision.Length, unit)}."
                : $"{since}: the log now points {Say.Fraction(Math.Abs(more), unit)} {(more > 0 ? "longer" : "shorter")}. Compare the " +
                    $"two in a few outings before you change anything."
            : decision.Kind == DecisionKind.Ordered ? $"{since}. When it comes, paddle it a few outings beside your adjustable one, then " +
                $"say what became of it: triallog decide --delivered or --kept."
            : $"{since}. A few outings next season will show whether it holds.";
    }

    private static string Done(DecisionKind kind) => kind switch
    {
        DecisionKind.Ordered => "ordered",
        DecisionKind.Cut => "cut to",
        DecisionKind.Delivered => "delivered at",
        DecisionKind.Kept => "kept at",
        _ => "raced at",
    };
}
