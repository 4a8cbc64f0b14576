using System.Globalization;
using System.Text.Json.Nodes;
using TrialLog.Application.Squads;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Base;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Json;

/// <summary>
/// What <c>next --squad --json</c> prints: everybody, in the order of the list. First where the paddler stands on it and why; then, where
/// they have a paddle, all that <c>next --json</c> has.
/// </summary>
internal static class SquadFacts
{
    public static JsonArray Of(IEnumerable<SquadRow> rows) => [.. rows.Select(Row)];

    private static JsonNode Row(SquadRow row)
    {
        var facts = new JsonObject
        {
            ["paddler"] = row.Paddler.Name,
            ["place"] = JsonOutput.Kebab(row.Place),
            ["this_week"] = SquadWords.StandingAndThisWeek(row),
            ["soreness"] = row.Soreness?.Points,
            ["days_silent"] = row.DaysSilent,
            ["last_outing"] = row.LastOuting?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            ["tests"] = row.Tests,
            ["to_win_pct"] = row.IsSore || row.Analysis is null ? null : JsonOutput.Rounded(row.ToWinPercent),
            ["to_win_s"] = row.IsSore || row.Analysis is null ? null : JsonOutput.Rounded(row.ToWinSeconds),
            ["hull"] = row.Hull?.Name,
            ["paddle"] = row.Paddle?.Name,
        };
        if (row.Analysis is not { } analysis)
            return facts;
        foreach ((string name, JsonNode? value) in JsonOutput.Node(
            row.StandingCard is { } given ? NextFacts.Of(analysis, given) : NextFacts.Of(analysis)))
            facts[name] = value?.DeepClone();
        return facts;
    }
}
