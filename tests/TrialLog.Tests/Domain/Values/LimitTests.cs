using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Values;

/// <summary>Each value takes its own limits and nothing beyond them, whether it comes as a number or as text.</summary>
public class LimitTests
{
    [Theory]
    [InlineData(25, true)]
    [InlineData(250, true)]
    [InlineData(24, false)]
    [InlineData(251, false)]
    public void A_heart_rate_lies_between_25_and_250(int beats, bool taken)
    {
        Takes(taken, () => HeartRate.FromBeatsPerMinute(beats), "heart rate", "25 and 250");
        Assert.Equal(taken, HeartRate.TryParse($"{beats} bpm", out HeartRate rate, out string? problem));
        Assert.Equal(taken ? beats : 25, rate.BeatsPerMinute);
        Refuses(taken, problem, $"“{beats} bpm”");
    }

    [Fact]
    public void What_is_no_heart_rate_is_refused_with_what_was_typed()
    {
        Assert.False(HeartRate.TryParse("quick", out HeartRate rate, out string? problem));
        Assert.Equal(default, rate);
        Refuses(false, problem, "“quick”");
        Assert.True(HeartRate.TryParse("142/min", out rate, out _));
        Assert.Equal(142, rate.BeatsPerMinute);
    }

    [Theory]
    [InlineData(5, true)]
    [InlineData(150, true)]
    [InlineData(4.9, false)]
    [InlineData(150.1, false)]
    [InlineData(double.NaN, false)]
    public void A_stroke_rate_lies_between_5_and_150(double strokes, bool taken)
    {
        Takes(taken, () => StrokeRate.FromStrokesPerMinute(strokes), "stroke rate", "5 and 150");
        Assert.Equal(taken, StrokeRate.TryParse($"{strokes} spm", out StrokeRate rate, out string? problem));
        Assert.Equal(taken ? strokes : 5, rate.StrokesPerMinute);
        Refuses(taken, problem, $"“{strokes} spm”");
    }

    [Theory]
    [InlineData("58.5", "58.5")]
    [InlineData("58/min", "58")]
    [InlineData("58.04", "58")]
    public void A_stroke_rate_is_shown_with_a_tenth_where_it_has_one(string text, string shown)
    {
        Assert.True(StrokeRate.TryParse(text, out StrokeRate rate, out _));
        Assert.Equal(shown, rate.ToString());
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(1_000_000, true)]
    [InlineData(0.999999, false)]
    [InlineData(1_000_000.000001, false)]
    [InlineData(-500, false)]
    [InlineData(1e9, false)]
    [InlineData(1e300, false)]
    [InlineData(double.NaN, false)]
    [InlineData(double.PositiveInfinity, false)]
    public void A_distance_lies_between_a_metre_and_a_thousand_kilometres(double metres, bool taken)
    {
        Distance? read = Takes(taken, () => Distance.FromMetres(metres), "distance", "1 m and 1,000 km");
        if (taken)
            Assert.Equal(metres, read!.Value.Metres);
    }

    [Theory]
    [InlineData(999_999, false)]
    [InlineData(1_000_000, true)]
    [InlineData(1_000_000_000_000, true)]
    [InlineData(1_000_000_000_001, false)]
    public void To_the_micrometre(long micrometres, bool taken) =>
        Takes(taken, () => Distance.FromMicrometres(micrometres), "distance", "1 m and 1,000 km");

    [Theory]
    [InlineData(0, true)]
    [InlineData(10_000, true)]
    [InlineData(-0.000001, false)]
    [InlineData(10_000.000001, false)]
    [InlineData(1e6, false)]
    [InlineData(1e300, false)]
    [InlineData(double.NaN, false)]
    public void A_length_lies_between_nothing_and_ten_metres(double millimetres, bool taken)
    {
        Length? read = Takes(taken, () => Length.FromMillimetres(millimetres), "length", "0 and 10 m");
        if (taken)
            Assert.Equal(millimetres, read!.Value.Centimetres * 10, 6);
    }

