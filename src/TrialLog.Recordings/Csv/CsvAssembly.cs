using TrialLog.Domain.Log;

namespace TrialLog.Recordings.Csv;

/// <summary>
/// Lays the rows of a file beside a logbook: what is new, what is there already, what contradicts it. Pure: it changes
/// nothing, and the caller writes what it returns in one transaction, or not at all.
/// </summary>
public static class CsvAssembly
{
    /// <summary>Name of the paddler that is added where neither file nor logbook names one.</summary>
    public const string UnnamedPaddler = "Me";

    /// <summary>Name of the paddle that is added where neither file nor logbook names one.</summary>
    public const string UnnamedPaddle = "Adjustable paddle";

    /// <summary>What the file adds to the logbook.</summary>
    /// <param name="contents">The file.</param>
    /// <param name="known">What the logbook holds.</param>
    /// <param name="options">The options that the file was read with. Unless they say to skip bad rows, one refused row means that nothing
    /// is added.</param>
    /// <param name="newId">Makes the ids of what is added; random ones unless told.</param>
    public static CsvAdditions Assemble(CsvLogContents contents, KnownLog known, CsvReadOptions options, Func<Guid>? newId = null)
    {
        CsvAdditions additions = Plan(contents, known, options, newId);
        List<(Outing Outing, bool IsNew)> outings = [.. additions.Outings];
        return additions with
        {
            Outings = outings,
            NewOutings = [.. outings.Where(one => one.IsNew).Select(one => one.Outing)],
            GrownOutings = [.. outings.Where(one => !one.IsNew).Select(one => one.Outing)],
        };
    }

    /// <summary>As <see cref="Assemble"/>, but the outings are put together as <see cref="CsvAdditions.Outings"/> is passed over.</summary>
    public static CsvAdditions Plan(CsvLogContents contents, KnownLog known, CsvReadOptions options, Func<Guid>? newId = null)
    {
        var warnings = new CappedList<string>(CsvLogContents.MostListed);
        foreach (string warning in contents.Warnings)
            warnings.Add(warning);
        var problems = new CappedList<CsvProblem>(CsvLogContents.MostListed);
        Func<Guid> id = newId ?? Guid.NewGuid;

        var names = new CsvNames(known, options, id, warnings, problems);
        IReadOnlyList<NamedRow> rows = names.Resolve(contents.Rows);
        var outings = new CsvOutings(known, names, id, warnings, problems);
        outings.Add(rows);
        var used = new HashSet<Guid>();
        int count = 0;
        foreach ((Outing outing, _) in outings.All())
        {
            count++;
            used.Add(outing.PaddlerId);
            used.Add(outing.HullId);
            used.UnionWith(outing.Pieces.Select(piece => piece.PaddleId));
        }

        (int added, int there) = (outings.Added, outings.AlreadyThere);
        CsvAdditions additions = new()
        {
            Problems = [.. contents.Problems.Concat(problems.Kept).OrderBy(problem => problem.Line).Take(CsvLogContents.MostListed)],
            RefusedRows = contents.RefusedRows + problems.Count,
        };
        if (additions.RefusedRows > 0 && !options.SkipBad)
            return additions with { PiecesAlreadyThere = there };

        additions = names.Used(additions, used);
        return additions with
        {
            Outings = outings.All(),
            OutingCount = count,
            PiecesAdded = added,
            PiecesAlreadyThere = there,
            Warnings = [.. names.Sentences(additions), .. warnings.Kept, .. Rest(warnings.Count - warnings.Kept.Count)],
        };
    }

    private static IEnumerable<string> Rest(int more) => more > 0 ? [$"And {more:N0} more warnings like these."] : [];
}
