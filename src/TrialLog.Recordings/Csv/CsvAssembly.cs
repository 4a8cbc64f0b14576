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
        var warnings = new CappedList<string>(CsvLogContents.MostListed);
        foreach (string warning in contents.Warnings)
            warnings.Add(warning);
        var problems = new CappedList<CsvProblem>(CsvLogContents.MostListed);
        Func<Guid> id = newId ?? Guid.NewGuid;

        var names = new CsvNames(known, options, id, warnings, problems);
        IReadOnlyList<NamedRow> rows = names.Resolve(contents.Rows);
        var outings = new CsvOutings(known, names, id, warnings, problems);
        outings.Add(rows);

        CsvAdditions additions = new()
        {
            Problems = [.. contents.Problems.Concat(problems.Kept).OrderBy(problem => problem.Line).Take(CsvLogContents.MostListed)],
            RefusedRows = contents.RefusedRows + problems.Count,
        };
        if (additions.RefusedRows > 0 && !options.SkipBad)
            return additions with { PiecesAlreadyThere = outings.AlreadyThere };

        additions = names.Used(additions, outings.All);
        return additions with
        {
            NewOutings = outings.New,
            GrownOutings = outings.Grown,
            PiecesAdded = outings.Added,
            PiecesAlreadyThere = outings.AlreadyThere,
            Warnings = [.. names.Sentences(additions), .. warnings.Kept, .. Rest(warnings.Count - warnings.Kept.Count)],
        };
    }

    private static IEnumerable<string> Rest(int more) => more > 0 ? [$"And {more:N0} more warnings like these."] : [];
}
