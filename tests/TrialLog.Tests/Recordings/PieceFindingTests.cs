using TrialLog.Application.Files;
using TrialLog.Domain.Log;
using TrialLog.Recordings;
using TrialLog.Recordings.Pieces;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.Tests.Recordings;

public class PieceFindingTests
{
    [Fact]
    public void Pieces_of_simulated_outings_are_found_edges_within_5_s_and_speeds_within_three_tenths_of_a_percent()
    {
        // As `recordings-study`, shorter: the watch at half the usual noise, with dropouts and glitches.
        var watch = new WatchFaults { NoiseFactor = 0.5 };
        List<OutingScore> scores = [
            .. Enumerable.Range(5000, 60).Select(seed => Scoring.Score(Simulator.Run(OutingPlan.Draw(new Random(seed), watch), seed)))];
        int pieces = scores.Sum(s => s.True);
        double edges = scores.SelectMany(s => s.EdgeErrors).Count(e => Math.Abs(e) <= 5) / (2.0 * pieces);
        double speeds = scores.SelectMany(s => s.SpeedErrors).Count(e => Math.Abs(e) <= 0.3) / (double)pieces;
        Assert.True(edges >= 0.95, $"edges {edges:0.000}");
        Assert.True(speeds >= 0.95, $"speeds {speeds:0.000}");
        Assert.InRange(scores.SelectMany(s => s.SpeedErrors).Average(), -0.03, 0.03);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(-0.8)]
    public void A_current_cancels_in_the_mean_of_the_legs_speeds_but_not_in_distance_over_time(double current)
    {
        const double water = 3;
        PieceProposal piece = Assert.Single(Recorded.Read(Recorded.OutAndBack(water + current, water - current, 600)).Kept);
        Assert.Equal(Course.RoundTrip, piece.Course);
        Assert.Equal(water, piece.MetresPerSecond, 0.005);
        Assert.Equal(current, piece.CurrentMetresPerSecond!.Value, 0.005);
        Assert.Equal(piece.Distance.Metres / piece.MetresPerSecond, piece.Time.Seconds, 0.001);

        double overall = piece.Legs.Sum(l => l.Metres) / piece.Legs.Sum(l => l.Metres / l.MetresPerSecond);
        Assert.Equal(water * (1 - Math.Pow(current / water, 2)), overall, 0.01);
    }

    [Theory]
    [InlineData(true, new[] { 0.15, 0.05, -0.05, -0.15 }, true)]
    [InlineData(true, new[] { 0.15, 0.05, 0.05, 0.15 }, false)]
    [InlineData(false, new[] { 0.15, 0.1, -0.1, -0.15 }, true)]
    [InlineData(false, new[] { 0.12, 0.12, 0.12, 0.12 }, false)]
    public void A_tide_that_turns_between_the_pieces_is_told_out_and_back_and_one_way(bool roundTrips, double[] currents, bool turned)
    {
        var points = new List<RecordedPoint>();
        double latitude = 12.3, longitude = -150.6, time = 1_777_000_000;
        void Go(double north, int seconds)
        {
            for (int i = 0; i < seconds; i++, time++)
            {
                points.Add(new RecordedPoint(time, latitude, longitude, 140, 60));
                (latitude, longitude) = Water.Moved(latitude, longitude, north, 0);
            }
        }

        for (int i = 0; i < currents.Length; i++)
        {
            Go(currents[i], 90);
            Go(roundTrips || i % 2 == 0 ? 3 + currents[i] : currents[i] - 3, 200);
            if (!roundTrips)
                continue;
            Go(0.3, 8);
            Go(currents[i] - 3, 200);
        }

        Go(0, 60);
        RecordedOuting read = Recorded.Read(points);
        Assert.Equal(roundTrips ? PieceShape.RoundTrips : PieceShape.OneWay, read.Shape);
        double[] expected = roundTrips ? currents : [.. currents.Zip(currents[1..], (a, b) => (a + b) / 2)];
        Assert.Equal(expected, read.Currents.Select(current => Math.Round(current, 2)), (a, b) => Math.Abs(a - b) < 0.02);
        Assert.Equal(turned, RecordingSummary.TideWarning(read.Currents)?.Contains("The tide turned") == true);
    }

