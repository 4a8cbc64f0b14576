using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Application.Wording;

/// <summary>What each picture shows, in sentences, for those who cannot see it.</summary>
internal static class PictureWords
{
    /// <summary>The response curve: the answer, what each inch away from it costs, and the pieces.</summary>
    /// <param name="analysis">What was found.</param>
    /// <param name="blind">The outings whose lengths the paddler did not know.</param>
    public static IEnumerable<string> Curve(Analysis analysis, IReadOnlySet<Guid> blind)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        if (RestFirst.Page(analysis) is { } rest)
        {
            foreach (string paragraph in rest)
                yield return paragraph;
            yield break;
        }

        yield return Verdict.Headline(analysis);
        foreach (string caution in Cautions.Own(analysis))
            yield return "Caution: " + caution;
        IReadOnlyList<CurvePoint> points = analysis.Curve.Points;
        if (points.Count < 2)
        {
            yield return "This paddle has one length, so there is no curve.";
            yield break;
        }

        yield return Answer.WithinAQuarter(analysis.Best.WithinQuarterInch, unit) + ".";
        foreach (int away in new[] { -2, -1, 1, 2 })
        {
            Length length = analysis.Best.Length.PlusInches(away);
            if (points.FirstOrDefault(point => Math.Abs(point.Length.InchesMoreThan(length)) < 0.13) is not { } point)
                continue;
            yield return $"At {Say.Length(point.Length, unit)}: {Say.Difference(point.Percent)}% in speed against the best " +
                $"length, likely " +
                $"between {Say.Difference(point.Low)} and {Say.Difference(point.High)}%.";
        }

        CurvePoint[] level = [.. points.Where(point => point.Percent >= -analysis.WorthwhilePercent)];
        if (level.Length > 1)
            yield return $"By the middle line nothing from {Say.Range(level[0].Length, level[^1].Length, unit)} costs more than " +
                $"{Say.ChosenPercent(analysis.WorthwhilePercent)}.";
        IReadOnlyList<AdjustedPiece> pieces = analysis.Curve.Pieces;
        int little = pieces.Count(piece => piece.Weight < 0.5), hidden = pieces.Count(piece => blind.Contains(piece.OutingId));
        yield return $"{Say.Count(pieces.Count, "piece")} in this hull{(little > 0 ? $", of which {little} count for little" : "")}"
            + (hidden > 0 ? $"; {hidden} paddled blind." : ".");
    }

    /// <summary>An outing's pieces as the curve shows them: <c>Outing of 3 May 2026: 1 49 in −0.21, 2 51 in +0.02 …</c>.</summary>
    public static string OneOuting(Outing outing, Analysis analysis)
    {
        Dictionary<Guid, AdjustedPiece> shown = analysis.Curve.Pieces.DistinctBy(piece => piece.PieceId)
            .ToDictionary(piece => piece.PieceId);
        IEnumerable<string> pieces = outing.Pieces.OrderBy(piece => piece.Order).Where(piece => shown.ContainsKey(piece.Id)).Select(piece =>
            $"{piece.Order}: {Say.Length(piece.Length, analysis.Paddler.Unit)} {Say.Difference(shown[piece.Id].Percent)}%");
        return $"{Say.DayInWords(outing.Date)}{(outing.Blind ? ", blind" : "")}. {string.Join(", ", pieces)}";
    }

    /// <summary>The search, outing by outing, with the two lines that the rule for stopping looks at.</summary>
    public static IEnumerable<string> Progress(IReadOnlyList<ProgressPoint> points, double worthwhilePercent, LengthUnit unit)
    {
        yield return SearchWords.Verdict(points, worthwhilePercent);
        yield return Lines(points[^1]);
        foreach (ProgressPoint point in points)
        {
            string after = point.Date is { } day ? $"After outing {point.Outings}, {Say.DayInWords(day)}" : "Before any outing";
            yield return $"{after}: best length {Say.Length(point.Best, unit)}, likely " +
                $"{Say.Range(point.LikelyLow, point.LikelyHigh, unit)}; " +
                $"chance of a worthwhile gain {Say.Chance(point.ProbabilityWorthwhileLeft)}; gain left " +
                    $"{Say.Percent(point.GainLeftPercent)} " +
                $"on average{(point.DiminishingReturns ? "; time to stop" : "")}.";
        }
    }

    /// <summary>What the lines in the picture of progress stand for.</summary>
    public static string Lines(ProgressPoint last) =>
        $"A search ends below a chance of {Say.Chance(TuningSettings.Default.StopBelow)}, where no outing should win its price of " +
        $"{Say.ChosenPercent(last.Then.PricePercent)}.";

    /// <summary>What was paddled when: the season in a sentence, then each month.</summary>
    public static IEnumerable<string> Season(IReadOnlyList<Outing> outings, LengthUnit unit)
    {
        Outing[] paddled = [.. outings.Where(outing => outing.Pieces.Count > 0).OrderBy(outing => outing.Date)];
        if (paddled.Length == 0)
        {
            yield return "No outing yet.";
            yield break;
        }

        int blind = paddled.Count(outing => outing.Blind);
        yield return $"{Say.Count(paddled.Length, "outing")} with {Say.Count(paddled.Sum(outing => outing.Pieces.Count), "piece")}, "
            + (paddled[0].Date == paddled[^1].Date ? $"on {Say.DayInWords(paddled[0].Date)}"
                : $"from {Say.DayInWords(paddled[0].Date)} to {Say.DayInWords(paddled[^1].Date)}")
            + (blind > 0 ? $"; {Say.Count(blind, "outing")} blind." : ".");
        foreach (IGrouping<(int, int), Outing> month in paddled.GroupBy(outing => (outing.Date.Year, outing.Date.Month)))
        {
            Length[] lengths = [.. month.SelectMany(outing => outing.Pieces).Select(piece => piece.Length).Distinct().Order()];
            string name = month.First().Date.ToString("MMMM yyyy", CultureInfo.InvariantCulture);
            yield return $"{name}: {Say.Count(month.Count(), "outing")} at "
                + (lengths.Length == 1 ? Say.Length(lengths[0], unit) : Say.Lengths(lengths[0], lengths[^1], unit)) + ".";
        }
    }
}
