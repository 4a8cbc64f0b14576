using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands;

/// <summary>The state of the search after each outing, a line each.</summary>
internal static class ProgressText
{
    public static void Write(TextWriter to, IReadOnlyList<ProgressPoint> points, LengthUnit unit)
    {
        to.WriteLine("  after        best        likely range          gain left   worthwhile left");
        foreach (ProgressPoint point in points)
        {
            to.WriteLine(($"  {(point.Date is { } date ? $"{date:yyyy-MM-dd}" : "the start"),-10}   {point.Best.ToText(unit),-10}  "
                + $"{Saying.Range(point.LikelyLow, point.LikelyHigh, unit),-20}  {Saying.Percent(point.GainLeftPercent),-10}  "
                + $"{Saying.Chance(point.ProbabilityWorthwhileLeft),-8}{(point.DiminishingReturns ? "  diminishing returns" : "")}").TrimEnd());
        }
    }
}
