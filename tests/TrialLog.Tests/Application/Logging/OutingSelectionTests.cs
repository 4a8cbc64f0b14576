using TrialLog.Application.Logging;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tests.Logbook;

namespace TrialLog.Tests.Application.Logging;

/// <summary>Outings in a line, picked out, told apart, and what soreness they leave: each by a telling example.</summary>
public class OutingSelectionTests
{
    private static readonly DateOnly Day = new(2026, 5, 3);

    private static Outing On(DateOnly date, params (double Inches, double Seconds, int? Sore)[] pieces)
    {
        Outing outing = SampleLog.Outing(date.DayNumber - Day.DayNumber + 100, pieces.Length);
        return outing with
        {
            Date = date,
            Pieces = [.. outing.Pieces.Zip(pieces, (piece, told) => piece with
            {
                Length = Length.FromInches(told.Inches),
                Time = PieceTime.FromSeconds(told.Seconds),
                Soreness = told.Sore is int points ? Soreness.FromPoints(points) : null,
            })],
        };
    }

    [Fact]
    public void Outings_are_shown_by_the_longest_paddle_or_the_fastest_piece_in_them()
    {
        Outing slowShort = On(Day, (48, 400, null), (48, 300, null)), fastLong = On(Day.AddDays(1), (47, 350, null), (52, 290, null)),
            even = On(Day.AddDays(2), (49, 295, null), (49, 295, null));
        Outing[] all = [slowShort, fastLong, even];
        Assert.Equal([even, fastLong, slowShort], OutingSelection.All.Of(all));
        Assert.Equal(all, (OutingSelection.All with { Order = OutingOrder.OldestFirst }).Of(all));
        Assert.Equal([fastLong, even, slowShort], (OutingSelection.All with { Order = OutingOrder.LongestPaddleFirst }).Of(all));
        Assert.Equal([fastLong, even, slowShort], (OutingSelection.All with { Order = OutingOrder.FastestPieceFirst }).Of(all));
        Assert.Equal([even, fastLong], (OutingSelection.All with { From = Day.AddDays(1) }).Of(all));
        Assert.Equal([fastLong, slowShort], (OutingSelection.All with { To = Day.AddDays(1) }).Of(all));
        Assert.Empty((OutingSelection.All with { HullId = Guid.Empty }).Of(all));
    }

    [Fact]
    public void Any_one_thing_that_is_asked_for_narrows()
    {
        OutingSelection all = OutingSelection.All;
        Assert.False(all.IsNarrowed);
        Assert.All(
            new[] { all with { HullId = Guid.Empty }, all with { PaddleId = Guid.Empty }, all with { From = Day }, all with { To = Day } },
            narrowed => Assert.True(narrowed.IsNarrowed));
    }

    [Fact]
    public void A_line_has_the_fastest_pace_and_the_worst_soreness()
    {
        OutingSummary line = OutingSummary.Of(On(Day, (49, 340, 2), (51, 330, 4), (50, 335, null)), LengthUnit.Inches);
        Assert.Equal((3, 0, "5:30 /km", 4.0), (line.Pieces, line.LeftOut, line.Pace, line.Soreness!.Value.Points));
        Assert.Null(OutingSummary.Of(On(Day, (49, 340, null)), LengthUnit.Inches).Soreness);
    }

    [Fact]
    public void A_change_of_anything_in_an_outing_or_its_pieces_changes_its_print()
    {
        Outing outing = On(Day, (49, 340, 2), (51, 330, null));
        Assert.Equal(OutingPrint.Of(outing), OutingPrint.Of(outing with { Pieces = [.. outing.Pieces] }));
        Assert.NotEqual(OutingPrint.Of(outing), OutingPrint.Of(outing with { Notes = "choppy" }));
        Assert.NotEqual(
            OutingPrint.Of(outing),
            OutingPrint.Of(outing with { Pieces = [outing.Pieces[0], outing.Pieces[1] with { Time = PieceTime.FromSeconds(331) }] }));
    }

    // Two of ten does not limit any length, and is shown all the same.
    [Fact]
    public void A_little_soreness_is_shown_until_word_of_the_same_day_or_later_that_it_is_gone()
    {
        Outing[] outings = [On(Day, (49, 340, 2), (51, 330, 1)), On(Day.AddDays(1), (49, 340, null))];
        SorenessClearance Gone(int day) => new()
        {
            Id = Guid.Empty, PaddlerId = SampleLog.Ilse.Id, Date = Day.AddDays(day), By = "Sela Brand", Because = "seen today",
        };
        DateOnly today = Day.AddDays(4);
        Assert.Equal(2, RecentSoreness.Worst(outings, today)!.Value.Points);
        Assert.Equal(2, RecentSoreness.Worst(outings.Where(_ => true), today, [Gone(-1), Gone(5)])!.Value.Points);
        Assert.Null(RecentSoreness.Worst(outings, today, [Gone(0)]));
        Assert.Null(RecentSoreness.Worst(outings, today, [Gone(4)]));
        Assert.Null(RecentSoreness.Worst(outings[1..], today));
        Assert.Null(RecentSoreness.Worst(outings, Day.AddDays(-1)));
    }
}
