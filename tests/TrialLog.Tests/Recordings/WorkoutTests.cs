using TrialLog.Application.Files;
using TrialLog.Application.Next;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings;
using TrialLog.Recordings.Formats.Fit;
using TrialLog.Recordings.Pieces;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.Tests.Recordings;

/// <summary>The card on the watch, and back from it.</summary>
public class WorkoutTests
{
    private static readonly TrialCard Card = new()
    {
        Lengths = [.. new[] { 49.25, 50.75, 50.75, 49.25 }.Select(Length.FromInches)],
        Distance = Distance.FromMetres(1000),
        Effort = Effort.FromPoints(6),
        Rest = PieceTime.FromSeconds(180),
    };

    private static readonly DateTimeOffset Made = new(2026, 5, 9, 7, 0, 0, TimeSpan.Zero);

    [Fact]
    public void An_independent_decoder_reads_the_workout_as_the_card_says()
    {
        // tests/reference/recordings/read-workout.py, written from the protocol with Python's standard library alone, made the table of the
        // file.
        byte[] file = File.ReadAllBytes(Repository.File("tests/reference/recordings/workout.fit"));
        Assert.Equal(file, WatchWorkout.File(Card, LengthUnit.Inches, blind: false, Made));
        string[] rows = File.ReadAllLines(Repository.File("tests/reference/recordings/workout.csv"));
        Assert.Equal("file,5,255,2026-05-09T07:00:00", rows[0]);
        Assert.Equal("workout,19,9,Trial 49 1/4; 50 3/4 in", rows[1].Replace(", 50", "; 50", StringComparison.Ordinal));
        string[] expected =
        [
            "0,warm-up,open,,Set 49 1/4 in",
            "1,active,distance,1000.0,1: 49 1/4 in", "2,rest,time,180.0,Set 50 3/4 in",
            "3,active,distance,1000.0,2: 50 3/4 in", "4,rest,time,180.0,Set 50 3/4 in",
            "5,active,distance,1000.0,3: 50 3/4 in", "6,rest,time,180.0,Set 49 1/4 in",
            "7,active,distance,1000.0,4: 49 1/4 in", "8,cool-down,open,,Cool-down",
        ];
        Assert.Equal(expected, rows.Skip(2));
    }

    [Fact]
    public void A_blind_card_shows_letters_and_no_length()
    {
        IReadOnlyList<WorkoutStep> steps = WatchWorkout.Steps(Card, LengthUnit.Inches, blind: true);
        Assert.Equal(["1: A", "2: B", "3: B", "4: A"], steps.Where(s => s.Kind == WorkoutStepKind.Piece).Select(s => s.Name));
        Assert.DoesNotContain(steps, s => s.Name.Contains("49", StringComparison.Ordinal)
            || s.Name.Contains("50", StringComparison.Ordinal));
        Assert.DoesNotContain("49", WatchWorkout.Strip(Card, LengthUnit.Inches, blind: true));
    }

    [Theory]
    [InlineData(nameof(OutingShape.RoundTrips), false)]
    [InlineData(nameof(OutingShape.EasyReturn), false)]
    [InlineData(nameof(OutingShape.Alternating), true)]
    public void The_recording_of_the_workout_comes_back_with_its_steps_matched_to_the_card(string shape, bool blind)
    {
        RecordedOuting read = Led(Enum.Parse<OutingShape>(shape), blind);
        Assert.Empty(read.Questions);
        Assert.Equal(PieceShape.Intervals, read.Shape);
        Assert.Equal(4, read.Kept.Count);
        Assert.Equal(Card.Lengths, ImportRecording.LengthsBySteps(read, Card, LengthUnit.Inches));
    }

    [Fact]
    public void A_piece_left_out_on_the_water_leaves_the_others_their_lengths()
    {
        // The second and third pieces were skipped on the watch: what was paddled is the first, then the fourth.
        RecordedOuting read = Led(OutingShape.RoundTrips, blind: false, skip: [2, 3, 4, 5]);
        Assert.Equal([QuestionKind.Count], read.Questions.Select(q => q.Kind));
        Assert.Equal([Card.Lengths[0], Card.Lengths[3]], ImportRecording.LengthsBySteps(read, Card, LengthUnit.Inches)!);
    }

    private static RecordedOuting Led(OutingShape shape, bool blind, int[]? skip = null)
    {
        var plan = new OutingPlan
        {
            Speeds = skip is null ? [3, 3.05, 3.02, 3] : [3, 3.05], Leg = shape == OutingShape.RoundTrips ? 500 : 1000, Shape = shape,
            Programmed = true, Sensors = false,
            Watch = new WatchFaults { NoiseFactor = 0.3 },
        };
        SimulatedOuting outing = Simulator.Run(plan, 5);
        int[] steps = [.. Enumerable.Range(0, 9).Except(skip ?? [])];
        IReadOnlyList<(string, int)> names = [.. WatchWorkout.Steps(Card, LengthUnit.Inches, blind).Select(s => (s.Name, s.Kind switch
        {
            WorkoutStepKind.Piece => 0,
            WorkoutStepKind.Rest => 1,
            WorkoutStepKind.WarmUp => 2,
            _ => 3,
        }))];
        WrittenLap[] laps = [.. outing.Laps!.Select(lap => lap with { Step = steps[lap.Step] })];
        return RecordingReader.Read(
            new MemoryStream(FitWriter.Activity(outing.Recorded, [], outing.Offset, laps: laps, steps: names)), "led.fit")
            .For(new PieceCard(4, Card.Distance, Card.Rest));
    }
}
