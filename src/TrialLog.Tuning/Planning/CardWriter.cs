using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;
using TrialLog.Tuning.Wording;

namespace TrialLog.Tuning.Planning;

/// <summary>Makes a card of planned lengths: distance, effort and rest as the paddler usually has them, and why.</summary>
internal static class CardWriter
{
    private const double UsualMetres = 1000, UsualEffort = 6, ShortestMetres = 250, LongestRestSeconds = 300, ShortestRestSeconds = 120;

    /// <summary>The card.</summary>
    public static TrialCard Of(AssessedFit assessed, PlannedLengths planned)
    {
        (AnalysisInput question, Fit fit) = (assessed.Input, assessed.Fit);
        Distance distance = UsualDistance(question, fit.Table);
        return new()
        {
            Lengths = planned.Lengths,
            Distance = distance,
            Effort = UsualEffortOf(fit.Table),
            Rest = Rest(fit),
            Reason = Reason(question, planned, assessed),
        };
    }

    private static Distance UsualDistance(AnalysisInput question, PieceTable table)
    {
        if (table.Count > 0)
        {
            List<Distance> sorted = [.. table.Pieces.Select(static piece => piece.Distance)];
            sorted.Sort();
            return sorted[sorted.Count / 2];
        }

        double metres = question.Paddler.Goal?.Distance is { } goal ? Math.Clamp(goal.Metres, ShortestMetres, UsualMetres) : UsualMetres;
        return Distance.FromMetres(metres);
    }

    private static Effort UsualEffortOf(PieceTable table)
    {
        List<Effort> sorted = [];
        foreach (Piece piece in table.Pieces)
            if (piece.Effort is { } effort)
                sorted.Add(effort);
        sorted.Sort();
        return sorted.Count == 0 ? Effort.FromPoints(UsualEffort) : sorted[sorted.Count / 2];
    }

    private static PieceTime Rest(Fit fit)
    {
        double seconds = Math.Clamp(300 * Math.Exp(fit.CardLogDuration) / 2, ShortestRestSeconds, LongestRestSeconds);
        return PieceTime.FromSeconds(Math.Round(seconds / 30) * 30);
    }

    private static string Reason(AnalysisInput question, PlannedLengths planned, AssessedFit assessed)
    {
        (SorenessCeiling soreness, Length best, bool stop) = (assessed.Soreness, assessed.Says.Best.Length, assessed.Says.DiminishingReturns);
        LengthUnit unit = question.Paddler.Unit;
        if (!assessed.Allowed.IsOpen)
            return $"Do not paddle this card while it hurts: even {Say.Setting(assessed.Allowed.Shortest, unit)}, the shortest setting of {question.Paddle.Name}, is longer than what did not hurt. Rest, and see a clinician if it stays.";
        string first = Say.Setting(planned.Lengths.Min(), unit), last = Say.Setting(planned.Lengths.Max(), unit);
        string held = soreness.Length is null ? "" : soreness.EverywhereSore ? " Rest first; then only what is shorter than all that hurt." : " Rest first; then only lengths that did not hurt.";
        if (planned.Spread == 0)
            return question.Paddle.IsFixed ? $"This paddle cannot be set to another length, so paddle it at {first}."
                : !question.Paddler.SwapsOnWater ? $"One length for the whole outing: {first} tells most against the outings before.{held}"
                : $"Only {first} is open to you now.{held}";
        string side = best < planned.Lengths.Min() ? "longer" : "shorter";
        string why = stop
            ? $"Testing on is hardly worth it; if you do, {first} against {last} tells most."
            : best >= planned.Lengths.Min() && best <= planned.Lengths.Max()
                ? $"{first} against {last}, either side of what looks best ({Say.Setting(best, unit)}), tells most in one outing."
                : $"{first} against {last}, both {side} than what looks best ({Say.Setting(best, unit)}): how fast the pace falls off there tells how sharp your curve is, and with it how sure the best length.";
        return $"{why} Mirrored order, so that tiring cancels.{held}";
    }
}
