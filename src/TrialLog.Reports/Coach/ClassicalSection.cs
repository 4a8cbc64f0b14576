using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Classical;

namespace TrialLog.Reports.Coach;

/// <summary>The classical view: a mixed model without a prior, for the coach who wants to see it beside.</summary>
internal static class ClassicalSection
{
    public static Section? Of(ClassicalFit? fit, Hull hull, LengthUnit unit)
    {
        if (fit is null)
            return null;
        var blocks = new List<Block>
        {
            new Paragraph("A random-intercept mixed model by REML with a quadratic in length, without any prior, for this hull alone."),
            new Paragraph(ClassicalWords.Of(fit, hull, unit)),
        };
        if (fit.Coefficients.Count > 0)
        {
            blocks.Add(new Facts([
                new("Vertex", fit.VertexInches is { } vertex ? Say.Quarter(vertex, unit) : "none", Interval(fit.Vertex, unit)),
                new("Between outings", Say.Percent(fit.OutingSd), "standard deviation"),
                new("Between pieces of an outing", Say.Percent(fit.PieceSd), "standard deviation"),
            ]));
            blocks.Add(
                new Table($"Fixed effects, percent of speed; length in inches from {fit.CentreInches:0.00} in; " +
                $"{Say.Count(fit.Pieces, "piece")} in {Say.Count(fit.Outings, "outing")}",
                [new("Effect"), new("Estimate", true), new("Standard error", true)],
                [.. fit.Coefficients.Select(effect =>
                    (IReadOnlyList<string>)[PlainText.Line(effect.Name), Figure(effect.Estimate), Figure(effect.StandardError)])]));
        }

        return new("The classical view", [.. blocks]);
    }

    private static string Interval(FiellerInterval? interval, LengthUnit unit) => interval?.Shape switch
    {
        null => "no interval",
        FiellerShape.Bounded =>
            $"{Say.Chance(interval.Level)} interval (Fieller): {Say.Quarter(interval.Low, unit)} to {Say.Quarter(interval.High, unit)}",
        FiellerShape.Outside => $"{Say.Chance(interval.Level)} set (Fieller), open-ended: below {Say.Quarter(interval.Low, unit)} or " +
            $"above {Say.Quarter(interval.High, unit)}",
        _ => $"{Say.Chance(interval.Level)} set (Fieller): any length at all",
    };

    private static string Figure(double value) => value.ToString("0.000").Replace('-', '\u2212');
}
