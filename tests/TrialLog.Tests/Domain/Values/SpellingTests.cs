using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Values;

/// <summary>
/// Spellings that a person types, and units by their definitions: 1 in = 25.4 mm, 1 ft = 12 in, 1 yd = 0.9144 m and
/// 1 mi = 1,609.344 m exactly (NIST Special Publication 811, appendix B.8, from the international agreement of 1959).
/// </summary>
public class SpellingTests
{
    [Theory]
    [InlineData("49.75in")]
    [InlineData("49 3/4")]
    [InlineData("49¾")]
    [InlineData("49¾ in")]
    [InlineData("49-3/4\"")]
    [InlineData("49 3⁄4 inches")]
    [InlineData("  49,75 IN ")]
    [InlineData("49.750")]
    [InlineData("4' 1.75\"")]
    [InlineData("4′ 1 3/4″")]
    [InlineData("4ft 1¾in")]
    [InlineData("4 feet 1.75 inches")]
    [InlineData("126.365cm")]
    [InlineData("126,365 cm")]
    [InlineData("1263.65mm")]
    [InlineData("1.26365 m")]
    [InlineData("49.75 in.")]
    [InlineData("49.75''")]
    [InlineData("49 12/16")]
    [InlineData("49\u00A0¾")]
    public void Every_way_of_writing_49_and_three_quarters_is_that_length(string text) =>
        Assert.Equal(Length.FromNanometres(1_263_650_000), Length.Parse(text));

    [Theory]
    [InlineData("126.4cm", 1_264_000_000)]
    [InlineData("1264mm", 1_264_000_000)]
    [InlineData("4' 1.5\"", 1_257_300_000)]
    [InlineData("4'", 1_219_200_000)]
    [InlineData("½", 12_700_000)]
    [InlineData("1/64", 396_875)]
    [InlineData("0", 0)]
    public void Lengths_are_held_to_the_nanometre(string text, long nanometres) => Assert.Equal(nanometres, Length.Parse(text).Nanometres);

    [Theory]
    [InlineData("126.4", LengthUnit.Centimetres, "126.4 cm")]
    [InlineData("49.75in", LengthUnit.Centimetres, "126.365 cm")]
    [InlineData("126.365cm", LengthUnit.Inches, "49¾ in")]
    [InlineData("49.0625", LengthUnit.Inches, "49 1/16 in")]
    [InlineData("49.875", LengthUnit.Inches, "49⅞ in")]
    [InlineData("49.8", LengthUnit.Inches, "49.8 in")]
    [InlineData(".25", LengthUnit.Inches, "¼ in")]
    public void A_bare_number_follows_the_unit_chosen_and_a_length_is_shown_in_it(string text, LengthUnit unit, string shown) =>
        Assert.Equal(shown, Length.Parse(text, unit).ToText(unit));

    [Theory]
    [InlineData("")]
    [InlineData("-49")]
    [InlineData("49 4/3")]
    [InlineData("49 1/0")]
    [InlineData("49.5 1/4")]
    [InlineData("126¾cm")]
    [InlineData("4' 10cm")]
    [InlineData("1001cm")]
    [InlineData("49 in 3")]
    [InlineData("49 50")]
    [InlineData("1,264.0mm")]
    [InlineData("４９")]
    public void A_length_that_cannot_be_meant_is_refused(string text) => Assert.Throws<InvalidValueException>(() => Length.Parse(text));

    [Theory]
    [InlineData("1km", 1_000_000_000)]
    [InlineData("1000m", 1_000_000_000)]
    [InlineData("1000", 1_000_000_000)]
    [InlineData("1 mi", 1_609_344_000)]
    [InlineData("0.62mi", 997_793_280)]
    [InlineData("1,5 km", 1_500_000_000)]
    [InlineData("440yd", 402_336_000)]
    [InlineData("2 miles", 3_218_688_000)]
    [InlineData("500 metres", 500_000_000)]
    public void Distances_are_held_to_the_micrometre(string text, long micrometres) =>
        Assert.Equal(micrometres, Distance.Parse(text).Micrometres);

    [Theory]
    [InlineData("5:32", 332_000)]
    [InlineData("5:32.4", 332_400)]
    [InlineData("5:32,4", 332_400)]
    [InlineData("1:02:10", 3_730_000)]
    [InlineData("01:02:10.25", 3_730_250)]
    [InlineData("332s", 332_000)]
    [InlineData("332.4", 332_400)]
    [InlineData("45min", 2_700_000)]
    [InlineData("1h 30min", 5_400_000)]
    [InlineData("1h30", 5_400_000)]
    [InlineData("1h", 3_600_000)]
    [InlineData("90:00", 5_400_000)]
    [InlineData("5 min 32 s", 332_000)]
    [InlineData("5m32s", 332_000)]
    [InlineData("5'32\"", 332_000)]
    [InlineData("5m 32.45", 332_450)]
    [InlineData("1 h 2 min 10 s", 3_730_000)]
    public void Times_are_held_to_the_millisecond(string text, long milliseconds) =>
        Assert.Equal(milliseconds, PieceTime.Parse(text).Milliseconds);

    [Theory]
    [InlineData("5:60")]
    [InlineData("1:60:00")]
    [InlineData("5:3")]
    [InlineData("0")]
    [InlineData("49:00:00")]
    [InlineData("-5:00")]
    [InlineData("5.32.1")]
    [InlineData("h")]
    [InlineData("5 32")]
    [InlineData("5m75s")]
    [InlineData("m")]
    [InlineData(" ")]
    public void A_time_that_cannot_be_meant_is_refused(string text) => Assert.Throws<InvalidValueException>(() => PieceTime.Parse(text));

    [Theory]
    [InlineData("6", 12)]
    [InlineData("6.5", 13)]
    [InlineData("6,5", 13)]
    [InlineData("6½", 13)]
    [InlineData("6 ½", 13)]
    [InlineData("½", 1)]
    [InlineData("10", 20)]
    [InlineData("7.0", 14)]
    public void Effort_is_read_in_halves(string text, int halves) => Assert.Equal(halves, Effort.Parse(text).Halves);

    [Theory]
    [InlineData("142", 142)]
    [InlineData("142.4", 142)]
    [InlineData("142,4", 142)]
    [InlineData("142 bpm", 142)]
    public void A_heart_rate_is_read_in_beats_a_minute(string text, int beats)
    {
        Assert.True(HeartRate.TryParse(text, out HeartRate rate, out string? problem), problem);
        Assert.Equal(beats, rate.BeatsPerMinute);
    }

    [Theory]
    [InlineData("4", 4)]
    [InlineData("F4", 4)]
    [InlineData("Bft 4", 4)]
    public void Wind_is_read_as_a_Beaufort_number(string text, int number)
    {
        Assert.True(Beaufort.TryParse(text, out Beaufort wind, out string? problem), problem);
        Assert.Equal(number, wind.Number);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 0.836)]
    [InlineData(4, 6.688)]
    [InlineData(9, 22.572)]
    public void Wind_speed_follows_the_Beaufort_equivalents_of_the_WMO(int number, double metresPerSecond) =>
        Assert.Equal(metresPerSecond, Beaufort.FromNumber(number).MetresPerSecond, 10);

    [Fact]
    public void Miles_yards_and_inches_are_those_of_1959()
    {
        Assert.Equal(1609.344, Distance.Parse("1mi").Metres);
        Assert.Equal(0.9144 * 1000, Distance.Parse("1000yd").Metres, 12);
        Assert.Equal(2.54, Length.Parse("1in").Centimetres);
        Assert.Equal(30.48, Length.Parse("1ft").Centimetres, 12);
    }
}
