using TrialLog.Application.Coaching;
using TrialLog.Application.Files;
using TrialLog.Application.Next;
using TrialLog.Application.Sizing;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Formats.Fit;
using TrialLog.Tests.Reports;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Application;

/// <summary>The small forms that people read and type, each by a telling example at its limits.</summary>
public class SmallFormsTests
{
    private static readonly Length Low = Length.FromInches(48.3), High = Length.FromInches(50.6);

    [Fact]
    public void What_is_none_of_a_fields_words_is_refused_with_those_that_are()
    {
        Assert.Equal("“feet” is not a unit; it is in or cm.", TextForms.Unit.Problem("feet"));
        Assert.Equal("“sideways” is not a course; it is round-trip, out, back or loop.", TextForms.Course.Problem("sideways"));
        Assert.Equal("“phone” is neither hand nor watch.", TextForms.TimedBy.Problem("phone"));
        Assert.Equal("“perhaps” is neither yes nor no.", TextForms.YesOrNo.Problem("perhaps"));
        Assert.Equal("“25:00” is not a time of day; write it like 06:45.", TextForms.TimeOfDay.Problem("25:00"));
        Assert.Equal(new TimeOnly(6, 45), TextForms.TimeOfDay.Read(" 6:45 "));
        Assert.Equal(Course.RoundTrip, TextForms.Course.Read(" Round Trip "));
        Assert.Equal(
            ["round-trip", "out", "back", "loop"],
            new[] { Course.RoundTrip, Course.Out, Course.Back, Course.Loop }.Select(TextForms.Course.Write));
    }

    [Fact]
    public void A_range_reads_with_to_and_after_between_with_and()
    {
        Assert.Equal("48¼ to 50¾ in", Say.Range(Low, High, LengthUnit.Inches));
        Assert.Equal("48¼ and 50¾ in", Say.RangeAfterBetween(Low, High, LengthUnit.Inches));
        Assert.Equal("48¼ in", Say.Range(Length.FromInches(48.25), Length.FromInches(48.25), LengthUnit.Inches));
    }

    [Theory]
    [InlineData(0, 0, 0, "none: time to stop")]
    [InlineData(2, 2, 2, "about 2")]
    [InlineData(2, 1, 4, "about 2 (1 to 4, 8 times in 10)")]
    [InlineData(5, 2, 30, "about 5, perhaps 30 or more")]
    [InlineData(30, 30, 30, "30 or more")]
    public void A_forecast_says_no_more_than_it_knows(int median, int low, int high, string says) =>
        Assert.Equal(says, Say.OutingsToGo(new(median, low, high)));

    [Theory]
    [InlineData(0.124, "+0.12")]
    [InlineData(-0.85, "−0.85")]
    [InlineData(0.1, "+0.10")]
    [InlineData(0.0051, "+0.01")]
    [InlineData(-0.0049, "0")]
    public void A_difference_has_its_sign_and_two_decimals(double percent, string says) => Assert.Equal(says, Say.Difference(percent));

    [Theory]
    [InlineData(400.4, "400 m")]
    [InlineData(1000, "1 km")]
    [InlineData(1008.2, "1.008 km")]
    public void A_distance_reads_to_the_metre(double metres, string says) =>
        Assert.Equal(says, Say.Distance(Distance.FromMetres(metres)));

    [Theory]
    [InlineData("level", 0)]
    [InlineData("2in", 2)]
    [InlineData("+1 1/2", 1.5)]
    [InlineData("2in below", -2)]
    [InlineData("−2in", -2)]
    [InlineData("2in above", 2)]
    [InlineData("30in", 30)]
    [InlineData("-30", -30)]
    public void A_hand_height_is_read_as_people_say_it(string text, double inches) =>
        Assert.Equal(inches, HandHeight.Parse(text, LengthUnit.Inches), 1e-9);

    [Theory]
    [InlineData("30.1in", "A top hand 30.1 in above the eye is not believable (up to 30 in)")]
    [InlineData("-31", "A top hand 31 in below the eye is not believable")]
    [InlineData("-2in below", "says below twice")]
    [InlineData("high", "is not a hand height")]
    public void A_hand_height_that_is_none_is_refused(string text, string says) =>
        Assert.Contains(says, Assert.Throws<InvalidValueException>(() => HandHeight.Parse(text, LengthUnit.Inches)).Message);

    [Fact]
    public void A_hand_height_is_said_by_the_eye()
    {
        Assert.Equal("level with the eye", HandHeight.InWords(0, LengthUnit.Inches));
        Assert.Equal("2 in above the eye", HandHeight.InWords(2, LengthUnit.Inches));
        Assert.Equal("5.1 cm below the eye", HandHeight.InWords(-2, LengthUnit.Centimetres));
    }

