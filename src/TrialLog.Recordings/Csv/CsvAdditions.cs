using System.Globalization;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;

namespace TrialLog.Recordings.Csv;

/// <summary>
/// What a file adds to a logbook. Nothing that the logbook holds is changed: pieces are added to an outing, and measures to a paddler, hull
/// or paddle that lacked them.
/// </summary>
public sealed record CsvAdditions
{
    /// <summary>Paddlers to put: new ones, and known ones (by id) with gaps filled.</summary>
    public IReadOnlyList<Paddler> Paddlers { get; init; } = [];

    /// <summary>Hulls to put: new ones, and known ones (by id) with gaps filled.</summary>
    public IReadOnlyList<Hull> Hulls { get; init; } = [];

    /// <summary>Paddles to put: new ones, and known ones (by id) with gaps filled.</summary>
    public IReadOnlyList<Paddle> Paddles { get; init; } = [];

    /// <summary>
    /// Outings to put: new ones, and those of the logbook as they are with the pieces added to them. Put together as they are passed over,
    /// with other ids each time.
    /// </summary>
    public IEnumerable<(Outing Outing, bool IsNew)> Outings { get; init; } = [];

    /// <summary>How many those are.</summary>
    public int OutingCount { get; init; }

    /// <summary>Outings to add, with their pieces; where all were put together at once.</summary>
    public IReadOnlyList<Outing> NewOutings { get; init; } = [];

    /// <summary>Outings of the logbook as they are with the pieces added to them; where all were put together at once.</summary>
    public IReadOnlyList<Outing> GrownOutings { get; init; } = [];

    /// <summary>Pieces to add, in new and grown outings.</summary>
    public int PiecesAdded { get; init; }

    /// <summary>Pieces of the file that the logbook holds already.</summary>
    public int PiecesAlreadyThere { get; init; }

    /// <summary>What is wrong with refused rows, by line; the first <see cref="CsvLogContents.MostListed"/>.</summary>
    public IReadOnlyList<CsvProblem> Problems { get; init; } = [];

    /// <summary>How many rows are refused.</summary>
    public int RefusedRows { get; init; }

    /// <summary>What was assumed or left aside, in sentences.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>Whether there is nothing to add.</summary>
    public bool AddsNothing => Paddlers.Count + Hulls.Count + Paddles.Count + OutingCount == 0;

    /// <summary>What is added, in a sentence: <c>36 pieces in 9 outings added; 4 were there already.</c></summary>
    public string Says()
    {
        string added = PiecesAdded == 0 && OutingCount == 0 ? "Nothing new"
            : $"{Counted(PiecesAdded, "piece")} in {Counted(OutingCount, "outing")} added";
        string there = PiecesAlreadyThere == 0 ? ""
            : $"; {Counted(PiecesAlreadyThere, "piece")} {(PiecesAlreadyThere == 1 ? "was" : "were")} there already";
        string refused = RefusedRows == 0 ? "" : $"; {Counted(RefusedRows, "row")} left out";
        return added + there + refused + ".";

        static string Counted(int count, string what) =>
            string.Create(CultureInfo.InvariantCulture, $"{count:N0} {what}{(count == 1 ? "" : "s")}");
    }
}
