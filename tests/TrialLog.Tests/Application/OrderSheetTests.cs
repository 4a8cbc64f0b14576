using CsCheck;
using TrialLog.Application.Sizing;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Application;

public class OrderSheetTests
{
    private static readonly Gen<OrderLine> AnyLine =
        from best in Gen.Double[45, 55]
        from low in Gen.Double[0, 2]
        from high in Gen.Double[0, 2]
        from within in Gen.Double[0, 1]
        from pieces in Gen.Int[0, 40]
        from left in Gen.Double[0, 0.6]
        from done in Gen.Bool
        from sore in Gen.Bool
        from ceiling in Gen.Double[44, 60]
        from hull in Gen.String[Gen.Char, 1, 12]
        from paddle in Gen.String[Gen.Char, 1, 12]
        select new OrderLine
        {
            Hull = hull,
            Paddle = paddle,
            Blade = Length.FromInches(18.5),
            Best = Length.FromInches(best),
            LikelyLow = Length.FromInches(best - low),
            LikelyHigh = Length.FromInches(best + high),
            WithinQuarterInch = within,
            Pieces = pieces,
            RestsOn = "by rule",
            GainLeftPercent = left,
            DiminishingReturns = done,
            SorenessCeiling = sore ? Length.FromInches(ceiling) : null,
        };

    private static OrderSheet Sheet(params OrderLine[] lines) =>
        OrderSheet.Of("Ilse Maro", new DateOnly(2026, 5, 2), LengthUnit.Inches, lines, []);

    [Fact]
    public void A_paddle_is_ordered_long_in_quarter_inches_and_covers_the_likely_range() =>
        AnyLine.Sample(line =>
        {
            Assert.Equal(0, line.CutTo.Nanometres % Length.QuarterInch.Nanometres);
            Assert.Equal(0, line.OrderAt.Nanometres % Length.QuarterInch.Nanometres);
            Assert.True(Math.Abs(line.CutTo.InchesMoreThan(line.Best)) <= 0.125);
            Assert.True(line.OrderAt.InchesMoreThan(line.CutTo) >= OrderLine.LeastSpareInches);
            Assert.True(line.OrderAt >= line.LikelyHigh);
            Assert.True(line.OrderAt.InchesMoreThan(line.LikelyHigh) < 0.25
                || line.OrderAt.InchesMoreThan(line.CutTo) == OrderLine.LeastSpareInches);
        });

    [Fact]
    public void The_order_of_hulls_and_blades_does_not_matter() =>
        Gen.Select(AnyLine.Array[0, 6], Gen.Int).Sample((lines, seed) =>
        {
            OrderLine[] named = [.. lines.Select((line, i) => line with { Hull = $"hull {i / 2}", Paddle = $"paddle {i}" })];
            OrderLine[] shuffled = [.. named];
            new Random(seed).Shuffle(shuffled);
            Assert.Equal(OrderSheetText.Plain(Sheet(named)), OrderSheetText.Plain(Sheet(shuffled)));
            Assert.Equal(OrderSheetText.Markdown(Sheet(named)), OrderSheetText.Markdown(Sheet(shuffled)));
        });

    [Fact]
    public void A_name_cannot_break_the_table_nor_drive_the_terminal() =>
        AnyLine.Sample(line =>
        {
            string row = OrderSheetText.Markdown(Sheet(line)).Split('\n')
                .Single(text => text.StartsWith("| ", StringComparison.Ordinal) && !text.StartsWith("| Hull", StringComparison.Ordinal));
            Assert.Equal(8, row.Replace("\\\\", "").Replace("\\|", "").Count(c => c == '|'));
            Assert.DoesNotContain(OrderSheetText.Plain(Sheet(line)), c => char.IsControl(c) && c != '\n');
        });

    [Fact]
    public void Plain_text_fits_eighty_columns() =>
        AnyLine.Sample(line => Assert.All(OrderSheetText.Plain(Sheet(line)).Split('\n'), text => Assert.True(text.Length <= 80, text)));

    [Fact]
    public void A_sheet_has_for_each_line_what_to_cut_to_and_what_to_order()
    {
        Assert.StartsWith(
            "Order sheet: Ilse Maro, 2 May 2026\n==================================\n\nOC1, Reed (blade 18½ in)\n"
                + "    Cut to    49¾ in    from 4 pieces\n    Order at  50¾ in    and cut down\n    Better test first. ",
            OrderSheetText.Plain(Sheet(Line("49.75"))));
        Assert.Contains("\n\nFor the maker\n  - Overall length ", OrderSheetText.Plain(Sheet(Line("49.75"))));
        Assert.DoesNotContain("Nothing to order", OrderSheetText.Plain(Sheet(Line("49.75"))));
    }

