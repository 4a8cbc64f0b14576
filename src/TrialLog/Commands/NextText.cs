using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Wording;

namespace TrialLog.Commands;

/// <summary>The next trial card and what the log says, as text for a paddler.</summary>
internal static class NextText
{
    /// <param name="to">Where to.</param>
    /// <param name="analysis">What the log says.</param>
    /// <param name="width">Columns to write into.</param>
    /// <param name="sore">Whether the paddler has been sore of late: then the cautions come first, and the card waits.</param>
    public static void Write(TextWriter to, Analysis analysis, int width, bool sore)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        to.WriteLine($"{Quoted.Visible(analysis.Paddler.Name)} · {Quoted.Visible(analysis.Hull.Name)} · {Quoted.Visible(analysis.Paddle.Name)}   "
            + (analysis.Pieces == 0 ? "no outing logged yet" : $"{Count(analysis.Outings, "outing")}, {Count(analysis.Pieces, "piece")}"));
        to.WriteLine();
        if (sore)
        {
            WriteCautions(to, analysis, width);
            to.WriteLine();
        }

        Wrapped.Write(to, analysis.Verdict, width);
        to.WriteLine();
        foreach ((string label, string value) in Figures(analysis, unit))
            Wrapped.Write(to, value, width, $"  {label,-18}", 20);
        to.WriteLine();
        WriteCard(to, analysis.Card, unit, width, sore ? "When it no longer hurts" : analysis.DiminishingReturns ? "If you test on regardless" : "Next outing");
        foreach (HealthCheck check in analysis.Checks)
            Wrapped.Write(to, check.Says, width, "Check: ", 7);
        if (!sore)
            WriteCautions(to, analysis, width);
    }

    /// <summary>The figures behind the verdict, each with its label.</summary>
    public static IEnumerable<(string Label, string Value)> Figures(Analysis analysis, LengthUnit unit)
    {
        BestLength best = analysis.Best;
        yield return ("Best length", $"{best.Length.ToText(unit)}, likely {Saying.Range(best.LikelyLow, best.LikelyHigh, unit)} ({best.Level * 100:0} % sure); "
            + $"within {(unit == LengthUnit.Inches ? "¼ in" : "0.6 cm")}: {Saying.Chance(best.WithinQuarterInch)}");
        yield return ("Where you are", analysis.Current == best.Length
            ? $"{analysis.Current.ToText(unit)}, the best length known"
            : $"{analysis.Current.ToText(unit)}; moving gains {Saying.Percent(analysis.GainFromMovingPercent)}, {Saying.Gain(analysis.GainFromMovingSeconds, analysis.GoalSeconds)}");
        yield return ("Gain left", $"{Saying.Percent(analysis.GainLeftPercent)}, {Saying.Gain(analysis.GainLeftSeconds, analysis.GoalSeconds)}: the most that more testing can still win");
        yield return ("Worthwhile left", $"{Saying.Chance(analysis.ProbabilityWorthwhileLeft)} chance that another length is faster by {analysis.WorthwhilePercent:0.##} % or more");
        yield return ("Outings to go", Saying.OutingsToGo(analysis.OutingsToGo));
    }

    /// <summary>The card in the order to paddle.</summary>
    public static void WriteCard(TextWriter to, TrialCard card, LengthUnit unit, int width, string heading)
    {
        to.WriteLine(heading);
        for (int i = 0; i < card.Lengths.Count; i++)
            to.WriteLine($"  {i + 1}.  {card.Lengths[i].ToText(unit),-10}  {card.Distance}  effort {card.Effort}");
        if (card.Lengths.Count > 1)
            to.WriteLine($"      {card.Rest} easy between pieces");
        Wrapped.Write(to, card.Reason, width, "  Why: ", 7);
    }

    private static void WriteCautions(TextWriter to, Analysis analysis, int width)
    {
        foreach (string caution in analysis.Cautions)
            Wrapped.Write(to, caution, width, "Caution: ", 9);
    }

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}
