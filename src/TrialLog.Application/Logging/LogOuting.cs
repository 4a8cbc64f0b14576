using System.Globalization;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
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

    /// <summary>Whether the paddler did not know the lengths; so is every outing by a blind card.</summary>
    public bool Blind { get; init; }

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
    /// <summary>Everything that is wrong with an outing, each in a sentence that says where; empty if it can be saved.</summary>
    public static IReadOnlyList<string> Problems(Workspace workspace, OutingEntry entry)
    {
        IReadOnlyList<Outing> before = workspace.Logbook.Outings(entry.Paddler.Id);
        return OutingProblems.Of(Of(workspace, entry, before), Paddles(workspace, entry), before, workspace.Today);
    }

    /// <summary>What is wrong with a piece, or null.</summary>
    public static string? ProblemWith(PieceEntry piece) => OutingProblems.OfPiece(AsPiece(Guid.Empty, piece, 1), piece.Paddle);

    /// <summary>Saves the outing in one piece.</summary>
    /// <param name="workspace">The logbook.</param>
    /// <param name="entry">The outing.</param>
    /// <param name="source">Hash and name of the file it came from, remembered with it so that the file is known when it comes
    /// again.</param>
    /// <exception cref="RequestException">Something is wrong with it; nothing was saved.</exception>
    public static Outing Save(Workspace workspace, OutingEntry entry, (string Hash, string Name)? source = null)
    {
        IReadOnlyList<Outing> before = workspace.Logbook.Outings(entry.Paddler.Id);
        Outing outing = Of(workspace, entry, before);
        if (OutingProblems.Of(outing, Paddles(workspace, entry), before, workspace.Today) is { Count: > 0 } problems)
            throw new RequestException(string.Join(Environment.NewLine, problems) + Environment.NewLine + "Nothing was saved.");
        GivenCard? card = OpenCard.For(workspace, outing);
        outing = outing with { Blind = outing.Blind || card is { Blind: true } };
        workspace.Logbook.Change(
            $"Logged {entry.Paddler.Name}'s outing of {entry.Date:yyyy-MM-dd} in {entry.Hull.Name}, " +
                $"{Say.Count(outing.Pieces.Count, "piece")}",
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

    // A paddle that was just typed may not be in the logbook yet: what the entry holds is what it would be.
    private static IReadOnlyList<Paddle> Paddles(Workspace workspace, OutingEntry entry) =>
        [.. entry.Pieces.Select(piece => piece.Paddle).Concat(workspace.Logbook.Paddles()).DistinctBy(paddle => paddle.Id)];

    private static Outing Of(Workspace workspace, OutingEntry entry, IReadOnlyList<Outing> before) => new()
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
        Blind = entry.Blind,
        Pieces = [.. entry.Pieces.Select((piece, index) => AsPiece(Guid.CreateVersion7(workspace.Now), piece, index + 1))],
    };

    private static Piece AsPiece(Guid id, PieceEntry entry, int order) => new()
    {
        Id = id,
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
        string label = entry.Label.Trim();
        HashSet<string> taken = before.Where(outing => outing.Date == entry.Date)
            .Select(outing => outing.Label).ToHashSet(StringComparer.OrdinalIgnoreCase);
        if (label.Length > 0 || !taken.Contains(label))
            return label;
        int number = 2;
        while (taken.Contains(number.ToString(CultureInfo.InvariantCulture)))
            number++;
        return number.ToString(CultureInfo.InvariantCulture);
    }
}
