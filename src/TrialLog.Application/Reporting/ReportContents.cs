using TrialLog.Application.Coaching;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Classical;

namespace TrialLog.Application.Reporting;

/// <summary>
/// Everything the coach's report of one paddler is written from. The same contents give the same report, byte for byte.
/// </summary>
public sealed record ReportContents
{
    /// <summary>The analysis that the report is about.</summary>
    public required Analysis Analysis { get; init; }

    /// <summary>The paddler's outings, with excluded pieces, in any order.</summary>
    public required IReadOnlyList<Outing> Outings { get; init; }

    /// <summary>Every hull that an outing names.</summary>
    public required IReadOnlyList<Hull> Hulls { get; init; }

    /// <summary>Every paddle that a piece names.</summary>
    public required IReadOnlyList<Paddle> Paddles { get; init; }

    /// <summary>The search after each outing, oldest first; may be empty.</summary>
    public IReadOnlyList<ProgressPoint> Progress { get; init; } = [];

    /// <summary>The cards given to the paddler by the time they were given, each with the outing paddled by it.</summary>
    public IReadOnlyList<Advice> Advice { get; init; } = [];

    /// <summary>The coach's or blind card that stands, which the analysis then carries; null where the log's own is handed out.</summary>
    public GivenCard? StandingCard { get; init; }

    /// <summary>The best length in other hulls and with other blades.</summary>
    public IReadOnlyList<Assessment> Carried { get; init; } = [];

    /// <summary>The classical view; null where it was not asked for.</summary>
    public ClassicalFit? Classical { get; init; }

    /// <summary>Coach's notes to print, in any order: on this paddler, these outings, these cards. Empty leaves them out.</summary>
    public IReadOnlyList<CoachNote> Notes { get; init; } = [];

    /// <summary>What was decided for this paddler, hull and paddle, in any order.</summary>
    public IReadOnlyList<Decision> Decisions { get; init; } = [];

    /// <summary>Whether the page is for the paddler, who is spoken to as "you"; else for the coach, who reads the name.</summary>
    public bool ForThePaddler { get; init; }

    /// <summary>The day of the report.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The program's version: <c>0.1.0</c>.</summary>
    public required string Version { get; init; }
}
