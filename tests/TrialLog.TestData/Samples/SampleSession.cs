using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.TestData.Samples;

/// <summary>A sample session: an invented logbook as a CSV file.</summary>
/// <param name="FileName">Its name in sample-sessions.</param>
/// <param name="Stream">The number of the random stream that made it.</param>
/// <param name="Write">Makes the file's bytes from that number.</param>
internal sealed record SampleSession(string FileName, int Stream, Func<int, byte[]> Write)
{
    /// <summary>All sample sessions.</summary>
    public static readonly IReadOnlyList<SampleSession> All =
    [
        new("settles.csv", 5, SettlesSample.Write),
        new("one-length.csv", 23, OneLengthSample.Write),
        new("fleet.csv", 34, FleetSample.Write),
        new("squad.csv", 45, SquadSample.Write),
        new("squad-year.csv", 67, SquadYearSample.Write),
        new("lean.csv", 78, LeanSample.Write),
        new("long-race.csv", 89, LongRaceSample.Write),
        new("messy.csv", 56, MessySample.Write),
    ];

    /// <summary>The file's bytes.</summary>
    public byte[] Bytes() => Write(Stream);
}
