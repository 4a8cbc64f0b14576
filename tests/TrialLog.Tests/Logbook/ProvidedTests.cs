using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Logbook;

namespace TrialLog.Tests.Logbook;

/// <summary>
/// A change that rests on something is made only where that still stands, and nobody writes between the look and the change.
/// </summary>
public class ProvidedTests
{
    private static readonly Paddle Reed = new()
    {
        Id = new Guid(0x44, 0, 0, new byte[8]), Name = "Reed", Blade = Length.FromInches(18.5),
        Shortest = Length.FromInches(47), Longest = Length.FromInches(53), Step = Length.FromInches(0.25),
    };

    [Fact]
    public void What_is_refused_changes_nothing_and_the_next_change_is_not_checked()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.Open();
        Assert.Throws<NotSupportedException>(() => log.Provided(() => throw new NotSupportedException(), () => Put(log, "Mine")));
        Assert.Empty(log.Paddles());
        Put(log, "Mine");
        Assert.Equal("Mine", Assert.Single(log.Paddles()).Name);
    }

    [Fact]
    public async Task What_another_wrote_before_is_seen_by_the_check_and_what_it_writes_meanwhile_comes_after()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = folder.Open(), theirs = folder.Open();
        Put(theirs, "Theirs before");
        using var begun = new ManualResetEventSlim();
        Task? meanwhile = null;
        string? checkedAs = null, writtenOver = null;
        mine.Provided(
            () =>
            {
                checkedAs = mine.Paddles()[0].Name;
                // It asks for the file from here on, and gets it when this change is done.
                meanwhile = Task.Run(() =>
                {
                    begun.Set();
                    Put(theirs, "Theirs meanwhile");
                });
                begun.Wait();
            },
            () => mine.Change("Mine", writer =>
            {
                writtenOver = mine.Paddles()[0].Name;
                writer.Put(Reed with { Name = "Mine" });
            }));
        await meanwhile!;
        Assert.Equal(("Theirs before", "Theirs before"), (checkedAs, writtenOver));
        Assert.Equal(["Theirs meanwhile", "Mine", "Theirs before"], mine.Changes(3).Select(change => change.What));
    }

    private static void Put(LogbookFile log, string name) => log.Change(name, writer => writer.Put(Reed with { Name = name }));
}