    [Fact]
    public void A_sheet_without_a_paddle_says_so_and_has_the_cautions_alone()
    {
        Assert.StartsWith("Order sheet: Ilse Maro, 2 May 2026\n==================================\n\n"
            + "Nothing to order: no paddle was asked for.\n\nCautions\n  - Shoulder, elbow or back pain", OrderSheetText.Plain(Sheet()));
        Assert.StartsWith(
            "# Order sheet: Ilse Maro, 2 May 2026\n\nNothing to order: no paddle was asked for.\n\n## Cautions\n\n- Shoulder, ",
            OrderSheetText.Markdown(Sheet()));
    }

    [Fact]
    public void An_untested_length_says_what_ordering_it_today_would_risk()
    {
        OrderLine line = Line("49.75") with { LikelyLow = Length.Parse("48.5"), LikelyHigh = Length.Parse("51") };
        Assert.Equal(
            "Better test first. If you order today, expect to lose 0.20% of speed, about 7 s in an hour, on average; your best length " +
                "may be anywhere from 48½ to 51 in. If you must order, order long.",
            OrderWords.Risk(line, LengthUnit.Inches));
        Assert.Contains("expect to lose 0.20% of speed, about 12 s over your 16 km, on average",
            OrderWords.Risk(line with { GoalSeconds = 6240, OverTheRace = "over your 16 km" }, LengthUnit.Inches));
        Assert.StartsWith("Ready to order", OrderWords.Risk(line with { DiminishingReturns = true }, LengthUnit.Inches));
    }

    [Fact]
    public void A_hull_never_tried_is_not_called_ready_to_order() =>
        Assert.StartsWith("You have not paddled this hull yet",
            OrderWords.Risk(Line("49.75") with { Pieces = 0, DiminishingReturns = true }, LengthUnit.Inches));

    [Fact]
    public void A_sore_paddler_is_told_not_to_order_at_whatever_length()
    {
        OrderLine sore = Line("50.5") with { SorenessCeiling = Length.Parse("49.9"), DiminishingReturns = true };
        Assert.Equal(RestFirst.NoOrder, OrderWords.Risk(sore, LengthUnit.Inches));
        Assert.Equal(RestFirst.NoOrder, OrderWords.Risk(sore with { SorenessCeiling = Length.Parse("52") }, LengthUnit.Inches));
    }

    [Theory]
    [InlineData("51", "Yours is 51 in: it can be cut, by 1¼ in in all.")]
    [InlineData("49", "Yours is 49 in, ¾ in too short: it takes a new shaft.")]
    [InlineData("49.75", "Yours is 49¾ in: leave it as it is.")]
    public void A_fixed_paddle_can_be_cut_but_not_grown(string now, string says) =>
        Assert.EndsWith(" " + says, OrderWords.Of(Line("49.75") with { FixedAt = Length.Parse(now) }, LengthUnit.Inches));

    private static OrderLine Line(string best) => new()
    {
        Hull = "OC1",
        Paddle = "Reed",
        Blade = Length.Parse("18.5"),
        Best = Length.Parse(best),
        LikelyLow = Length.Parse(best).PlusInches(-1),
        LikelyHigh = Length.Parse(best).PlusInches(1),
        WithinQuarterInch = 0.31,
        Pieces = 4,
        RestsOn = "from 4 pieces",
        GainLeftPercent = 0.2,
        DiminishingReturns = false,
    };

    [Fact]
    public void A_large_steering_blade_is_shorter_than_the_exposed_shaft_rule_and_a_small_one_is_not()
    {
        Length forward = Length.Parse("53");
        Paddle large = Steering("22", 160), small = Steering("18.5", 115);
        Assert.Equal((Length.Parse("51"), true), (SteeringRule.Propose(forward, large).Length, SteeringRule.Propose(forward, large).Large));
        Assert.Equal((forward, false), (SteeringRule.Propose(forward, small).Length, SteeringRule.Propose(forward, small).Large));
        Assert.True(SteeringRule.IsLarge(Steering("22", null)));
        Assert.Contains("uncut", SteeringWords.Advice(large: true)[^1], StringComparison.Ordinal);
        Assert.Contains("long at first", SteeringWords.Advice(large: false)[^1], StringComparison.Ordinal);
        Assert.Contains(SteeringWords.Cautions, caution => caution.Contains("overhead", StringComparison.Ordinal));
    }

    private static Paddle Steering(string blade, double? area) => new()
    {
        Id = Guid.Empty,
        Name = "Harbour rudder",
        Blade = Length.Parse(blade),
        BladeAreaSquareInches = area,
        Steering = true,
        Shortest = Length.Parse("48"),
        Longest = Length.Parse("56"),
        Step = Length.Parse("0.25"),
    };
}
