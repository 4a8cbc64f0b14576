using System.Globalization;
using System.Text.RegularExpressions;
using TrialLog.Application.Files;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Pieces;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.Tests.Logbook;
using TrialLog.Tests.Recordings;

namespace TrialLog.Tests.Application.Files;

/// <summary>What is said and corrected of a recording on the command line, and the paths that lead to one.</summary>
public class RecordingWordsTests
{
    private static readonly RecordedOuting Morning = Recorded.Read(
        new OutingPlan { Speeds = [3, 3.05, 3.02, 3], Watch = WatchFaults.None });

    // Each piece's quarters lie about its own mean, so their means over the pieces lie about none.
    [Fact]
    public void The_quarters_of_the_pieces_are_told_by_their_mean_over_all_pieces()
    {
        string says = RecordingSummary.Lines(Morning, RecordingLengths.Unknown, LengthUnit.Inches)
            .Single(line => line.StartsWith("Speed by quarters, against the mean: ", StringComparison.Ordinal));
        double[] quarters = [.. Regex.Matches(says, @"([+−])([0-9.]+)%").Select(quarter =>
            double.Parse(quarter.Groups[2].Value, CultureInfo.InvariantCulture) * (quarter.Groups[1].Value == "+" ? 1 : -1))];
        Assert.Equal(4, quarters.Length);
        Assert.InRange(quarters.Sum(), -0.25, 0.25);
        Assert.Contains(Morning.Kept, piece => Math.Abs(piece.QuarterPercent[0] - quarters[0]) > 0.2);
    }

    [Fact]
    public void A_piece_is_cut_in_two_where_it_is_said_and_its_neighbours_keep_their_numbers()
    {
        int at = Morning.Proposals.ToList().FindIndex(piece => piece.Kept);
        PieceProposal piece = Morning.Proposals[at];
        double cutAt = piece.Start.TotalSeconds + 0.3 * (piece.End - piece.Start).TotalSeconds;
        var mends = new RecordingMends
        {
            Split = [FormattableString.Invariant($"{at + 1}@{(int)cutAt / 60}:{(int)cutAt % 60:00}")],
            Drop = $"{at + 2}",
        };
        RecordedOuting cut = MendRecording.By(Morning, mends, LengthUnit.Inches).Recording;
        Assert.Equal(Morning.Kept.Count, cut.Kept.Count);
        Assert.Equal(Math.Floor(cutAt), cut.Kept[0].End.TotalSeconds, 2.0);
        Assert.Equal(piece.End, cut.Kept[1].End);
        Assert.Equal(Morning.Kept[2].Start, cut.Kept[2].Start);
    }

    [Fact]
    public void A_half_typed_path_becomes_folders_with_a_slash_and_files_to_import()
    {
        using var folder = new ScratchFolder();
        Directory.CreateDirectory(folder.File("May"));
        foreach (string name in new[] { "march.fit", "MAY.csv", "may.txt", "june.gpx", ".may.fit" })
            File.WriteAllText(folder.File(name), "");
        string typed = folder.File("ma");
        Assert.Equal(
            [folder.File("march.fit"), folder.File("May/"), folder.File("MAY.csv")], PathCompletion.Of(typed));
        Assert.Empty(PathCompletion.Of(folder.File("no-such-folder/ma")));
    }
}
