using TrialLog.Application.Logging;
using TrialLog.Application.Next;
using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Squads;

/// <summary>What the squad's screen shows of the logbook, read in one go after each change.</summary>
/// <param name="Paddlers">Everybody, by name.</param>
internal sealed record SquadState(IReadOnlyList<SquadPaddler> Paddlers)
{
    /// <summary>Reads it.</summary>
    public static SquadState Read(Workspace workspace)
    {
        ILookup<Guid, Outing> outings = workspace.Logbook.Outings().ToLookup(outing => outing.PaddlerId);
        ILookup<Guid, SorenessClearance> clearances = workspace.Logbook.SorenessClearances().ToLookup(clearance => clearance.PaddlerId);
        return new([.. workspace.Logbook.Paddlers().OrderBy(paddler => paddler.Name, StringComparer.OrdinalIgnoreCase).Select(paddler =>
        {
            IReadOnlyList<Outing> theirs = [.. outings[paddler.Id]];
            Chosen? chosen = UsualChoice.Of(workspace, paddler, theirs);
            return new SquadPaddler(paddler, chosen, theirs, [.. clearances[paddler.Id]],
                chosen is null ? null : workspace.Question(chosen, theirs), chosen is null ? null : OpenCard.Of(workspace, chosen));
        })]);
    }

    /// <summary>
    /// The rows: by name until every analysis is there, so that they do not jump about under the reader's eye; then worst first.
    /// </summary>
    /// <param name="analysisOf">What was found; null where it is being worked out.</param>
    /// <param name="today">The day.</param>
    public IReadOnlyList<SquadRow> Rows(Func<Chosen, Analysis?> analysisOf, DateOnly today)
    {
        List<SquadRow> rows = [.. Paddlers.Select(one =>
        {
            Analysis? analysis = one.Chosen is { } chosen ? analysisOf(chosen) : null;
            GivenCard? card = analysis is null ? null : NextOuting.StandingCard(one.OpenCard, analysis);
            return SquadRow.Of(one.Paddler, one.Chosen?.Hull, one.Chosen?.Paddle,
                card is null ? analysis : analysis! with { Card = card.Card }, one.Outings.ToList(), one.Clearances, today)
                with { StandingCard = card };
        })];
        return rows.Any(row => row.Paddle is not null && row.Analysis is null) ? rows : SquadOrder.WorstFirst(rows);
    }

    /// <summary>The rows in sentences.</summary>
    public static IEnumerable<string> InWords(IReadOnlyList<SquadRow> rows, DateOnly today) =>
        rows.SelectMany(row => new[] { "", $"{row.Paddler.Name}{(row.Hull is { } hull ? $" in {hull.Name}" : "")}: "
            + SquadWords.StandingAndThisWeek(row) + "." + Figures(row, today) }).Prepend(SquadWords.Order);

    private static string Figures(SquadRow row, DateOnly today) => row.Analysis is null ? ""
        : (row.IsSore ? "" : $" Usual to best length {SquadWords.NowToBest(row)}, likely {SquadWords.Likely(row)}; to win " +
            $"{SquadWords.ToWin(row)}.")
            + $" Last outing: {SquadWords.Last(row, today)}. {SquadWords.Warnings(row)}";
}

/// <summary>A paddler of the squad: what they usually paddle, and what an analysis of it looks at; null while nobody has said.</summary>
internal sealed record SquadPaddler(
    Paddler Paddler, Chosen? Chosen, IReadOnlyList<Outing> Outings, IReadOnlyList<SorenessClearance> Clearances, AnalysisInput? Input,
    GivenCard? OpenCard);
