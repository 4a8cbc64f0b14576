using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Values;

/// <summary>A value that was never set is one that could have been: its own factory takes it.</summary>
public class DefaultTests
{
    [Fact]
    public void No_value_is_impossible_when_it_was_never_set()
    {
        Assert.Equal(default, Length.FromNanometres(default(Length).Nanometres));
        Assert.Equal(default, Distance.FromMicrometres(default(Distance).Micrometres));
        Assert.Equal(default, PieceTime.FromMilliseconds(default(PieceTime).Milliseconds));
        Assert.Equal(default, HeartRate.FromBeatsPerMinute(default(HeartRate).BeatsPerMinute));
        Assert.Equal(default, StrokeRate.FromStrokesPerMinute(default(StrokeRate).StrokesPerMinute));
        Assert.Equal(default, Effort.FromPoints(default(Effort).Points));
        Assert.Equal(default, Soreness.FromPoints(default(Soreness).Points));
        Assert.Equal(default, Beaufort.FromNumber(default(Beaufort).Number));
    }
}
