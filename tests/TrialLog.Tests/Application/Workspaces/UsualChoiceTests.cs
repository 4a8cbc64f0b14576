using TrialLog.Application.Logging;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Logbook;
using TrialLog.Tests.Commands;
using TrialLog.Tests.Logbook;

namespace TrialLog.Tests.Application.Workspaces;

/// <summary>Which paddle and which outing is meant where a person says little.</summary>
public sealed class UsualChoiceTests : IDisposable
{
    private static readonly Paddle Heron = SampleLog.Paddle with { Id = Guid.NewGuid(), Name = "Heron" };

    private readonly ScratchFolder _folder = new();
    private readonly LogbookFile _log;
    private readonly Workspace _workspace;

    public UsualChoiceTests()
    {
        _log = _folder.OpenHastily();
        SampleLog.Begin(_log);
        _log.Change("Added Heron", writer => writer.Put(Heron));
        _workspace = new Workspace(_log, new FixedClock(new DateTimeOffset(2026, 6, 1, 12, 0, 0, TimeSpan.Zero)));
    }

    [Fact]
    public void The_paddle_last_used_in_the_hull_goes_before_one_used_later_in_another()
    {
        Outing solo = SampleLog.Outing(1), six = SampleLog.Outing(2) with { HullId = StandardHulls.All[2].Id };
        six = six with { Pieces = [.. six.Pieces.Select(piece => piece with { PaddleId = Heron.Id })] };
        string Usual(int hull) =>
            UsualChoice.Paddles(_workspace, SampleLog.Ilse, StandardHulls.All[hull], [solo, six]).Single().Name;
        Assert.Equal(["Training paddle", "Heron", "Heron"], [Usual(0), Usual(2), Usual(1)]);
    }

    [Fact]
    public void Who_has_paddled_with_none_of_several_paddles_is_asked_with_which() => Assert.Equal(
        "Ilse Maro has 2 paddles; say which with --paddle NAME (Heron, Training paddle).",
        Assert.Throws<RequestException>(() => _workspace.Choose("Ilse Maro", "OC1", null)).Message);

    [Fact]
    public void Of_several_outings_of_a_day_the_label_says_which()
    {
        Outing morning = SampleLog.Outing(1) with { Label = "morning" }, evening = SampleLog.Outing(2) with
        {
            Date = morning.Date,
            Label = "Evening",
        };
        _log.Change("Logged two", writer =>
        {
            writer.Put(morning);
            writer.Put(evening);
        });
        Assert.Equal(evening.Id, FindOuting.Of(_workspace, SampleLog.Ilse, "2020-01-02: evening").Id);
        Assert.Equal(morning.Id, FindOuting.Of(_workspace, SampleLog.Ilse, "2020-01-02:morning").Id);
        Assert.Contains("2020-01-02 has several outings; say which: ",
            Assert.Throws<RequestException>(() => FindOuting.Of(_workspace, SampleLog.Ilse, "2020-01-02")).Message);
    }

    public void Dispose()
    {
        _log.Dispose();
        _folder.Dispose();
    }
}
