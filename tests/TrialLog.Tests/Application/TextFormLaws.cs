using CsCheck;
using TrialLog.Application.Logging;
using TrialLog.Application.Text;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Application;

/// <summary>Text → value → text is the identity for every field, and value → text → value.</summary>
public class TextFormLaws
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    private static void GoesRound<T>(Gen<T> values, TextForm<T> form)
        where T : struct => values.Sample(value =>
        {
            string text = form.Write(value);
            Assert.Equal(value, form.Read(text));
            Assert.Equal(text, form.Write(form.Read(text)));
            Assert.Null(form.Problem(text));
        });

    [Fact]
    public void Lengths_go_round_in_both_units_to_the_nanometre()
    {
        Gen<Length> any = Gen.OneOf(Gen.Long[0, Length.Longest.Nanometres], Gen.Int[0, 390 * 16]
            .Select(sixteenths => sixteenths * 25_400_000L / 16), Gen.Int[0, 100_000].Select(tenths => tenths * 100_000L))
            .Select(Length.FromNanometres);
        GoesRound(any, TextForms.Length(LengthUnit.Inches));
        GoesRound(any, TextForms.Length(LengthUnit.Centimetres));
    }

    [Fact]
    public void Every_other_field_goes_round()
    {
        GoesRound(Gen.Long[1_000_000, 1_000_000_000_000].Select(Distance.FromMicrometres), TextForms.Distance);
        GoesRound(Gen.Long[1000, 48L * 3600 * 1000].Select(PieceTime.FromMilliseconds), TextForms.Time);
        GoesRound(Gen.Int[0, 20].Select(halves => Effort.FromPoints(halves / 2.0)), TextForms.Effort);
        GoesRound(Gen.Int[0, 20].Select(halves => Soreness.FromPoints(halves / 2.0)), TextForms.Soreness);
        GoesRound(Gen.Int[0, 12].Select(Beaufort.FromNumber), TextForms.Wind);
        GoesRound(Gen.Int[50, 1500].Select(tenths => StrokeRate.FromStrokesPerMinute(tenths / 10.0)), TextForms.StrokeRate);
        GoesRound(Gen.Enum<Course>(), TextForms.Course);
        GoesRound(Gen.Enum<TimedBy>(), TextForms.TimedBy);
        GoesRound(Gen.Enum<LengthUnit>(), TextForms.Unit);
        GoesRound(Gen.Bool, TextForms.YesOrNo);
        GoesRound(Gen.Int[0, 1439].Select(minute => new TimeOnly(minute / 60, minute % 60)), TextForms.TimeOfDay);
        GoesRound(Gen.Int[0, 40_000].Select(day => new DateOnly(1950, 1, 1).AddDays(day)), TextForms.Date(Today));
    }

    [Theory]
    [InlineData("2026-05-03", "2026-05-03")]
    [InlineData("24 nov", "2026-11-24")]
    [InlineData("Nov 24", "2026-11-24")]
    [InlineData("1 december", "2025-12-01")]
    [InlineData("24 Nov 2024", "2024-11-24")]
    [InlineData("24.11.", "2026-11-24")]
    [InlineData("wed", "2026-11-25")]
    [InlineData("sat", "2026-11-21")]
    [InlineData("-1", "2026-11-24")]
    [InlineData("yesterday", "2026-11-24")]
    [InlineData(" Today ", "2026-11-25")]
    public void A_day_is_read_as_people_write_it(string text, string day) =>
        Assert.Equal(DateOnly.Parse(day), TextForms.Date(Today).Read(text));

    [Theory]
    [InlineData("someday")]
    [InlineData("31 feb")]
    [InlineData("2026-02-30")]
    [InlineData("")]
    public void What_is_no_day_is_refused(string text) => Assert.False(TextForms.Date(Today).TryRead(text, out _, out _));

    [Theory]
    [InlineData("F4")]
    [InlineData("4 Bft")]
    [InlineData("4")]
    public void What_a_form_accepts_as_wind_is_what_is_saved(string text)
    {
        Assert.Null(TextForms.Wind.Problem(text));
        Assert.Equal(4, TextForms.Wind.ReadIfAny(text)!.Value.Number);
    }

    [Fact]
    public void A_time_without_its_colon_is_read_where_one_reading_makes_sense()
    {
        Distance far = Distance.FromMetres(1000);
        // 5.32 s for a kilometre is no paddler's, nor 532 s for 100 m at 0.19 m/s.
        Assert.Equal(332, TimeText.Read("5.32", far, null).Seconds);
        Assert.Equal(92, TimeText.Read("1.32", Distance.FromMetres(300), null).Seconds);
        Assert.False(TimeText.TryRead("532", far, null, out _, out string? problem));
        Assert.Contains("5:32", problem);
        Assert.Equal(332, TimeText.Read("532", far, Usual(330)).Seconds);
        Assert.Equal(532, TimeText.Read("532", far, Usual(530)).Seconds);
        Assert.Equal(332, TimeText.Read("5:32", far, Usual(530)).Seconds);

        Func<Distance, PieceTime, bool> Usual(double seconds) => UsualSpeed.Of(
        [
            new Outing
            {
                Id = Guid.NewGuid(),
                PaddlerId = Guid.Empty,
                HullId = Guid.Empty,
                Date = Today,
                Pieces = [.. Enumerable.Range(1, 4).Select(order => new Piece
                {
                    Id = Guid.NewGuid(), Order = order, PaddleId = Guid.Empty, Length = Length.FromInches(50), Distance = far,
                        Time = PieceTime.FromSeconds(seconds),
                })],
            },
        ], Guid.Empty).Fits;
    }
}
