using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Checks;
using TrialLog.Tuning.Information;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Assessments;

/// <summary>
/// The one rule for where a search stands. It ends when the chance of a worthwhile gain is low and no number of further outings should win
/// more than they cost; never while it hurts, where the log cannot tell lengths apart, on outings of one day, or before a length on each
/// side of the best was paddled.
/// </summary>
internal static class StandingRule
{
    /// <summary>How far on each side of the best a length must have been paddled, inches. Chosen.</summary>
    private const double EachSideInches = 0.5;

    /// <summary>From so many outings on, one length an outing is the way of the log and not a beginning.</summary>
    private const int EnoughOutings = 4;

    /// <summary>
    /// A crew's log tells next to nothing while its range is no narrower than this share of the range before any piece. Chosen.
    /// </summary>
    private const double HardlyNarrower = 0.6;

    private static readonly int[] OutingsAhead = [1, 2, 3, 4, 6, 8, 12];

    /// <summary>Where it stands, and why.</summary>
    public static (Standing Standing, IReadOnlyList<StandingReason> Why) Of(AssessedFit assessed)
    {
        PieceTable table = assessed.Fit.Table;
        Assessment says = assessed.Says;
        if (says.Soreness is not null)
            return (Standing.Sore, [StandingReason.StillSore]);
        if (table.Count == 0)
            return (Standing.Testing, [StandingReason.NothingLogged]);
        List<StandingReason> why = CannotTell(assessed);
        if (why.Count > 0)
            return (Standing.CannotTell, why);

        if (says.PiecesInHull == 0)
            why.Add(StandingReason.NotPaddledHere);
        if (table.Outings.Select(static outing => outing.Date).Distinct().Count() < 2)
            why.Add(StandingReason.OneDayOnly);
        AddUntriedSides(assessed, why);
        bool low = says.ProbabilityWorthwhileLeft < StopBelow(assessed), pays = Pays(assessed);
        if (!low)
            why.Add(StandingReason.ChanceTooHigh);
        if (pays)
            why.Add(StandingReason.TestingPays);
        else if (!low)
            why.Add(StandingReason.CostsMoreThanItWins);
        if (says.TooShort is not null && why is [StandingReason.ChanceTooHigh, StandingReason.CostsMoreThanItWins])
            return (Standing.CannotTell, [StandingReason.PiecesTooShort, .. why]);
        if (why.Count > 0)
            return (Standing.Testing, why);
        return says.Flat ? (Standing.Flat, [StandingReason.HardlyMatters]) : (Standing.Settled, [StandingReason.NothingWorthwhileLeft]);
    }

    /// <summary>The probability of a worthwhile gain below which a search ends: lower where no outing compares two lengths.</summary>
    public static double StopBelow(AssessedFit assessed) =>
        assessed.Input.Settings.StopBelow * (Comparisons.Of(assessed.Fit.Table).Count > 0 ? 1 : assessed.Input.Settings.StopBetweenOutings);

    private static List<StandingReason> CannotTell(AssessedFit assessed)
    {
        PieceTable table = assessed.Fit.Table;
        List<StandingReason> why = [];
        if (HardlyTells(assessed))
            why.Add(StandingReason.LargeCrewsOnly);
        if (assessed.Input.Paddler.SwapsOnWater && table.Outings.Count >= EnoughOutings && Comparisons.Of(table).Count == 0)
            why.Add(StandingReason.OneLengthAnOuting);
        foreach (HealthCheck doubt in HealthChecks.Doubts(assessed.Input))
            why.Add(doubt.Name switch
            {
                "order-tangled" => StandingReason.OrderTangled,
                "effort-tangled" => StandingReason.EffortTangled,
                "curve-upside-down" => StandingReason.CurveUpsideDown,
                "hulls-disagree" => StandingReason.HullsDisagree,
                _ => throw new InvalidOperationException($"No reason stands for the check {doubt.Name}."),
            });
        return why;
    }

    /// <summary>
    /// Whether every piece was paddled in a crew of three or more, and the range is hardly narrower than without any piece.
    /// </summary>
    private static bool HardlyTells(AssessedFit assessed)
    {
        PieceTable table = assessed.Fit.Table;
        for (int h = 0; h < table.HullsWithPieces; h++)
            if (table.Hulls[h].Crew < 3)
                return false;
        return Width(assessed.Fit.Posterior) > HardlyNarrower * Width(Fit.Of(assessed.Input with { Outings = [] }).Posterior);

        static double Width(Posterior posterior) => posterior.Quantile(0.95) - posterior.Quantile(0.05);
    }

    /// <summary>Where the paddle ends sooner than half an inch from the best, its end is enough.</summary>
    private static void AddUntriedSides(AssessedFit assessed, List<StandingReason> why)
    {
        Paddle paddle = assessed.Input.Paddle;
        double best = assessed.Sought, shorter = best - EachSideInches, longer = best + EachSideInches;
        if (!paddle.IsFixed)
        {
            shorter = Math.Max(shorter, assessed.Align(paddle.Shortest));
            longer = Math.Min(longer, assessed.Align(paddle.Longest));
        }

        const double Rounding = 0.02;
        if (assessed.Fit.Table.Aligned.Min() > shorter + Rounding)
            why.Add(StandingReason.NothingShorterTried);
        if (assessed.Fit.Table.Aligned.Max() < longer - Rounding)
            why.Add(StandingReason.NothingLongerTried);
    }

    /// <summary>The settings to compare; a fixed paddle is tested against an adjustable one, here the same blade on any shaft.</summary>
    private static IReadOnlyList<Length> Open(AssessedFit assessed)
    {
        if (!assessed.Input.Paddle.IsFixed)
            return assessed.Allowed.Settings;
        double limit = assessed.Input.Settings.StepLimitInches, middle = assessed.Habitual.UsedToInches;
        List<Length> settings = [];
        for (double away = -limit; away <= limit + 1e-9; away += 0.25)
            settings.Add(Length.FromInches(Math.Clamp(middle + away, 0, Length.Longest.Inches)));
        return settings;
    }

    /// <summary>Whether some number of further outings should win more than they cost.</summary>
    private static bool Pays(AssessedFit assessed)
    {
        PieceTable table = assessed.Fit.Table;
        TrialForm form = TrialForm.Of(assessed.Input, table, Comparisons.Of(table).Count);
        TrialValue value = TrialValue.Of(assessed.Input, assessed.Fit, Open(assessed), assessed.Habitual.UsedToInches, form);
        foreach (int outings in OutingsAhead)
            if (value.AtLeast(outings) > outings * assessed.Says.PricePercent)
                return true;
        foreach (int outings in OutingsAhead)
            if (value.Of(outings) > outings * assessed.Says.PricePercent)
                return true;
        return false;
    }
}
