using CsCheck;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Values;

/// <summary>What holds of every value: printed and read again it is the same, and junk is refused in one sentence.</summary>
public class ParsingLaws
{
    private static readonly Gen<Length> Lengths = Gen.OneOf(
        Gen.Long[0, 10_000_000_000], Gen.Int[0, 25_196].Select(n => n * 25_400_000L / 64), Gen.Int[0, 100_000].Select(n => n * 100_000L))
            .Select(Length.FromNanometres);

    private static readonly Gen<Distance> Distances = Gen.OneOf(
        Gen.Long[1_000_000, 1_000_000_000_000], Gen.Int[1, 1_000_000].Select(n => n * 1_000_000L),
            Gen.Int[1, 62_000].Select(n => n * 16_093_440L)).Select(Distance.FromMicrometres);

    private static readonly Gen<PieceTime> Times = Gen.OneOf(
        Gen.Long[1000, 172_800_000], Gen.Int[1, 172_800].Select(n => n * 1000L)).Select(PieceTime.FromMilliseconds);

    private static readonly Gen<string> Junk = Gen.OneOf(
        Gen.OneOf("0123456789.,:;-+/'\"″′ ½¾⅞⁄aehikmnstyd٣߃९\u0000\u00A0".ToCharArray()).Array[0, 14]
            .Select(letters => new string(letters)),
        Gen.Char.Array[0, 40].Select(letters => new string(letters)),
            Gen.OneOf("", " ", "∞", "NaN", "1e5", "1/0", "0x10", new string('9', 5000), new string(' ', 5000)));

    [Fact]
    public void A_length_printed_in_either_unit_reads_as_itself() =>
        Gen.Select(Lengths, Gen.Enum<LengthUnit>(), Gen.Enum<LengthUnit>()).Sample((length, unit, bare) =>
            Length.Parse(length.ToText(unit), bare) == length && Length.Parse(length.ToDecimalInches()) == length);

    [Fact]
    public void The_longest_and_the_shortest_length_are_printed_as_what_is_accepted() =>
        Assert.All([Length.Longest, Length.FromNanometres(9_999_999_999), Length.FromNanometres(1), default], length =>
        {
            Assert.Equal(length, Length.Parse(length.ToText()));
            Assert.Equal(length, Length.Parse(length.ToDecimalInches()));
        });

    // Nine decimals of an inch are finer than a nanometre; more would only look exact.
    [Theory]
    [InlineData(10_000_000_000, "393.700787402")]
    [InlineData(1, "0.000000039")]
    [InlineData(16, "0.00000063")]
    [InlineData(1_250_950_000, "49.25")]
    public void Decimal_inches_have_nine_decimals_at_most(long nanometres, string inches)
    {
        Assert.Equal(inches, Length.FromNanometres(nanometres).ToDecimalInches());
        Assert.Equal(inches, Length.FromNanometres(nanometres).ToText().Replace("49¼", "49.25", StringComparison.Ordinal)[..^3]);
    }

    [Fact]
    public void A_distance_printed_reads_as_itself() =>
        Distances.Sample(distance => Distance.Parse(distance.ToString()) == distance
            && Distance.Parse(distance.ToDecimalMetres()) == distance);

    [Fact]
    public void A_time_printed_reads_as_itself() => Times.Sample(time => PieceTime.Parse(time.ToString()) == time);

    [Fact]
    public void Effort_soreness_wind_and_rates_printed_read_as_themselves() =>
        Gen.Select(Gen.Int[0, 20], Gen.Int[0, 12], Gen.Int[25, 250], Gen.Int[50, 1500]).Sample((halves, wind, beats, tenths) =>
        {
            var effort = Effort.FromPoints(halves / 2.0);
            var soreness = Soreness.FromPoints(halves / 2.0);
            Assert.Equal(effort, Effort.Parse(effort.ToString()));
            Assert.Equal(soreness, Soreness.Parse(soreness.ToString()));
            Assert.True(Beaufort.TryParse(Beaufort.FromNumber(wind).ToString(), out Beaufort beaufort, out _) && beaufort.Number == wind);
            Assert.True(HeartRate.TryParse(HeartRate.FromBeatsPerMinute(beats).ToString(), out HeartRate heart, out _)
                && heart.BeatsPerMinute == beats);
            Assert.True(StrokeRate.TryParse(StrokeRate.FromStrokesPerMinute(tenths / 10.0).ToString(), out StrokeRate stroke, out _)
                && stroke.Tenths == tenths);
        });

    [Fact]
    public void Junk_is_read_or_refused_in_one_sentence_and_never_crashes() =>
        Junk.Sample(text =>
        {
            Refusal(() => Length.Parse(text), () => Length.Parse(text, LengthUnit.Centimetres), () => Distance.Parse(text),
                () => PieceTime.Parse(text),
                () => Effort.Parse(text), () => Soreness.Parse(text));
            Assert.NotEqual(Beaufort.TryParse(text, out _, out string? problem), problem is not null);
            Assert.NotEqual(HeartRate.TryParse(text, out _, out problem), problem is not null);
            Assert.NotEqual(StrokeRate.TryParse(text, out _, out problem), problem is not null);
        }, iter: 4000);

    [Fact]
    public void Numbers_beyond_bounds_are_refused_and_never_wrap() =>
        Gen.Double.Sample(number => Refusal(
            () => Length.FromInches(number), () => Length.FromMillimetres(number), () => Length.FromInches(49).PlusInches(number), () =>
                Distance.FromMetres(number),
            () => PieceTime.FromSeconds(number), () => Effort.FromPoints(number), () => Soreness.FromPoints(number), () =>
                StrokeRate.FromStrokesPerMinute(number)));

    [Fact]
    public void What_is_read_once_prints_and_reads_again_as_the_same()
    {
        int lengths = 0, distances = 0, times = 0;
        Junk.Sample(text =>
        {
            if (Length.TryParse(text, LengthUnit.Inches, out Length length, out _) && ++lengths > 0)
                Assert.Equal(length, Length.Parse(length.ToText()));
            if (Distance.TryParse(text, out Distance distance, out _) && ++distances > 0)
                Assert.Equal(distance, Distance.Parse(distance.ToString()));
            if (PieceTime.TryParse(text, out PieceTime time, out _) && ++times > 0)
                Assert.Equal(time, PieceTime.Parse(time.ToString()));
        }, iter: 5000);
        // Else it would hold because nothing of it was read.
        Assert.True(lengths > 0 && distances > 0 && times > 0, $"{lengths} lengths, {distances} distances and {times} times were read");
    }

    [Fact]
    public void Rounding_a_length_to_a_step_moves_it_by_half_a_step_at_most() =>
        Gen.Select(Lengths, Gen.Long[1, 100_000_000]).Sample((length, nanometres) =>
        {
            Length rounded = length.RoundedTo(Length.FromNanometres(nanometres));
            Assert.Equal(0, rounded.Nanometres % nanometres);
            Assert.True(Math.Abs(rounded.Nanometres - length.Nanometres) * 2 <= nanometres);
        });

    private static void Refusal(params Func<object>[] parsers)
    {
        foreach (Func<object> parse in parsers)
        {
            try
            {
                parse();
            }
            catch (InvalidValueException refusal)
            {
                Assert.DoesNotContain(refusal.Message, char.IsControl);
                Assert.True(refusal.Message.Length < 200, refusal.Message);
            }
        }
    }
}
