using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Tuning.Assessments;

/// <summary>Short pieces and a long race: how the best length moves with duration is what no number of such pieces tells.</summary>
public class ShortPiecesTests
{
    private static readonly double[] Card = [48.75, 51.25, 51.25, 48.75];

    /// <summary>
    /// The chance said to stay is the chance that stays: after sixty outings with next to no noise, which tell the best length of a
    /// kilometre to a hundredth of an inch, the search still has it.
    /// </summary>
    [Theory]
    [InlineData(16_000)]
    [InlineData(42_000)]
    public void The_chance_that_is_said_to_stay_does(double metres)
    {
        Analysis analysis = Tuner.Analyse(Racing(metres, 60, pieces: 1000));
        Assert.NotNull(analysis.TooShort);
        Assert.Equal(analysis.TooShort.ChanceBeyond, analysis.ProbabilityWorthwhileLeft, 0.01);
        Assert.Equal((Standing.CannotTell, StandingReason.PiecesTooShort), (analysis.Standing, analysis.Why[0]));
    }

    [Fact]
    public void Its_card_has_longer_pieces_and_those_settle_it()
    {
        AnalysisInput input = Racing(16_000, 14, pieces: 1000);
        Analysis before = Tuner.Analyse(input);
        Assert.Equal(before.TooShort!.LongEnough, before.Card.Distance);
        Assert.InRange(before.OutingsToGo.Median, 1, 12);
        Assert.Equal(Standing.Settled, Tuner.Analyse(Racing(16_000, 14, before.Card.Distance.Metres)).Standing);
    }

    [Fact]
    public void Who_told_the_distance_keeps_it()
    {
        AnalysisInput input = Racing(16_000, 14, pieces: 1000);
        Distance told = Distance.FromMetres(1000);
        Analysis analysis = Tuner.Analyse(input with { Paddler = input.Paddler with { Trials = new() { Distance = told } } });
        Assert.Equal(StandingReason.PiecesTooShort, analysis.Why[0]);
        Assert.Equal(told, analysis.Card.Distance);
        Assert.Equal(new OutingsToGo(OutingsToGo.Most, OutingsToGo.Most, OutingsToGo.Most), analysis.OutingsToGo);
    }

    [Fact]
    public void Pieces_near_the_race_are_never_too_short()
    {
        Assert.Null(Tuner.Analyse(Racing(3_000, 14, pieces: 1000)).TooShort);
        Assert.Null(Tuner.Analyse(Racing(16_000, 14, pieces: 4000)).TooShort);
    }

    /// <summary>
    /// The shortest pieces that could settle a race of hours would take a whole season; longer ones take a fraction of its time.
    /// </summary>
    [Fact]
    public void For_a_race_of_hours_the_card_has_the_distance_that_settles_it_soonest()
    {
        AnalysisInput input = Racing(30_000, 14, pieces: 1000, noise: 1);
        TimeSpent proposed = With(null), shorter = With(3000);
        Assert.True(proposed.Metres > 3000);
        Assert.True(proposed.Minutes < shorter.Minutes, $"{proposed} {shorter}");

        TimeSpent With(double? told)
        {
            Distance? distance = told is { } metres ? Distance.FromMetres(metres) : null;
            Analysis analysis = Tuner.Analyse(input with { ThisOuting = new() { Distance = distance } });
            double piece = analysis.Card.Distance.Metres;
            return new(piece, analysis.OutingsToGo.Median * (20 + 4 * piece / 180));
        }
    }

    private sealed record TimeSpent(double Metres, double Minutes);

    private static AnalysisInput Racing(double metres, int outings, double pieces, double noise = 0.02)
    {
        AnalysisInput input = LogOf.Rows(
            from outing in Enumerable.Range(0, outings)
            from at in Enumerable.Range(0, 4)
            let away = Card[at] - 50
            select new Row(outing, Card[at],
                Math.Sin(outing) - 0.8 * away * away + noise * Math.Sin(5 * outing + 2 * at))
            { Metres = pieces });
        var race = new GoalEvent { HullId = input.Hull.Id, Distance = Distance.FromMetres(metres) };
        return input with { Paddler = input.Paddler with { Goal = race } };
    }
}