    [Fact]
    public void A_length_is_not_rounded_to_steps_of_nothing() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.FromInches(49).RoundedTo(default));

    [Theory]
    [InlineData(0, true)]
    [InlineData(10, true)]
    [InlineData(10.5, false)]
    [InlineData(-0.5, false)]
    [InlineData(6.25, false)]
    [InlineData(double.NaN, false)]
    public void Effort_and_soreness_go_from_0_to_10_in_halves(double points, bool taken)
    {
        Takes(taken, () => Effort.FromPoints(points), "Effort", "0 to 10");
        Takes(taken, () => Soreness.FromPoints(points), "Soreness", "0 to 10");
        Assert.Equal(taken, Effort.TryParse($"{points}", out _, out string? problem));
        Refuses(taken, problem, $"“{points}”");
        Assert.Equal(taken, Soreness.TryParse($"{points}", out _, out problem));
        Refuses(taken, problem, $"“{points}”");
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(12, true)]
    [InlineData(13, false)]
    [InlineData(-1, false)]
    public void Wind_goes_from_0_to_12(int number, bool taken)
    {
        Takes(taken, () => Beaufort.FromNumber(number), "Beaufort", "0 to 12");
        Assert.Equal(taken, Beaufort.TryParse($"{number}", out _, out string? problem));
        Refuses(taken, problem, $"“{number}”");
    }

    [Fact]
    public void Values_are_in_order_and_equal_ones_are_neither_more_nor_less()
    {
        Length[] lengths = [Length.FromInches(49), Length.FromInches(49.5), Length.FromInches(50)];
        Distance[] distances = [Distance.FromMetres(250), Distance.FromMetres(500), Distance.FromMetres(1000)];
        PieceTime[] times = [PieceTime.FromSeconds(331), PieceTime.FromSeconds(331.5), PieceTime.FromSeconds(332)];
        Effort[] efforts = [Effort.FromPoints(5.5), Effort.FromPoints(6), Effort.FromPoints(6.5)];
        for (int a = 0; a < 3; a++)
        {
            for (int b = 0; b < 3; b++)
            {
                string right = Signs(a < b, a > b, a <= b, a >= b);
                (Length a, Length b) l = (lengths[a], lengths[b]);
                Assert.Equal(right, Signs(l.a < l.b, l.a > l.b, l.a <= l.b, l.a >= l.b));
                (Distance a, Distance b) d = (distances[a], distances[b]);
                Assert.Equal(right, Signs(d.a < d.b, d.a > d.b, d.a <= d.b, d.a >= d.b));
                (PieceTime a, PieceTime b) t = (times[a], times[b]);
                Assert.Equal(right, Signs(t.a < t.b, t.a > t.b, t.a <= t.b, t.a >= t.b));
                (Effort a, Effort b) e = (efforts[a], efforts[b]);
                Assert.Equal(right, Signs(e.a < e.b, e.a > e.b, e.a <= e.b, e.a >= e.b));
                Assert.All(
                    (int[])[l.a.CompareTo(l.b), d.a.CompareTo(d.b), e.a.CompareTo(e.b)],
                    order => Assert.Equal(a.CompareTo(b), Math.Sign(order)));
            }
        }

        static string Signs(params bool[] hold) => string.Join(' ', hold);
    }

    [Theory]
    [InlineData("forty", 5, "forty")]
    [InlineData("forty-nine", 5, "forty…")]
    [InlineData("four\U0001F6F6s", 5, "four…")]
    [InlineData("fou\U0001F6F6s", 5, "fou\U0001F6F6…")]
    [InlineData(null, 5, "")]
    public void What_is_quoted_is_cut_where_no_character_is_halved(string? text, int most, string quoted) =>
        Assert.Equal(quoted, Quoted.Brief(text, most));

    [Theory]
    [InlineData(400, "400 m")]
    [InlineData(999.5, "999.5 m")]
    [InlineData(1000, "1 km")]
    [InlineData(16_093.44, "16.09344 km")]
    public void A_distance_is_shown_in_kilometres_from_one_on(double metres, string shown) =>
        Assert.Equal(shown, Distance.FromMetres(metres).ToString());

    [Theory]
    [InlineData(1.25, LengthUnit.Inches, "1.3 in")]
    [InlineData(-0.8, LengthUnit.Inches, "−0.8 in")]
    [InlineData(-0.04, LengthUnit.Inches, "0 in")]
    [InlineData(-1, LengthUnit.Centimetres, "−2.5 cm")]
    public void A_difference_bears_its_sign_unless_it_reads_as_nothing(double inches, LengthUnit unit, string shown) =>
        Assert.Equal(shown, Spoken.Amount(inches, unit));

    [Fact]
    public void Lines_that_are_quoted_in_one_line_are_told_apart() => Assert.Equal("one / two", Quoted.Visible("one\r\ntwo"));

    private static T? Takes<T>(bool taken, Func<T> make, params string[] says)
        where T : struct
    {
        if (taken)
            return make();
        InvalidValueException refusal = Assert.Throws<InvalidValueException>(() => { make(); });
        Assert.All(says, word => Assert.Contains(word, refusal.Message));
        return null;
    }

    private static void Refuses(bool taken, string? problem, string typed)
    {
        if (taken)
            Assert.Null(problem);
        else
            Assert.Contains(typed, problem);
    }

    [Theory]
    [InlineData(999, false)]
    [InlineData(1000, true)]
    [InlineData(172_800_000, true)]
    [InlineData(172_800_001, false)]
    public void A_time_lies_between_a_second_and_two_days(long milliseconds, bool taken) =>
        Takes(taken, () => PieceTime.FromMilliseconds(milliseconds), "time", "1 second and 48 hours");

    [Theory]
    [InlineData(332_000, "5:32")]
    [InlineData(332_400, "5:32.4")]
    [InlineData(59_999, "0:59.999")]
    [InlineData(3_599_500, "59:59.5")]
    [InlineData(3_600_000, "1:00:00")]
    [InlineData(3_730_000, "1:02:10")]
    public void A_time_has_hours_from_an_hour_on(long milliseconds, string shown) =>
        Assert.Equal(shown, PieceTime.FromMilliseconds(milliseconds).ToString());

    [Theory]
    [InlineData("5:3", "5:32.4")]
    [InlineData("5:61", "60 or more")]
    [InlineData("1:60:00", "60 or more")]
    [InlineData("0.9s", "1 second")]
    [InlineData("49h", "48 hours")]
    public void A_time_that_is_refused_is_named_with_what_is_wrong(string text, string says)
    {
        Assert.False(PieceTime.TryParse(text, out _, out string? problem));
        Refuses(false, problem, $"“{text}”");
        Assert.Contains(says, problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(47, true)]
    [InlineData(53, true)]
    [InlineData(50.1, true)]
    [InlineData(46.97, true)]
    [InlineData(46.95, false)]
    [InlineData(53.03, true)]
    [InlineData(53.05, false)]
    public void A_shaft_reaches_its_range_and_a_millimetre_more(double inches, bool reached) =>
        Assert.Equal(reached, new Paddle
        {
            Id = Guid.Empty,
            Name = "Reed",
            Blade = Length.Parse("18.5"),
            Shortest = Length.Parse("47"),
            Longest = Length.Parse("53"),
            Step = Length.QuarterInch,
        }.Reaches(Length.FromInches(inches)));
}
