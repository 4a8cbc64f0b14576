using TrialLog.Application.Setup;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Tests.Commands;
using TrialLog.Tests.Logbook;

namespace TrialLog.Tests.Application.Setup;

/// <summary>Paddlers, hulls and paddles changed, renamed and joined: what stays, what is asked, and what the history calls it.</summary>
public sealed class SetUpTests : IDisposable
{
    private static readonly TrialHabits Habits = new()
    {
        Pieces = 6,
        Distance = Distance.FromMetres(800),
        Minutes = 75,
        TimedBy = TimedBy.Watch,
        PricePercent = 0.02,
    };

    private readonly ScratchFolder _folder = new();
    private readonly LogbookFile _log;
    private readonly Workspace _workspace;

    public SetUpTests()
    {
        _log = _folder.OpenHastily();
        SampleLog.Begin(_log);
        _workspace = new Workspace(_log, new FixedClock(new DateTimeOffset(2026, 6, 1, 12, 0, 0, TimeSpan.Zero)));
    }

    [Fact]
    public void What_is_not_told_of_a_paddler_stays_and_what_is_cleared_goes_alone()
    {
        SetUpPaddler.Change(_workspace, "Ilse Maro", new PaddlerDetails { Trials = Habits });
        Assert.Equal(Habits, SetUpPaddler.Change(_workspace, "Ilse Maro", new PaddlerDetails { Unit = LengthUnit.Centimetres }).Trials);
        Assert.Equal(Habits with { PricePercent = null },
            SetUpPaddler.Change(_workspace, "Ilse Maro", new PaddlerDetails { ClearToo = PaddlerFields.Price }).Trials);
    }

    [Fact]
    public void The_history_tells_a_rename_from_another_change()
    {
        SetUpPaddler.Change(_workspace, "Ilse Maro", new PaddlerDetails { SeatedReach = Length.FromInches(50) });
        SetUpPaddler.Change(_workspace, "Ilse Maro", new PaddlerDetails { NewName = "Ilse Brand" }, newName: true);
        SetUpHull.Change(_workspace, "OC1", crew: null, seatHeight: Length.FromInches(9));
        SetUpHull.Change(_workspace, "OC1", crew: null, seatHeight: null, rename: "Grey solo");
        Assert.Equal(["Renamed the hull OC1 to Grey solo", "Changed the hull OC1", "Renamed Ilse Maro to Ilse Brand",
            "Changed what is known of Ilse Maro"], Enumerable.Range(0, 4).Select(_ => _log.Undo()!.What));
    }

    [Fact]
    public void A_hull_may_be_renamed_to_its_own_name_in_other_letters_but_not_to_anothers()
    {
        Assert.Equal("oc1", SetUpHull.Change(_workspace, "OC1", crew: null, seatHeight: null, rename: "oc1").Name);
        Assert.StartsWith("There is a hull “oc2” already", Assert.Throws<RequestException>(
            () => SetUpHull.Change(_workspace, "oc1", crew: null, seatHeight: null, rename: "oc2", newName: true)).Message);
    }

    [Fact]
    public void Two_records_are_asked_about_wherever_they_differ_and_one_is_not_joined_to_itself()
    {
        Paddler ours = SampleLog.Ilse with
        {
            Body = new BodyMeasures { SeatedReach = Length.FromInches(50) },
            KnownLength = Length.FromInches(50),
            Goal = new GoalEvent { HullId = SampleLog.Hull.Id, Distance = Distance.FromMetres(16_000) },
            WorthwhilePercent = 0.3,
            Trials = Habits,
        };
        Paddler theirs = ours with
        {
            Id = Guid.NewGuid(),
            Body = new BodyMeasures { SeatedReach = Length.FromInches(49) },
            KnownLength = Length.FromInches(49.5),
            Goal = new GoalEvent { HullId = SampleLog.Hull.Id, Distance = Distance.FromMetres(10_000) },
            WorthwhilePercent = 0.5,
            Trials = new() { Pieces = 8, Distance = Distance.FromMetres(1000), Minutes = 90, TimedBy = TimedBy.Hand, PricePercent = 0.01 },
        };
        Assert.Equal(
            [
                new("seated reach", "50 in", "49 in"), new("known length", "50 in", "49½ in"),
                new("goal race", "OC1, 16 km", "OC1, 10 km"),
                new("worthwhile change", "0.3%", "0.5%"), new("pieces of a trial", "6", "8"), new("distance of a piece", "800 m", "1 km"),
                new("minutes of a trial", "75", "90"), new("timing", "watch", "hand"), new("price of an outing", "0.02%", "0.01%"),
            ],
            JoinPaddlers.Questions(_workspace, ours, theirs));
        Assert.Equal("Ilse Maro is one paddler already; name two.",
            Assert.Throws<RequestException>(() => JoinPaddlers.Join(_workspace, ours, ours, _ => false)).Message);
    }

    [Fact]
    public void Whose_a_paddle_is_is_asked_only_where_there_are_two_paddlers_and_a_paddle_that_is_nobodys()
    {
        Assert.Empty(PaddleOwners.Questions(_workspace));
        _log.Change("Added", writer => writer.Put(SampleLog.Ilse with { Id = Guid.NewGuid(), Name = "Bram Okello" }));
        Assert.Equal(SampleLog.Paddle, Assert.Single(PaddleOwners.Questions(_workspace)).Paddle);
        _log.Change("Owned", writer => writer.Put(SampleLog.Paddle with { OwnerId = SampleLog.Ilse.Id }));
        Assert.Empty(PaddleOwners.Questions(_workspace));
    }

    public void Dispose()
    {
        _log.Dispose();
        _folder.Dispose();
    }
}
