using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Logging;

/// <summary>An outing as it was typed.</summary>
internal sealed record OutingEntry
{
    public required Paddler Paddler { get; init; }

    public required Hull Hull { get; init; }

    public required DateOnly Date { get; init; }

    public TimeOnly? Time { get; init; }

    public string Label { get; init; } = "";

    public string? Place { get; init; }

    public Beaufort? Wind { get; init; }

    public string? Water { get; init; }

    public string? Notes { get; init; }

    public required IReadOnlyList<PieceEntry> Pieces { get; init; }
}

/// <summary>A piece as it was typed.</summary>
internal sealed record PieceEntry(Paddle Paddle, Length Length, Distance Distance, PieceTime Time)
{
    public Effort? Effort { get; init; }

    public HeartRate? HeartRate { get; init; }

    public StrokeRate? StrokeRate { get; init; }

    public Soreness? Soreness { get; init; }

    public Course Course { get; init; }

    public double? FadePercent { get; init; }

    public string? Notes { get; init; }

    public string? Origin { get; init; }

    public TimedBy? TimedBy { get; init; }

    /// <inheritdoc cref="Piece.SpeedErrorPercent"/>
    public double? SpeedErrorPercent { get; init; }
}

/// <summary>Logs one outing and its pieces.</summary>
internal static class LogOuting
{
    /// <summary>The most pieces that one outing is believed to have.</summary>
    public const int MostPieces = 200;

    /// <summary>Everything that is wrong with an outing, each in a sentence that says where; empty if it can be saved.</summary>
    public static IReadOnlyList<string> Problems(Workspace workspace, OutingEntry entry)
    {
        var problems = new List<string>();
        if (Plausible.ProblemWithDate(entry.Date, workspace.Today) is { } wrongDate)
            problems.Add(wrongDate);
        problems.AddRange(ProblemsWithTexts(entry.Place, entry.Water, entry.Notes, entry.Pieces.Select((piece, index) => (index + 1, piece.Notes))));
        if (entry.Pieces.Count is 0 or > MostPieces)
            problems.Add($"An outing has 1 to {MostPieces} pieces; this one has {entry.Pieces.Count}.");
        for (int i = 0; i < entry.Pieces.Count; i++)
        {
            if (ProblemWith(entry.Pieces[i]) is { } problem)
                problems.Add($"Piece {i + 1}: {problem}");
        }

        return problems;
    }

    /// <summary>What is wrong with a piece, or null.</summary>
    public static string? ProblemWith(PieceEntry piece) =>
        ProblemWithLength(piece.Paddle, piece.Length) ?? Piece.ProblemWithSpeed(piece.Distance, piece.Time);

    /// <summary>What is wrong with a paddle set to that length, or null.</summary>
    public static string? ProblemWithLength(Paddle paddle, Length length) =>
        Plausible.ProblemWithPaddleLength(length)
        ?? (paddle.Reaches(length) ? null
            : $"{length} is outside what {paddle.Name} can be set to ({paddle.Shortest} to {paddle.Longest}); if its range is wrong: triallog paddle set \"{paddle.Name}\" --range L..L");

    /// <summary>What is wrong with the texts of an outing and its pieces, each in a sentence.</summary>
    public static IEnumerable<string> ProblemsWithTexts(string? place, string? water, string? notes, IEnumerable<(int Order, string? Notes)> pieces)
    {
        foreach ((string? text, string kind) in new[] { (place, "place"), (water, "water"), (notes, "note") })
        {
            if (!NoteRule.TryCheck(text, kind, out _, out string? problem))
                yield return problem;
        }

        foreach ((int order, string? text) in pieces)
        {
            if (!NoteRule.TryCheck(text, "note", out _, out string? problem))
                yield return $"Piece {order}: {problem}";
        }
    }

    /// <summary>Saves the outing in one piece.</summary>
    /// <param name="workspace">The logbook.</param>
    /// <param name="entry">The outing.</param>
    /// <param name="source">Hash and name of the file it came from, remembered with it so that the file is known when it comes again.</param>
    /// <exception cref="RequestException">Something is wrong with it; nothing was saved.</exception>
    public static Outing Save(Workspace workspace, OutingEntry entry, (string Hash, string Name)? source = null)
    {
        if (Problems(workspace, entry) is { Count: > 0 } problems)
            throw new RequestException(string.Join(Environment.NewLine, problems) + Environment.NewLine + "Nothing was saved.");
        IReadOnlyList<Outing> before = workspace.Logbook.Outings(entry.Paddler.Id);
        var outing = new Outing
        {
            Id = Guid.CreateVersion7(workspace.Now),
            PaddlerId = entry.Paddler.Id,
            HullId = entry.Hull.Id,
            Date = entry.Date,
            Time = entry.Time,
            Label = FreeLabel(before, entry),
            Place = entry.Place,
            Wind = entry.Wind,
            Water = entry.Water,
            Notes = entry.Notes,
            Pieces = [.. entry.Pieces.Select((piece, index) => AsPiece(workspace, piece, index + 1))],
        };
        GivenCard? card = CardFor(workspace, outing);
        workspace.Logbook.Change(
            $"Logged {entry.Paddler.Name}'s outing of {entry.Date:yyyy-MM-dd} in {entry.Hull.Name}, {Count(outing.Pieces.Count, "piece")}",
            logbook =>
            {
                logbook.Put(outing);
                if (card is not null)
                    logbook.Put(card with { PaddledAs = outing.Id });
                if (source is { } file)
                    logbook.RememberImport(file.Hash, file.Name);
            });
        workspace.Remember(entry.Paddler);
        return outing;
    }

    /// <summary>The newest card for that hull that was given by the day of the outing and not paddled yet.</summary>
    public static GivenCard? CardFor(Workspace workspace, Outing outing) => workspace.Logbook.Cards(outing.PaddlerId)
        .Where(card => card.HullId == outing.HullId && card.PaddledAs is null
            && DateOnly.FromDateTime(card.GivenAt.LocalDateTime) <= outing.Date)
        .MaxBy(card => card.GivenAt);

    private static Piece AsPiece(Workspace workspace, PieceEntry entry, int order) => new()
    {
        Id = Guid.CreateVersion7(workspace.Now),
        Order = order,
        PaddleId = entry.Paddle.Id,
        Length = entry.Length,
        Distance = entry.Distance,
        Time = entry.Time,
        Effort = entry.Effort,
        HeartRate = entry.HeartRate,
        StrokeRate = entry.StrokeRate,
        Soreness = entry.Soreness,
        Course = entry.Course,
        FadePercent = entry.FadePercent,
        Notes = entry.Notes,
        Origin = entry.Origin,
        TimedBy = entry.TimedBy,
        SpeedErrorPercent = entry.SpeedErrorPercent,
    };

    // A date and a label name an outing, so a second outing of a day gets a number where the paddler gave no label.
    private static string FreeLabel(IReadOnlyList<Outing> before, OutingEntry entry)
    {
        HashSet<string> taken = before.Where(outing => outing.Date == entry.Date)
            .Select(outing => outing.Label).ToHashSet(StringComparer.OrdinalIgnoreCase);
        string label = entry.Label.Length == 0 ? "" : NameRule.Checked(entry.Label, "label");
        if (!taken.Contains(label))
            return label;
        if (label.Length > 0)
            throw new RequestException($"There is an outing “{label}” on {entry.Date:yyyy-MM-dd} already; give another label, or change that one with: triallog edit {entry.Date:yyyy-MM-dd}:{label}");
        int number = 2;
        while (taken.Contains(number.ToString()))
            number++;
        return number.ToString();
    }

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}
