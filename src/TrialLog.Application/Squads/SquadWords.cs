using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Squads;

/// <summary>A row of the squad in words: the same on the sheet, the screen, in JSON and in a message to send.</summary>
public static class SquadWords
{
    /// <summary>Usual and best length: <c>50 → 49¼ in</c>; one length where they are the same, none while sore.</summary>
    public static string NowToBest(SquadRow row)
    {
        if (row.Analysis is not { } analysis || row.IsSore)
            return Say.Nothing;
        LengthUnit unit = row.Paddler.Unit;
        string now = Say.Length(analysis.Current, unit), best = Say.Length(analysis.Best.Length, unit);
        return analysis.Current == analysis.Best.Length ? now : $"{WithoutUnit(now)} → {best}";
    }

    /// <summary>The likely range without its unit, which stands beside it: <c>48¼–50¾</c>; nothing while sore.</summary>
    public static string Likely(SquadRow row) => row.Analysis is not { } analysis || row.IsSore ? Say.Nothing
        : WithoutUnit(Say.Range(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, row.Paddler.Unit))
            .Replace(" to ", "–", StringComparison.Ordinal);

    /// <summary>
    /// What the usual length costs on average against the true best length, over their race: <c>12 s</c>; nothing while sore.
    /// </summary>
    public static string ToWin(SquadRow row) => row.Analysis is null || row.IsSore ? Say.Nothing
        : Say.Seconds(row.ToWinSeconds);

    /// <summary>How long ago the last outing was: <c>today</c>, <c>3 d</c>, <c>5 wk</c>; <c>never</c>.</summary>
    public static string Last(SquadRow row, DateOnly today) =>
        row.LastOuting is not { } day ? "never" : (today.DayNumber - day.DayNumber) switch
        {
            <= 0 => "today",
            var days and < 15 => $"{days} d",
            var days and < 366 => $"{days / 7} wk",
            _ => "over 1 yr",
        };

    /// <summary>Where the search stands, in a word or two: <c>testing</c>, <c>settled</c>, <c>sore 5</c>.</summary>
    public static string Standing(SquadRow row) => row switch
    {
        { IsSore: true } => row.Soreness is { } sore ? $"sore {sore}" : "sore",
        { Paddle: null } => "no paddle",
        { Analysis: null } => "",
        { Analysis.Paddle.IsFixed: true } => "fixed",
        _ => row.Analysis.Standing switch
        {
            Tuning.Assessments.Standing.Settled => "settled",
            Tuning.Assessments.Standing.Flat => "flat",
            Tuning.Assessments.Standing.CannotTell => "cannot tell",
            _ => "testing",
        },
    };

    /// <summary>What to do this week, short enough for a row: <c>silent 12 d</c>, <c>test 49, 51¼</c>, <c>race 49¼</c>.</summary>
    public static string ThisWeek(SquadRow row)
    {
        if (row.Place == SquadPlace.HurtAndSilent)
            return $"silent {row.DaysSilent} d";
        if (row.IsSore)
            return "rest first";
        if (row.Paddle is null)
            return "choose one";
        if (row.Analysis is not { } analysis)
            return "…";
        LengthUnit unit = row.Paddler.Unit;
        if (analysis.Paddle.IsFixed && !row.Tests)
            return "keep it";
        if (row.IsFinished && !row.Tests)
            return $"race {WithoutUnit(Say.Length(analysis.Best.Length, unit))}";
        if (!row.Tests)
            return "try a solo hull";
        return row.StandingCard switch
        {
            { Blind: true } => "test blind",
            { By: { } by } => $"test {Lengths()} ({PlainText.Line(by)})",
            _ => $"test {Lengths()}",
        };

        string Lengths() => WithoutUnit(Say.Order(analysis.Card.Lengths.Distinct().Order(), unit));
    }

    /// <summary>
    /// Standing and what to do in one cell: <c>settled: race 49¼</c>, <c>sore 5: rest first</c>; while testing, the card's lengths say so.
    /// </summary>
    public static string StandingAndThisWeek(SquadRow row) =>
        row.Tests || row is { Paddle: not null, Analysis: null, IsSore: false } ? ThisWeek(row) : $"{Standing(row)}: {ThisWeek(row)}";

    /// <summary>Warnings about the trials in a few words each; empty for none, and while sore.</summary>
    public static string Warnings(SquadRow row) =>
        row.Analysis is not { } analysis
            || row.IsSore ? "" : string.Join(", ", analysis.Checks.Select(check => Wording.Warnings.Brief(check.Name)));

    /// <summary>How the list is ordered.</summary>
    public const string Order = "Who needs you first: hurt and silent since, sore, then most to win; who is done stands last.";

    private static string WithoutUnit(string length) =>
        length.LastIndexOf(' ') is > 0 and var at && !char.IsDigit(length[^1]) ? length[..at] : length;
}