    [Fact]
    public void The_partners_sheet_tells_each_letter_once_then_the_pieces_in_order()
    {
        GivenCard given = SampleContents.Of(4).Advice[0].Card with { Card = SampleContents.Card(49, 51, 51, 49) };
        string[] lines = BlindWords.ForThePartner(given, SampleContents.Of(4).Analysis.Paddler, "OC1", "Reed", new(2026, 5, 3)).Split('\n');
        Assert.EndsWith("OC1 with Reed, 3 May 2026", lines[0]);
        Assert.Equal(
            ["", "  A = 49 in", "  B = 51 in", "", "   1.  A   49 in", "   2.  B   51 in", "   3.  B   51 in", "   4.  A   49 in", "",
                Cautions.Water, ""],
            lines[4..]);
    }

    // Watches lack the characters of fractions.
    [Fact]
    public void A_watch_is_told_fractions_in_digits()
    {
        TrialCard card = SampleContents.Card(49.125, 49.25, 49.375, 49.5, 49.625, 49.75, 49.875);
        IReadOnlyList<WorkoutStep> steps = WatchWorkout.Steps(card, LengthUnit.Inches, blind: false);
        foreach (string text in new[] { "49 1/8", "49 1/4", "49 3/8", "49 1/2", "49 5/8", "49 3/4", "49 7/8" })
            Assert.Contains(text, string.Join(' ', steps.Select(step => step.Name)));
        Assert.All(steps, step => Assert.True(step.Name.All(char.IsAscii), step.Name));
    }

    [Fact]
    public void A_step_of_the_watch_is_known_again_by_its_name_whether_it_was_blind_or_not()
    {
        TrialCard card = SampleContents.Card(49, 51.25, 51.25, 49);
        string[] steps = ["1: 49 in", " 2: B ", "4: A", "3: 49 in", "Warm-up", "Set 49 in"];
        Assert.Equal([0, 1, 3, -1, -1, -1], steps.Select(step => WatchWorkout.StepOf(card, step, LengthUnit.Inches)));
    }

    [Theory]
    [InlineData("mo", new[] { "morning.fit", "Morningside/" }, "morning")]
    [InlineData("m", new[] { "may.csv", "morning.fit" }, "m")]
    [InlineData("m", new[] { "may.csv" }, "may.csv")]
    [InlineData("x", new string[0], "x")]
    public void A_path_is_completed_as_far_as_all_go_together(string typed, string[] completions, string common) =>
        Assert.Equal(common, PathCompletion.Common(typed, completions));

    [Fact]
    public void A_start_length_in_a_crews_canoe_says_why_it_differs()
    {
        var answer = new StartLengthAnswer(
            BodyMeasures.Unknown, Length.Parse("50"), LengthUnit.Inches, StartLength.From(BodyMeasures.Unknown, Length.Parse("50")));
        Assert.Null(answer.HullNote);
        Assert.Null((answer with { Hull = StandardHulls.All[0] }).HullNote);
        Assert.StartsWith("In a canoe of two seats an inch shorter", (answer with { Hull = StandardHulls.All[1] }).HullNote);
        Assert.StartsWith("In a canoe of 6 seats the boat sits higher", (answer with { Hull = StandardHulls.All[2] }).HullNote);
        Assert.StartsWith(
            "OC1 has its seat 1.5 in lower", (answer with
            {
                Hull = StandardHulls.All[0] with { SeatHeight = Length.Parse("7") },
                HullOffsetInches = -1.5,
            }).HullNote);
        Hull measured = StandardHulls.All[2] with { SeatHeight = Length.Parse("9.5") };
        Assert.StartsWith("OC6 has its seat 1.5 in higher", (answer with { Hull = measured, HullOffsetInches = 1.5 }).HullNote);
        Assert.Null((answer with { Hull = measured }).HullNote);
    }

    [Theory]
    [InlineData(0.4, "0.4 in above")]
    [InlineData(-0.4, "0.4 in below")]
    public void What_the_squad_taught_is_said_with_its_side(double offset, string says)
    {
        Analysis analysis = SampleContents.Of(8).Analysis with
        {
            Standing = Standing.Testing,
            LearntFromSquad = new(3, offset, 0.5, StartLengthBasis.SeatedReach),
        };
        Assert.Contains($"their best lengths lie {says} their start lengths on average", Verdict.Of(analysis));
    }

    [Theory]
    [InlineData(0.99, false)]
    [InlineData(1, true)]
    public void A_length_that_costs_under_a_second_is_as_good_as_the_best(double seconds, bool gains)
    {
        Analysis analysis = SampleContents.Of(8).Analysis;
        analysis = analysis with
        {
            Standing = Standing.Testing,
            CurrentIsUsual = true,
            Current = analysis.Best.Length.PlusInches(1),
            GainFromMovingSeconds = seconds,
        };
        Assert.Equal(gains, Answer.Going(analysis)!.Contains("should gain", StringComparison.Ordinal));
        Assert.Equal(!gains, Answer.Usual(analysis)!.EndsWith("as good as the best", StringComparison.Ordinal));
    }
}
