using TrialLog.Application.Coaching;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Logbook;
using TrialLog.Tuning;
using TrialLog.Tuning.Model;

namespace TrialLog.Application.Workspaces;

/// <summary>
/// What the settled logs of a logbook's paddlers teach about the start length of another. What each log says is weighed once after it was
/// changed and kept in the logbook, so that a card for one needs nobody else's outings.
/// </summary>
internal sealed class SquadLessons
{
    /// <summary>
    /// From how many other logs a paddler is taught at most. Beyond, the mean of so many hardly moves (its error is a seventh of how far
    /// paddlers differ), and a card for one would wait for the whole club's logs. Chosen.
    /// </summary>
    public const int MostTeachers = 50;

    // What was weighed by another build may come out otherwise.
    private static readonly string ThisBuild =
        $"{typeof(SquadEvidence).Module.ModuleVersionId:N}{typeof(StartLength).Module.ModuleVersionId:N}";

    private readonly Lock _gate = new();
    private (long Change, IReadOnlyDictionary<Guid, int> Counts, Dictionary<Guid, KeptLesson> Lessons)? _known;

    /// <summary>The lesson for a paddler of an open logbook; null where fewer than two others have settled.</summary>
    public SquadPrior? For(Workspace workspace, Paddler paddler)
    {
        IReadOnlyList<Paddler> paddlers = workspace.Logbook.Paddlers();
        if (paddlers.Count < 3)
            return null;
        lock (_gate)
        {
            long change = workspace.Logbook.LastChange;
            if (_known is not { } known || known.Change != change)
            {
                _known = known = (change, workspace.Logbook.OutingCounts(),
                    workspace.Logbook.Lessons(ThisBuild).ToDictionary(lesson => lesson.PaddlerId));
            }

            IReadOnlyList<Paddler> teachers = Teachers(paddler, paddlers, known.Counts);
            List<KeptLesson> fresh = [.. teachers.Where(teacher => !known.Lessons.ContainsKey(teacher.Id)).ToList()
                .AsParallel().AsOrdered().Select(teacher => Lesson(teacher, Weigh(workspace, teacher)))];
            foreach (KeptLesson lesson in fresh)
                known.Lessons.Add(lesson.PaddlerId, lesson);
            if (fresh.Count > 0)
                workspace.Logbook.KeepLessons(ThisBuild, change, fresh);
            return SquadPrior.Of(paddler, [.. teachers.Select(teacher => Evidence(teacher, known.Lessons[teacher.Id]))
                .OfType<SquadEvidence>()], TuningSettings.Default);
        }
    }

    /// <summary>The lesson for a paddler as a logbook was at some moment.</summary>
    public static SquadPrior? For(Paddler paddler, LogbookSnapshot then, DateOnly today)
    {
        if (then.Paddlers.Count < 3 || then.Paddles.Count == 0)
            return null;
        ILookup<Guid, Outing> outings = then.Outings.ToLookup(outing => outing.PaddlerId);
        ILookup<Guid, TechniqueCheck> checks = then.TechniqueChecks.ToLookup(check => check.PaddlerId);
        return SquadPrior.Of(paddler,
        [
            .. Teachers(paddler, then.Paddlers, outings.ToDictionary(theirs => theirs.Key, theirs => theirs.Count()))
                .AsParallel().AsOrdered()
                .Select(teacher => Of(teacher, [.. outings[teacher.Id]], [.. checks[teacher.Id]], then.Hulls, then.Paddles, today))
                .OfType<SquadEvidence>(),
        ], TuningSettings.Default);
    }

    /// <summary>
    /// Whose logs may teach a paddler: those of the others whose start length rests on the same thing; of very many, those with most
    /// outings. By name.
    /// </summary>
    private static IReadOnlyList<Paddler> Teachers(
        Paddler paddler, IReadOnlyList<Paddler> paddlers, IReadOnlyDictionary<Guid, int> outings)
    {
        StartLengthBasis basis = StartLength.Of(paddler).Basis;
        List<Paddler> all = [.. paddlers.Where(
            other => other.Id != paddler.Id && outings.ContainsKey(other.Id) && StartLength.Of(other).Basis == basis)];
        if (all.Count <= MostTeachers)
            return all;
        HashSet<Guid> most = [.. all.OrderByDescending(other => outings[other.Id]).ThenBy(other => other.Id).Take(MostTeachers)
            .Select(other => other.Id)];
        return [.. all.Where(other => most.Contains(other.Id))];
    }

    private static SquadEvidence? Weigh(Workspace workspace, Paddler teacher)
    {
        LogbookFile logbook = workspace.Logbook;
        return Of(teacher, logbook.Outings(teacher.Id), logbook.TechniqueChecks(teacher.Id), logbook.Hulls(), logbook.Paddles(),
            workspace.Today);
    }

    private static KeptLesson Lesson(Paddler teacher, SquadEvidence? evidence) =>
        new(teacher.Id, evidence?.OffsetInches, evidence?.Variance);

    private static SquadEvidence? Evidence(Paddler teacher, KeptLesson lesson) =>
        lesson is { OffsetInches: double offset, Variance: double variance }
            ? new(teacher.Id, StartLength.Of(teacher).Basis, offset, variance) : null;

    /// <summary>What a log by itself says to others; null where it has not settled, or cannot be weighed.</summary>
    private static SquadEvidence? Of(Paddler paddler, IReadOnlyList<Outing> outings, IReadOnlyList<TechniqueCheck> checks,
        IReadOnlyList<Hull> hulls, IReadOnlyList<Paddle> paddles, DateOnly today)
    {
        HashSet<Guid> used = [.. outings.SelectMany(outing => outing.Pieces).Select(piece => piece.PaddleId)];
        try
        {
            return paddles.Count == 0 ? null : SquadEvidence.Of(new AnalysisInput
            {
                Paddler = paddler,
                Hull = hulls[0],
                Paddle = paddles[0],
                Hulls = hulls,
                // A large club's paddles are looked through for each piece.
                Paddles = [.. paddles.Where(paddle => used.Contains(paddle.Id))],
                Outings = outings,
                TechniqueChecks = checks,
                Today = today,
            });
        }
        catch (UnweighableLogException)
        {
            // A log that cannot be weighed teaches nobody; its own paddler is told.
            return null;
        }
    }
}
