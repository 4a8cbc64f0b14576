using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tuning.Wording;

/// <summary>What a verdict rests on.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="Pieces">Pieces that count.</param>
/// <param name="PiecesInHull">Those in the hull asked for.</param>
/// <param name="Current">Where the paddler is now.</param>
/// <param name="Best">The best length.</param>
/// <param name="GainFromMoving">Percent.</param>
/// <param name="GainFromMovingSeconds">Seconds over the goal event.</param>
/// <param name="GoalSeconds">How long that takes.</param>
/// <param name="Worthwhile">Worthwhile change, percent.</param>
/// <param name="Left">Probability that a worthwhile gain is left.</param>
/// <param name="Stop">Whether returns have diminished.</param>
/// <param name="Flat">Whether nothing within an inch matters.</param>
/// <param name="ToGo">Outings to go.</param>
/// <param name="ToGoIfSwapping">The same if lengths were changed on the water; null where they are.</param>
/// <param name="HardlyTells">Whether the log can hardly tell lengths apart for being paddled in large crews.</param>
internal sealed record VerdictFacts(
    AnalysisInput Question, int Pieces, int PiecesInHull, Length Current, BestLength Best, double GainFromMoving, double GainFromMovingSeconds,
    double GoalSeconds, double Worthwhile, double Left, bool Stop, bool Flat, OutingsToGo ToGo, OutingsToGo? ToGoIfSwapping, bool HardlyTells)
{
    /// <summary>Whether soreness of late limits what is proposed.</summary>
    public bool Sore { get; init; }

    /// <summary>Whether it would be time to stop, had there been more than one outing.</summary>
    public bool OneOuting { get; init; }

    /// <summary>On which side of the paddle's range the best length lies: −1 shorter, 1 longer, 0 within.</summary>
    public int BeyondPaddle { get; init; }
}

/// <summary>The answer in one or two plain sentences.</summary>
internal static class Verdict
{
    /// <summary>The sentences.</summary>
    public static string Of(VerdictFacts facts)
    {
        LengthUnit unit = facts.Question.Paddler.Unit;
        string best = Say.Setting(facts.Best.Length, unit), range = Say.Range(facts.Best.LikelyLow, facts.Best.LikelyHigh, unit);
        string hull = facts.Question.Hull.Name;
        if (facts.Question.Paddle.IsFixed)
            return $"This paddle stays at {best}; for {hull} the best length is likely {range}.{Move(facts)}";
        if (facts.Sore)
            return $"You have been sore of late, and rest comes before testing. {best} for now, since nothing longer than what did not hurt is proposed; for speed alone the best length is likely {range}.";
        if (facts.HardlyTells)
            return $"One paddler of {facts.Question.Hull.Crew} moves {hull} so little that this log can hardly tell one length from another: {best} for now, likely {range}. A few pieces in a solo or two-seat canoe would say far more.";
        if (facts.Pieces == 0)
            return $"Start at {best} in {hull}; the best length is likely {range}. Nothing is logged yet, so this comes from the start length alone.";
        if (facts.Flat)
            return facts.Stop
                ? $"{hull}: length hardly matters to you within an inch either way. Stop testing and race {best}."
                : $"{hull}: the curve looks flat, so length may hardly matter within an inch either way; {best} is best so far, likely {range}.";
        string move = Move(facts) + Beyond(facts);
        return facts.Stop
            ? $"Stop testing and race {best}: the chance that another length is faster by {Say.Percent(facts.Worthwhile)} is {Spoken.Chance(facts.Left)}. "
                + $"The best length is likely {range}, and within a quarter inch of {best} with {Spoken.Chance(facts.Best.WithinQuarterInch)}.{move}"
            : $"Best so far {best}, likely {range}.{move} {ToGo(facts)}";
    }

    private static string Beyond(VerdictFacts facts)
    {
        Paddle paddle = facts.Question.Paddle;
        LengthUnit unit = facts.Question.Paddler.Unit;
        return facts.BeyondPaddle switch
        {
            0 => "",
            > 0 => $" {paddle.Name} goes no longer than {Say.Setting(paddle.Longest, unit)}, and the best length likely lies beyond.",
            _ => $" {paddle.Name} goes no shorter than {Say.Setting(paddle.Shortest, unit)}, and the best length likely lies below.",
        };
    }

    private static string Move(VerdictFacts facts)
    {
        if (facts.Best.Length == facts.Current || facts.PiecesInHull == 0 || facts.GainFromMoving < 0.02)
            return "";
        return $" Moving from {Say.Setting(facts.Current, facts.Question.Paddler.Unit)} gains {Say.Percent(facts.GainFromMoving)}, {Spoken.Seconds(facts.GainFromMovingSeconds)} in {Spoken.Duration(facts.GoalSeconds)}.";
    }

    private static string ToGo(VerdictFacts facts)
    {
        (int median, int low, int high) = (facts.ToGo.Median, facts.ToGo.Low, facts.ToGo.High);
        string most = high >= OutingsToGo.Most ? $"{OutingsToGo.Most} or more" : high.ToString(System.Globalization.CultureInfo.InvariantCulture);
        string range = low < high ? $"{low} to {most} more outings"
            : high >= OutingsToGo.Most ? $"{most} more outings"
            : Spoken.Count(median, "more outing");
        string swapping = facts.ToGoIfSwapping is { } other && other.Median < median
            ? $" With lengths changed on the water, {Spoken.Count(other.Median, "outing")} would likely do."
            : "";
        if (facts.OneOuting)
            return $"The chance that another length is faster by {Say.Percent(facts.Worthwhile)} is {Spoken.Chance(facts.Left)}, but one outing is one tide and one day's form: paddle another before you stop.";
        return $"Another length may still be faster by {Say.Percent(facts.Worthwhile)} (chance {Spoken.Chance(facts.Left)}); reckon with {range} before it is worth stopping.{swapping}";
    }
}
