using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Values;

/// <summary>
/// What is believed of days, lengths, speeds, names and notes: the last that is, the first that is not, and what is then said.
/// </summary>
public class BelievedTests
{
    private static readonly DateOnly Today = new(2026, 5, 1);

    [Fact]
    public void A_day_lies_between_1950_and_tomorrow()
    {
        Assert.Null(Plausible.ProblemWithDate(Today.AddDays(1), Today));
        Assert.Contains("2026-05-03 is in the future", Plausible.ProblemWithDate(Today.AddDays(2), Today), StringComparison.Ordinal);
        Assert.Null(Plausible.ProblemWithDate(new(1950, 1, 1), Today));
        Assert.Contains("1949-12-31 is before 1950", Plausible.ProblemWithDate(new(1949, 12, 31), Today), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("18.5", "48", null)]
    [InlineData("36", "36", "longer than the whole paddle")]
    [InlineData("2", "30", "not believable (8 in to 36 in)")]
    [InlineData("40", "36", "did you mean 40 cm?")]
    public void A_blade_is_shorter_than_its_paddle_and_a_blade_s_size(string blade, string paddle, string? says) =>
        Says(says, Plausible.ProblemWithBlade(Length.Parse(blade), Length.Parse(paddle)));

    [Theory]
    [InlineData("126.4in", "of 126.4 in is 3.2 m; did you mean 126.4 cm?")]
    [InlineData("50cm", "of 50 cm is 19.7 in; did you mean 50 in?")]
    [InlineData("30in", null)]
    [InlineData("80in", null)]
    [InlineData("5in", "not believable (30 in to 80 in)")]
    public void A_paddle_in_the_wrong_unit_is_asked_about(string length, string? says) =>
        Says(says, Plausible.ProblemWithPaddleLength(Length.Parse(length)));

    [Theory]
    [InlineData(8, null)]
    [InlineData(8.01, "faster than any paddled piece")]
    [InlineData(0.3, null)]
    [InlineData(0.29, "slower than drifting")]
    public void A_piece_is_no_faster_than_8_and_no_slower_than_0_3_metres_a_second(double speed, string? says) =>
        Says(
            says is null ? null : $"{says}; check distance and time",
            Piece.ProblemWithSpeed(Distance.FromMetres(100 * speed), PieceTime.FromSeconds(100)));

    [Theory]
    [InlineData("0.9m", false)]
    [InlineData("1m", true)]
    [InlineData("1000km", true)]
    [InlineData("1000.001km", false)]
    public void A_distance_is_read_within_its_limits(string text, bool read)
    {
        Assert.Equal(read, Distance.TryParse(text, out _, out string? problem));
        Says(read ? null : $"“{text}” is not between 1 m and 1,000 km", problem);
    }

    [Theory]
    [InlineData(2, false)]
    [InlineData(4, true)]
    [InlineData(5, false)]
    [InlineData(16, true)]
    [InlineData(18, false)]
    public void An_outing_has_4_to_16_pieces_and_never_an_odd_number(int pieces, bool may) =>
        Assert.Equal(may, TrialHabits.MayHave(pieces));

    [Fact]
    public void A_note_has_4000_characters_at_most_and_none_that_steers_a_terminal()
    {
        Assert.True(NoteRule.TryCheck(new string('a', 4000), "note", out string? note, out _));
        Assert.Equal(4000, note!.Length);
        Assert.False(NoteRule.TryCheck(new string('a', 4001), "note", out _, out string? problem));
        Says("The note “aaaa", problem);
        Says("longer than 4000 characters", problem);
        Assert.False(NoteRule.TryCheck("a\u001b[31m", "reason", out _, out problem));
        Says("The reason “a", problem);
        Says("control characters", problem);
        Assert.True(NoteRule.TryCheck("two\nlines\tand a tab", "note", out _, out problem));
        Assert.Null(problem);
        Assert.True(NoteRule.TryCheck(" ", "note", out note, out _));
        Assert.Null(note);
    }

    [Theory]
    [InlineData("Bean", "Beam", true)]
    [InlineData("Abcdefg", "Abcdeyz", false)]
    [InlineData("Abcdefgh", "Abcdefyz", true)]
    [InlineData("Abcdefgh", "Abcdexyz", false)]
    public void Four_letters_allow_a_slip_and_eight_allow_two(string name, string known, bool slip) =>
        Assert.Equal(slip ? known : null, new CloseNames([known]).To(name));

    [Fact]
    public void A_soreness_that_is_none_is_refused_with_what_was_typed()
    {
        Assert.False(Soreness.TryParse("a bit", out Soreness soreness, out string? problem));
        Assert.Equal(default, soreness);
        Says("“a bit” is not a soreness", problem);
    }

    [Fact]
    public void A_shaft_has_every_step_from_its_shortest_to_its_longest() =>
        Assert.Equal(["48 in", "48¼ in", "48½ in"], new Paddle
        {
            Id = Guid.Empty,
            Name = "Reed",
            Blade = Length.Parse("18.5"),
            Shortest = Length.Parse("48"),
            Longest = Length.Parse("48.5"),
            Step = Length.QuarterInch,
        }.Settings().Select(setting => setting.ToText()));

    [Fact]
    public void Where_hull_and_blade_stay_nothing_is_uncertain_about_a_carried_length()
    {
        Hull solo = StandardHulls.All[0], other = StandardHulls.All[1];
        Length blade = Length.Parse("18.5"), longer = Length.Parse("20.5");
        Assert.Equal(0, Alignment.CarriedSpreadInches(solo, blade, solo, blade));
        // Each of two hulls is off by its own.
        Assert.Equal(Math.Sqrt(2) * SeatHeightRule.SpreadInches, Alignment.CarriedSpreadInches(solo, blade, other, blade), 1e-12);
        Assert.Equal(2 * ExposedShaftRule.SpreadPerInch, Alignment.CarriedSpreadInches(solo, blade, solo, longer), 1e-12);
    }

    private static void Says(string? says, string? problem)
    {
        if (says is null)
            Assert.Null(problem);
        else
            Assert.Contains(says, problem, StringComparison.Ordinal);
    }
}
