using Dapper;
using TrialLog.Application.Coaching;
using TrialLog.Application.Next;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Commands;
using TrialLog.Tests.Logbook;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Application.Workspaces;

/// <summary>
/// What others teach is kept in the logbook from one run to the next. Whatever is done to the logbook, it must be what their logs say now,
/// to the last digit.
/// </summary>
public class SquadLessonsTests
{
    private static readonly FixedClock Clock = new(new DateTimeOffset(2026, 6, 1, 12, 0, 0, TimeSpan.Zero));

    [Fact]
    public void What_is_kept_is_what_the_logs_say_now()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.OpenHastily();
        Begin(log, paddlers: 4);
        Paddler asks = log.Paddlers()[0], teaches = log.Paddlers()[1];
        Paddle paddle = log.Paddles()[0];
        Outing first = log.Outings(teaches.Id)[0];
        var check = new TechniqueCheck
        {
            Id = Guid.NewGuid(), PaddlerId = teaches.Id, HullId = first.HullId, PaddleId = paddle.Id, Length = Length.FromInches(50),
            HandAboveEyeInches = 1, Date = first.Date,
        };
        SquadPrior begin = Lesson(log, asks)!;
        Assert.Equal(3, begin.Paddlers);
        Changes(writer => writer.Put(Outing(teaches, paddle, 99, best: 52)));
        Piece slow = first.Pieces[0] with { Time = PieceTime.FromSeconds(340) };
        Changes(writer => writer.Put(first with { Pieces = [slow, .. first.Pieces.Skip(1)] }));
        Changes(writer => writer.RemoveOuting(first.Id));
        Changes(writer => writer.Put(teaches with { Body = new BodyMeasures { SeatedReach = Length.FromInches(49) } }));
        Changes(writer => writer.Put(paddle with { Blade = Length.FromInches(22) }));
        Changes(writer => writer.Put(check));
        Changes(writer => writer.RemovePaddler(teaches.Id));

        void Changes(Action<LogbookWriter> write)
        {
            SquadPrior? before = Lesson(log, asks);
            log.Change("Changed", write);
            SquadPrior? after = Lesson(log, asks);
            Assert.NotEqual(before, after);
            log.Undo();
            Assert.Equal(before, Lesson(log, asks));
            log.Redo();
            Assert.Equal(after, Lesson(log, asks));
        }
    }

    [Fact]
    public void A_card_for_one_reads_what_is_kept_and_not_the_others_logs()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.OpenHastily();
        Begin(log, paddlers: 4);
        Paddler asks = log.Paddlers()[0];
        SquadPrior before = Lesson(log, asks)!;
        log.Connection.Execute("UPDATE lessons SET offset_inches = offset_inches + 1");
        Assert.True(new SquadLessons().For(new Workspace(log, Clock), asks)!.OffsetInches > before.OffsetInches + 0.3);

        // A build that weighs otherwise does not take what another has weighed.
        log.Connection.Execute("UPDATE lessons SET weighed_by = 'another build'");
        Assert.Equal(before, Lesson(log, asks));
    }

    [Fact]
    public void A_card_is_derived_again_with_what_others_teach_only_where_they_may_teach()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.OpenHastily();
        Begin(log, paddlers: 4);
        var workspace = new Workspace(log, Clock) { LearnsFromSquad = false };
        GivenCard card = NextOuting.For(workspace, new Chosen(log.Paddlers()[0], log.Hulls()[0], log.Paddles()[0]), CardWish.None).Card;
        var given = new NumberedAdvice(1, new Advice(card, null, AdviceMatch.NotPaddled), null);
        Assert.Null(AdviceReview.Rederive(workspace, given).Again.LearntFromSquad);
        workspace.LearnsFromSquad = true;
        Assert.Equal(3, AdviceReview.Rederive(workspace, given).Again.LearntFromSquad!.Paddlers);
    }

    [Fact]
    public void Of_very_many_those_with_most_outings_teach()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.OpenHastily();
        Begin(log, SquadLessons.MostTeachers + 4);
        Paddler asks = log.Paddlers()[0];
        Assert.Equal(SquadLessons.MostTeachers, new SquadLessons().For(new Workspace(log, Clock), asks)!.Paddlers);
    }

    // Asked as a run of the program does, twice, and worked out from the records alone.
    private static SquadPrior? Lesson(LogbookFile log, Paddler asks)
    {
        SquadPrior? first = new SquadLessons().For(new Workspace(log, Clock), asks),
            kept = new SquadLessons().For(new Workspace(log, Clock), asks);
        Assert.Equal(SquadLessons.For(asks, log.Everything(), new DateOnly(2026, 6, 1)), first);
        Assert.Equal(first, kept);
        return first;
    }

    private static void Begin(LogbookFile log, int paddlers)
    {
        var paddle = SampleLog.Paddle with { Shortest = Length.FromInches(44), Longest = Length.FromInches(56) };
        log.Change("Began", writer =>
        {
            writer.Put(paddle);
            for (int i = 0; i < paddlers; i++)
            {
                Paddler paddler = new()
                {
                    Id = new Guid(i + 1, 0, 0, new byte[8]), Name = $"Paddler {i:00}",
                    Body = new BodyMeasures { SeatedReach = Length.FromInches(50) },
                };
                writer.Put(paddler);
                for (int j = 0; j < 10; j++)
                    writer.Put(Outing(paddler, paddle, j, best: 49.75 + i % 3 * 0.25));
            }
        });
    }

    // A curve so steep, and times so even, that every log settles.
    private static Outing Outing(Paddler paddler, Paddle paddle, int number, double best) => new()
    {
        Id = new Guid(paddler.Id.ToByteArray()[0], (short)number, 1, new byte[8]),
        PaddlerId = paddler.Id,
        HullId = StandardHulls.All[0].Id,
        Date = new DateOnly(2026, 1, 1).AddDays(number),
        Pieces = [.. Enumerable.Range(1, 4).Select(order =>
        {
            double centre = 49.5 + number % 3 * 0.5, inches = order is 1 or 4 ? centre - 1.5 : centre + 1.5,
                percent = -0.8 * (inches - best) * (inches - best) + 0.1 * Math.Sin(7 * number + 3 * order);
            return new Piece
            {
                Id = new Guid(paddler.Id.ToByteArray()[0], (short)number, (short)(order + 1), new byte[8]),
                Order = order,
                PaddleId = paddle.Id,
                Length = Length.FromInches(inches),
                Distance = Distance.FromMetres(1000),
                Time = PieceTime.FromSeconds(Math.Round(333 / Math.Exp(percent / 100), 1)),
                Effort = Effort.FromPoints(6),
            };
        })],
    };
}
