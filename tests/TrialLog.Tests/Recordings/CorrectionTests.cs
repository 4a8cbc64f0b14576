using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Pieces;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Simulation;

namespace TrialLog.Tests.Recordings;

public class CorrectionTests
{
    private static readonly RecordedOuting Outing = Recorded.Read(
        new OutingPlan { Speeds = [3, 3.05, 3.02, 3], Current = 0.2, Watch = new WatchFaults { NoiseFactor = 0.3 } });

    [Fact]
    public void Any_run_of_corrections_leaves_pieces_in_order_apart_and_inside_the_recording_and_the_outing_it_began_with()
    {
        IReadOnlyList<PieceProposal> before = [.. Outing.Proposals];
        Gen.Select(Gen.Int[0, 6], Gen.Int[0, 30], Gen.Double[0, 1]).Array[1, 12].Sample(steps =>
        {
            RecordedOuting outing = Outing;
            foreach ((int kind, int number, double share) in steps)
            {
                try
                {
                    outing = Corrected(outing, kind, number, share * outing.Duration);
                }
                catch (InvalidValueException)
                {
                    // Refused: as it was.
                }

                Assert.All(outing.Proposals.Zip(outing.Proposals.Skip(1)), p => Assert.True(p.First.End <= p.Second.Start));
                Assert.All(outing.Proposals, p =>
                {
                    Assert.True(p.Start >= TimeSpan.Zero && p.End <= outing.Duration);
                    Assert.All(p.Legs, l => Assert.True(l.Duration >= RecordedOuting.ShortestLeg));
                    Assert.Equal(p.Distance.Metres, p.MetresPerSecond * p.Time.Seconds, 0.01);
                });
            }

            Assert.Equal(before, Outing.Proposals);
        });
    }

    [Fact]
    public void Splitting_and_merging_a_one_way_piece_gives_it_back()
    {
        RecordedOuting oneWay = Recorded.Read(
            new OutingPlan { Speeds = [3, 3.05, 3], Leg = 900, Shape = OutingShape.Alternating, Watch = WatchFaults.None });
        int index = IndexOfKept(oneWay);
        PieceProposal piece = oneWay.Proposals[index];
        RecordedOuting split = oneWay.Split(index, piece.Start + 0.5 * (piece.End - piece.Start));
        Assert.Equal(oneWay.Proposals.Count + 1, split.Proposals.Count);
        Assert.Equal(piece.Distance.Metres, split.Proposals[index].Distance.Metres + split.Proposals[index + 1].Distance.Metres, 0.001);
        PieceProposal again = split.Merge(index).Proposals[index];
        Assert.Equal(piece with { Legs = [], QuarterPercent = [] }, again with { Legs = [], QuarterPercent = [], Remarks = piece.Remarks });
        Assert.Equal(piece.Legs, again.Legs);
    }

    [Fact]
    public void A_leg_out_and_a_leg_back_merge_into_a_round_trip_again()
    {
        int index = IndexOfKept(Outing);
        PieceProposal piece = Outing.Proposals[index];
        RecordedOuting split = Outing.Split(index, piece.Legs[0].End + 0.5 * (piece.Legs[1].Start - piece.Legs[0].End));
        Assert.NotEqual(Course.RoundTrip, split.Proposals[index].Course);
        PieceProposal merged = split.Merge(index).Proposals[index];
        Assert.Equal(Course.RoundTrip, merged.Course);
        Assert.Equal(piece.MetresPerSecond, merged.MetresPerSecond);
        Assert.Equal(piece.CurrentMetresPerSecond, merged.CurrentMetresPerSecond);
    }

    [Fact]
    public void Moving_an_edge_moves_that_edge_alone()
    {
        int index = IndexOfKept(Outing);
        PieceProposal piece = Outing.Proposals[index];
        PieceProposal moved = Outing.MoveEdge(index, 1, LegEdge.End, piece.End - TimeSpan.FromSeconds(30)).Proposals[index];
        Assert.Equal(piece.Legs[0], moved.Legs[0]);
        Assert.Equal(piece.Legs[1].Start, moved.Legs[1].Start);
        Assert.Equal(30, (piece.End - moved.End).TotalSeconds);
        Assert.True(moved.Distance < piece.Distance);
    }

    [Fact]
    public void Dropping_and_keeping_changes_what_counts_and_nothing_else()
    {
        int index = IndexOfKept(Outing);
        RecordedOuting dropped = Outing.Drop(index, "a boat wake");
        Assert.Equal(Outing.Kept.Count - 1, dropped.Kept.Count);
        Assert.Equal("a boat wake", dropped.Proposals[index].LeftOutBecause);
        Assert.Equal(Outing.Proposals, dropped.Keep(index).Proposals);
    }

    [Theory]
    [InlineData(-30)]
    [InlineData(100_000)]
    public void An_edge_cannot_leave_the_recording(double seconds) =>
        Assert.Throws<InvalidValueException>(() => Outing.MoveEdge(1, 0, LegEdge.Start, TimeSpan.FromSeconds(seconds)));

    [Fact]
    public void The_speed_plot_covers_the_recording_in_as_many_points_as_asked()
    {
        IReadOnlyList<SpeedPoint> points = Outing.SpeedSeries(80);
        Assert.Equal(80, points.Count);
        Assert.True(points[0].At > TimeSpan.Zero && points[^1].At < Outing.Duration + TimeSpan.FromSeconds(1));
        double mean = points.Average(p => p.MetresPerSecond ?? 0);
        Assert.Equal(Outing.Track.Speed.Average(), mean, 0.05);
    }

    private static int IndexOfKept(RecordedOuting outing) =>
        Enumerable.Range(0, outing.Proposals.Count).First(i => outing.Proposals[i].Kept);

    private static RecordedOuting Corrected(RecordedOuting outing, int kind, int number, TimeSpan at)
    {
        int piece = number % outing.Proposals.Count;
        return kind switch
        {
            0 => outing.MoveEdge(piece, 0, LegEdge.Start, at),
            1 => outing.MoveEdge(piece, outing.Proposals[piece].Legs.Count - 1, LegEdge.End, at),
            2 => outing.Merge(piece),
            3 => outing.Split(piece, at),
            4 => outing.Drop(piece),
            5 => outing.Keep(piece),
            _ => outing.Add(at, at + TimeSpan.FromSeconds(10 + 5 * number)),
        };
    }
}
