using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>A row with the names it goes by once blanks are filled; the paddle is null where there is no piece.</summary>
internal sealed record NamedRow(CsvRow Row, string Paddler, string Hull, string? Paddle);

/// <summary>Settles which paddler, hull and paddle each row means, and makes those that the logbook lacks.</summary>
internal sealed class CsvNames
{
    private readonly KnownLog _known;
    private readonly CsvReadOptions _options;
    private readonly Func<Guid> _newId;
    private readonly CappedList<string> _warnings;
    private readonly CappedList<CsvProblem> _problems;
    private readonly HashSet<string> _origins;
    private readonly List<CsvRow> _onlyNaming = [];

    public CsvNames(KnownLog known, CsvReadOptions options, Func<Guid> newId, CappedList<string> warnings, CappedList<CsvProblem> problems)
    {
        (_known, _options, _newId, _warnings, _problems) = (known, options, newId, warnings, problems);
        Dictionary<Guid, string> hullNames = known.Hulls.ToDictionary(hull => hull.Id, hull => hull.Name);
        Paddlers = new("paddler", known.Paddlers, paddler => paddler.Name,
            paddler => CsvThings.Facts(paddler, hullNames.GetValueOrDefault));
        Hulls = new("hull", known.Hulls, hull => hull.Name, CsvThings.Facts);
        Dictionary<Guid, string> paddlerNames = known.Paddlers.ToDictionary(paddler => paddler.Id, paddler => paddler.Name);
        Paddles = new("paddle", known.Paddles, paddle => paddle.Name, paddle => CsvThings.Facts(paddle, paddlerNames.GetValueOrDefault));
        _origins = [.. known.Outings.SelectMany(outing => outing.Pieces).Select(piece => piece.Origin).OfType<string>()];
    }

    public NameBook<Paddler> Paddlers { get; }

    public NameBook<Hull> Hulls { get; }

    public NameBook<Paddle> Paddles { get; }

    /// <summary>The rows that are part of an outing, named; rows that cannot be are refused.</summary>
    public IReadOnlyList<NamedRow> Resolve(IReadOnlyList<CsvRow> rows)
    {
        List<NamedRow> named = [];
        var lengths = new Dictionary<string, (Length Least, Length Most)>(StringComparer.OrdinalIgnoreCase);
        foreach (CsvRow row in rows.Where(row => row.Facts != CsvFacts.None))
        {
            Paddlers.Hear(row.Paddler, CsvColumns.OfPaddler, row.Facts);
            Hulls.Hear(row.Hull, CsvColumns.OfHull, row.Facts);
            Paddles.Hear(row.Paddle, CsvColumns.OfPaddle, row.Facts);
        }

        foreach (CsvRow row in rows)
        {
            string? paddler = row.Paddler, paddle = row.Paddle;
            if (row.Date is not null)
            {
                paddler ??= _options.Paddler ?? Only(_known.Paddlers.Select(one => one.Name), CsvAssembly.UnnamedPaddler);
                if (paddler is null)
                {
                    Refuse(row, CsvColumn.Paddler, "The logbook has several paddlers and the row does not say whose it is; fill in the " +
                        "column, or name the paddler for the whole file.");
                    continue;
                }

                if (row.Piece is not null)
                    paddle ??= _options.Paddle
                        ?? Only(_known.Paddles.Where(one => !one.Steering).Select(one => one.Name), CsvAssembly.UnnamedPaddle);
                if (row.Piece is not null && paddle is null && !_origins.Contains(row.Fingerprint))
                {
                    Refuse(row, CsvColumn.Paddle, "The logbook has several paddles and the row does not say which it was; fill in the " +
                        "column, or name the paddle for the whole file.");
                    continue;
                }
            }

            if (!_options.NewNames && Slip(row, paddler, paddle) is { } slip)
            {
                Refuse(row, slip.Column, slip.Reason);
                continue;
            }

            Mention(row, paddler, paddle);
            if (row.Date is null)
                _onlyNaming.Add(row);
            else
                named.Add(new NamedRow(row, paddler!, row.Hull!, paddle));
            if (paddle is not null && row.Piece is { Length: var length })
            {
                lengths[paddle] = lengths.TryGetValue(paddle, out (Length Least, Length Most) range)
                    ? (length < range.Least ? length : range.Least, length > range.Most ? length : range.Most)
                    : (length, length);
            }
        }

        Make(lengths);
        return named;
    }

    /// <summary>
    /// Adds to the additions the new paddlers, hulls and paddles that something needs, and known ones of which more is known now.
    /// </summary>
    /// <param name="additions">What is added.</param>
    /// <param name="used">The paddlers, hulls and paddles of the outings.</param>
    public CsvAdditions Used(CsvAdditions additions, HashSet<Guid> used)
    {
        foreach (CsvRow row in _onlyNaming)
        {
            if (row.Paddler is not null)
                used.Add(Paddlers[row.Paddler].Id);
            if (row.Hull is not null)
                used.Add(Hulls[row.Hull].Id);
            if (row.Paddle is not null)
                used.Add(Paddles[row.Paddle].Id);
        }

        List<Paddle> paddles =
        [
            .. Paddles.Filled()
                .Select(filled => CsvThings.Paddle(filled.Thing.Name, filled.Facts, null, null, _options.Unit, PaddlerId, _newId)
                with { Id = filled.Thing.Id }),
            .. Paddles.New.Select(name => Paddles[name]).Where(paddle => used.Contains(paddle.Id)),
        ];
        used.UnionWith(paddles.Select(paddle => paddle.OwnerId).OfType<Guid>());
        Func<string, Guid> hullId = name => Hulls[name].Id;
        List<Paddler> paddlers =
        [
            .. Paddlers.Filled().Select(filled => CsvThings.Paddler(filled.Thing, filled.Facts, hullId)),
            .. Paddlers.New.Select(name => Paddlers[name]).Where(paddler => used.Contains(paddler.Id)),
        ];
        used.UnionWith(paddlers.Select(paddler => paddler.Goal?.HullId).OfType<Guid>());
        return additions with
        {
            Paddlers = paddlers,
            Hulls =
            [
                .. Hulls.Filled()
                    .Select(filled => CsvThings.Hull(filled.Thing.Name, filled.Facts, _newId)
                    with { Id = filled.Thing.Id, Name = filled.Thing.Name }),
                .. Hulls.New.Select(name => Hulls[name]).Where(hull => used.Contains(hull.Id)),
            ],
            Paddles = paddles,
        };
    }

