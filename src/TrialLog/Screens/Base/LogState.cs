using TrialLog.Application.Deciding;
using TrialLog.Application.Logging;
using TrialLog.Application.Sizing;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Base;

/// <summary>What the screens show of the logbook, read in one go after each change. Painting reads this and nothing else.</summary>
internal sealed record LogState
{
    /// <summary>Tells states of the log apart: another number after each change that an answer may depend on.</summary>
    public required int Version { get; init; }

    public required IReadOnlyList<Paddler> Paddlers { get; init; }

    public required IReadOnlyList<Hull> Hulls { get; init; }

    public required IReadOnlyList<Paddle> Paddles { get; init; }

    /// <summary>The unit of lengths where no paddler is chosen.</summary>
    public required LengthUnit Unit { get; init; }

    /// <summary>Whose length, in which hull, with which paddle; null while the logbook lacks a paddler or a paddle.</summary>
    public Chosen? Chosen { get; init; }

    /// <summary>The chosen paddler's outings.</summary>
    public IReadOnlyList<Outing> Outings { get; init; } = [];

    /// <summary>What an analysis of the choice looks at; null where nothing is chosen.</summary>
    public AnalysisInput? Input { get; init; }

    /// <summary>The paddles that lengths are carried to and ordered for: the chosen paddler's own, and the chosen one.</summary>
    public IReadOnlyList<Paddle> CarriedTo { get; init; } = [];

    /// <summary>The chosen paddler's soreness that stands; null where none does.</summary>
    public StandingSoreness? Sore { get; init; }

    /// <summary>The card that was given and not paddled yet.</summary>
    public GivenCard? OpenCard { get; init; }

    /// <summary>The chosen paddler's technique checks.</summary>
    public IReadOnlyList<TechniqueAnswer> Technique { get; init; } = [];

    /// <summary>What the chosen paddler decided, oldest first.</summary>
    public IReadOnlyList<Decision> Decisions { get; init; } = [];

    /// <summary>The chosen paddler's new outing, half typed; null where there is none.</summary>
    public OutingDraft? Draft { get; init; }

    /// <summary>Changes of the chosen paddler's outings, half typed.</summary>
    public IReadOnlyList<ChangeDraft> Changes { get; init; } = [];

    /// <summary>Reads it.</summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="version">The state of the log.</param>
    /// <param name="drafts">What is half typed.</param>
    /// <param name="before">What was looked at; if it is gone, or null, what is usually looked at.</param>
    public static LogState Load(Workspace workspace, LogVersion version, KeptDrafts drafts, Chosen? before)
    {
        int now = version.Now;
        IReadOnlyList<Paddler> paddlers = workspace.Logbook.Paddlers();
        IReadOnlyList<Hull> hulls = workspace.Logbook.Hulls();
        IReadOnlyList<Paddle> paddles = workspace.Logbook.Paddles();
        var state = new LogState { Version = now, Paddlers = paddlers, Hulls = hulls, Paddles = paddles, Unit = workspace.Unit };
        if ((Again() ?? UsualChoice.Of(workspace)) is not { } chosen)
            return state;
        IReadOnlyList<Outing> outings = workspace.Logbook.Outings(chosen.Paddler.Id);
        return state with
        {
            Chosen = chosen,
            Outings = outings,
            Input = workspace.Question(chosen, outings),
            CarriedTo =
            [
                .. OwnGear.Paddles(workspace, chosen.Paddler, outings).Where(paddle => !paddle.Steering)
                    .UnionBy(chosen.Paddle.Steering ? [] : [chosen.Paddle], paddle => paddle.Id),
            ],
            Sore = ClearSoreness.Standing(workspace, chosen.Paddler),
            OpenCard = Application.Logging.OpenCard.Of(workspace, chosen),
            Draft = drafts.New(chosen.Paddler.Id),
            Changes = drafts.Changes(chosen.Paddler.Id),
            Decisions = Decide.All(workspace, chosen.Paddler),
            Technique = CheckTechnique.Kept(workspace, chosen.Paddler),
        };

        Chosen? Again() => before is not null
            && paddlers.FirstOrDefault(known => known.Id == before.Paddler.Id) is { } paddler
            && hulls.FirstOrDefault(known => known.Id == before.Hull.Id) is { } hull
            && paddles.FirstOrDefault(known => known.Id == before.Paddle.Id) is { } paddle
                ? new Chosen(paddler, hull, paddle)
                : null;
    }
}
