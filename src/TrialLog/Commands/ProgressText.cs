using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands;

/// <summary>The state of the search after each outing, a line each, the verdict first.</summary>
internal static class ProgressText
{
    public static void Write(TextWriter to, IReadOnlyList<ProgressPoint> points, double worthwhilePercent, LengthUnit unit, int width)
    {
        Wrapped.Write(to, SearchWords.Verdict(points, worthwhilePercent), width);
        to.WriteLine();
        (string outing, string best, string range, string gain, string chance) = SearchWords.Columns;
        to.WriteLine($"  {outing,-14}  {best,-11}  {range,-18}  {gain,-11}  {chance}");
        foreach (ProgressPoint point in points)
        {
            to.WriteLine($"  {SearchWords.After(point),-14}  {Say.Length(point.Best, unit),-11}  " +
                $"{Say.Range(point.LikelyLow, point.LikelyHigh, unit),-18}  "
                + $"{Say.Percent(point.GainLeftPercent),-11}  {Say.Chance(point.ProbabilityWorthwhileLeft)}");
        }
    }
}