    /// <summary>What was assumed about what is added.</summary>
    public IEnumerable<string> Sentences(CsvAdditions additions)
    {
        foreach (Paddler paddler in additions.Paddlers.Where(one => Paddlers.IsNew(one.Name)))
        {
            bool bare = !Paddlers.Stated(paddler.Name).Columns.Any();
            yield return $"New paddler “{paddler.Name}”{Alike(Paddlers, paddler.Name)}"
                + (bare ? "; give a seated reach or a start length, so that the search starts near the answer." : ".");
        }

        foreach (Hull hull in additions.Hulls.Where(one => Hulls.IsNew(one.Name)))
        {
            bool bare = Hulls.Stated(hull.Name)[CsvColumn.HullCrew] is null;
            yield return $"New hull “{hull.Name}”{Alike(Hulls, hull.Name)}, crew {hull.Crew}"
                + (bare ? " (assumed from its name; correct it if that is wrong)." : ".");
        }

        foreach (Paddle paddle in additions.Paddles.Where(one => Paddles.IsNew(one.Name)))
        {
            CsvFacts stated = Paddles.Stated(paddle.Name);
            bool assumed = stated[CsvColumn.BladeLengthIn] is null || stated[CsvColumn.PaddleShortestIn] is null
                || stated[CsvColumn.PaddleLongestIn] is null;
            yield return $"New paddle “{paddle.Name}”{Alike(Paddles, paddle.Name)}: {paddle.Shortest.ToText(_options.Unit)} to " +
                $"{paddle.Longest.ToText(_options.Unit)} in steps of {paddle.Step.ToText(_options.Unit)}, "
                + $"blade {paddle.Blade.ToText(_options.Unit)}"
                    + (assumed ? " (what the file does not say is assumed; correct what is wrong)." : ".");
        }
    }

    private static string Alike<T>(NameBook<T> book, string name) where T : class =>
        book.AlikeBefore(name) is { } other ? $" (much like “{other}”: if that is a slip, undo and correct the file)" : "";

    private static string? Only(IEnumerable<string> names, string unnamed)
    {
        List<string> first = [.. names.Take(2)];
        return first.Count switch { 0 => unnamed, 1 => first[0], _ => null };
    }

    private (CsvColumn Column, string Reason)? Slip(CsvRow row, string? paddler, string? paddle)
    {
        return In(Paddlers, paddler, CsvColumn.Paddler) ?? In(Hulls, row.Hull, CsvColumn.Hull) ?? In(Paddles, paddle, CsvColumn.Paddle)
            ?? In(Hulls, row.Facts.Text(CsvColumn.GoalHull), CsvColumn.GoalHull)
                ?? In(Paddlers, CsvThings.OwnerIn(row.Facts), CsvColumn.Owner);

        static (CsvColumn, string)? In<T>(NameBook<T> book, string? name, CsvColumn column) where T : class =>
            name is not null && book.MeantFor(name) is { } meant
            ? (column, $"“{name}” is new, but much like “{meant}” of the logbook; correct it, or say that the file's new names are meant.")
            : null;
    }

    private void Mention(CsvRow row, string? paddler, string? paddle)
    {
        if (paddler is not null)
            Paddlers.Mention(paddler, CsvColumns.OfPaddler, row, _warnings);
        if (row.Hull is { } hull)
            Hulls.Mention(hull, CsvColumns.OfHull, row, _warnings);
        if (paddle is not null)
            Paddles.Mention(paddle, CsvColumns.OfPaddle, row, _warnings);
        if (row.Facts.Text(CsvColumn.GoalHull) is { } goal)
            Hulls.Mention(goal, [], row, _warnings);
        if (CsvThings.OwnerIn(row.Facts) is { } owner)
            Paddlers.Mention(owner, [], row, _warnings);
    }

    private void Make(Dictionary<string, (Length Least, Length Most)> lengths)
    {
        foreach (string name in Hulls.New)
            Hulls.Add(name, CsvThings.Hull(name, Hulls.Stated(name), _newId));
        foreach (string name in Paddlers.New)
            Paddlers.Add(
                name, CsvThings.Paddler(new Paddler { Id = _newId(), Name = name, Unit = _options.Unit }, Paddlers.Stated(name),
                hull => Hulls[hull].Id));

        foreach (string name in Paddles.New)
        {
            (Length Least, Length Most)? seen = lengths.TryGetValue(name, out var range) ? range : null;
            Paddles.Add(name, CsvThings.Paddle(name, Paddles.Stated(name), seen?.Least, seen?.Most, _options.Unit, PaddlerId, _newId));
        }
    }

    private Guid PaddlerId(string name) => Paddlers[name].Id;

    private void Refuse(CsvRow row, CsvColumn column, string reason) => _problems.Add(new(row.Line, column.Name(), reason));
}
