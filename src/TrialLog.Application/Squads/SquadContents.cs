namespace TrialLog.Application.Squads;

/// <summary>Everything the squad's sheet is written from.</summary>
/// <param name="Rows">A row for every paddler, in any order.</param>
/// <param name="Date">The day of the sheet.</param>
/// <param name="Version">The program's version.</param>
public sealed record SquadContents(IReadOnlyList<SquadRow> Rows, DateOnly Date, string Version);
