using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.TestData.Samples;

/// <summary>People and gear of the invented club at Tarrow Sound, and the way from outings to a file.</summary>
internal static class InventedLog
{
    public static readonly Hull Solo = StandardHulls.All[0] with { SeatHeight = Length.FromInches(8.5) };
    public static readonly Hull Two = StandardHulls.All[1] with { SeatHeight = Length.FromInches(7.5) };
    public static readonly Hull Six = StandardHulls.All[2] with { SeatHeight = Length.FromInches(9.5) };

    public static Paddle Paddle(InventedWater water, string name, double blade, double shortest, double longest) => new()
    {
        Id = water.NewId(),
        Name = name,
        Blade = Length.FromInches(blade),
        Shortest = Length.FromInches(shortest),
        Longest = Length.FromInches(longest),
        Step = Length.FromInches(0.25),
    };

    public static Paddler Paddler(InventedWater water, string name, double reach, double? goalMetres = null) => new()
    {
        Id = water.NewId(),
        Name = name,
        Body = new BodyMeasures { SeatedReach = Length.FromInches(reach) },
        Goal = goalMetres is { } metres ? new GoalEvent { HullId = Solo.Id, Distance = Distance.FromMetres(metres) } : null,
    };

    /// <summary>The file; the notes of its first row say what it shows.</summary>
    public static byte[] File(string shows, IEnumerable<Paddler> paddlers, IEnumerable<Paddle> paddles, IEnumerable<Outing> outings)
    {
        List<Outing> all = [.. outings.OrderBy(outing => outing.Date).ThenBy(outing => outing.Time)];
        Piece first = all[0].Pieces[0];
        all[0] = all[0]
            with
        { Pieces = [first with { Notes = first.Notes is null ? shows : $"{shows} {first.Notes}" }, .. all[0].Pieces.Skip(1)] };
        using var to = new MemoryStream();
        CsvLog.Write(
            to, new KnownLog([.. paddlers], [.. new[] { Solo, Two, Six }.Where(hull => all.Any(outing => outing.HullId == hull.Id))],
            [.. paddles], all));
        return to.ToArray();
    }
}