    [Fact]
    public void Warm_up_rests_and_cool_down_are_left_out_and_said_to_be()
    {
        RecordedOuting outing = Recorded.Read(new OutingPlan { Speeds = [3, 3.05, 3.02, 3], Watch = WatchFaults.None });
        Assert.Equal(4, outing.Kept.Count);
        Assert.Equal(6, outing.Proposals.Count);
        Assert.StartsWith("warm-up", outing.Proposals[0].LeftOutBecause);
        Assert.StartsWith("cool-down", outing.Proposals[^1].LeftOutBecause);
    }

    // Nine tenths of the speed is a brisk warm-up and no piece; a piece at nineteen twentieths is a slow piece.
    [Theory]
    [InlineData(0.89, true)]
    [InlineData(0.96, false)]
    public void What_is_slower_than_the_pieces_by_more_than_8_percent_is_none(double share, bool slower)
    {
        RecordedOuting outing = Recorded.Read(
            new OutingPlan { Speeds = [3, 3.02, 3.01, 3], EasyShare = share, Watch = WatchFaults.None });
        Assert.Equal(slower, outing.Proposals[0].LeftOutBecause?.Contains("slower", StringComparison.Ordinal) == true);
    }

    [Fact]
    public void A_pressed_lap_decides_the_edge_where_the_speed_alone_would_not_show_one()
    {
        // Twenty minutes at one speed, pressed every five.
        var points = Enumerable.Range(0, 1200).Select(i =>
        {
            (double latitude, double longitude) = Water.Moved(12.3, -150.6, 3.0 * i, 0);
            return new RecordedPoint(1_777_000_000 + i, latitude, longitude, 140, 60);
        }).ToList();
        RecordedOuting without = Recorded.Read(points);
        Assert.False(without.HasPressedLaps);
        Assert.Single(without.Kept);

        RecordedOuting with = RecordingReader.Read(
            new MemoryStream(FitWriter.Activity(points, [1_777_000_300, 1_777_000_600, 1_777_000_900], null)), "laps.fit");
        Assert.True(with.HasPressedLaps);
        Assert.Equal([300.0, 600, 900], with.Kept.Skip(1).Select(p => p.Start.TotalSeconds));
    }

    [Fact]
    public void Heart_rate_is_the_mean_of_the_last_two_thirds_stroke_rate_the_mean_and_fade_the_second_half_less_the_first()
    {
        var points = new List<RecordedPoint>();
        double way = 0;
        for (int i = 0; i < 700; i++)
        {
            bool piece = i is >= 50 and < 650;
            double speed = piece ? 3.1 - 0.2 * (i - 50) / 600.0 : 0;
            (double latitude, double longitude) = Water.Moved(12.3, -150.6, 0, way);
            way += speed;
            // One third at 100, then a sixth at 130, so that neither the whole nor the last half has the same mean.
            double heart = i < 250 ? 100 : i < 350 ? 130 : 160;
            points.Add(new RecordedPoint(1_777_000_000 + i, latitude, longitude, heart, piece ? i % 2 == 0 ? 58 : 62 : 0));
        }

        PieceProposal found = Assert.Single(Recorded.Read(points).Kept);
        Assert.InRange(found.HeartRate!.Value.BeatsPerMinute, 152, 153);
        Assert.Equal(60, found.StrokeRate!.Value.StrokesPerMinute, 0.2);
        // The halves' means are 3.05 and 2.95 m/s.
        Assert.Equal(-100 * 0.1 / 3, found.FadePercent!.Value, 0.1);
    }

    [Fact]
    public void The_fade_of_a_round_trip_is_free_of_the_current()
    {
        PieceProposal steady = Assert.Single(Recorded.Read(Recorded.OutAndBack(3.6, 2.4, 700)).Kept);
        Assert.InRange(steady.FadePercent!.Value, -0.3, 0.3);
    }

    [Fact]
    public void Drifting_is_no_piece()
    {
        Assert.Empty(Recorded.Read(Recorded.OutAndBack(0.3, 0.3, 30)).Proposals);
    }
}
