using Microsoft.Data.Sqlite;
using SQLitePCL;
using Terminal.Gui.Input;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Screens.Shell;

namespace TrialLog.Tests.Screens;

/// <summary>
/// Painting and moving about read what was loaded; the logbook is asked once a change, on a thread of its own, so that neither
/// a disk nor another program makes a key wait, and what others write is seen.
/// </summary>
[Collection(nameof(ScreensTests))]
public sealed class LogbookCallsTests : IDisposable
{
    private static readonly Guid Ilse = new(1, 0, 0, new byte[8]);

    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-calls-").FullName;

    private string Logbook => Path.Combine(_folder, "logbook.db");

    [Theory]
    [InlineData('1')]
    [InlineData('2')]
    [InlineData('3')]
    [InlineData('4')]
    [InlineData('5')]
    [InlineData('6')]
    [InlineData('7')]
    public void Painting_and_arrow_keys_ask_the_logbook_nothing(char screen)
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Press(new Key(screen).WithAlt);
        using var calls = new Calls(terminal.Workspace.Logbook);
        terminal.Resize(100, 30).Resize(81, 25);
        terminal.Press(Key.CursorDown, Key.CursorUp, Key.CursorRight, Key.CursorLeft, Key.PageDown, Key.PageUp);
        Assert.Empty(calls.Seen);
    }

    [Fact]
    public void Another_screen_that_was_looked_at_before_asks_the_logbook_nothing()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        for (char screen = '1'; screen <= '7'; screen++)
            terminal.Press(new Key(screen).WithAlt);
        using var calls = new Calls(terminal.Workspace.Logbook);
        for (char screen = '1'; screen <= '7'; screen++)
            terminal.Press(new Key(screen).WithAlt);
        Assert.Empty(calls.Seen);
    }

    [Fact]
    public void A_card_is_noted_as_given_once_when_it_is_shown()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        Assert.Single(terminal.Workspace.Logbook.Cards(Ilse));
        terminal.Resize(120, 40).Type("3").Type("1").Resize(80, 24);
        Assert.Single(terminal.Workspace.Logbook.Cards(Ilse));
    }

    [Fact]
    public void What_another_program_logs_is_seen_within_two_seconds()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Type("3").Shows("6 outings");
        using (LogbookFile other = LogbookFile.Open(Logbook))
        {
            Outing last = other.Outings(Ilse)[^1];
            other.Change("Deleted the last outing", log => log.RemoveOuting(last.Id));
        }

        terminal.Wait(TimeSpan.FromSeconds(2)).Shows("5 outings");
    }

    [Fact]
    public void While_another_program_writes_keys_are_answered_and_the_change_is_made_afterwards()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known(waits: false);
        terminal.WaitFor("likely").Type("3").Shows("6 outings");
        using (var other = new SqliteConnection($"Data Source={Logbook};Pooling=False"))
        {
            other.Open();
            using SqliteTransaction writing = other.BeginTransaction(deferred: false);
            using var calls = new Calls(terminal.Workspace.Logbook);
            terminal.Type("d").Press(Key.CursorDown).Type("1").Type("3").Press(Key.CursorDown);
            terminal.Shows("The logbook is busy").Shows("6 outings");
            // Whoever asks the logbook now waits until the other has written; that is never the thread of the keys.
            Assert.Empty(calls.SeenOn(Environment.CurrentManagedThreadId));
            writing.Rollback();
        }

        terminal.WaitFor("5 outings").Shows("Deleted the outing");
    }

    [Fact]
    public void A_change_over_a_change_made_elsewhere_is_asked()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Type("3").Type("e").Press(Key.Tab, Key.Tab, Key.Tab).Type("chop");
        Outing theirs = Meanwhile(outing => outing with { Notes = "theirs" });
        terminal.Press(Key.S.WithCtrl).Shows("was changed elsewhere while you typed").Press(Key.Enter);
        Assert.Equal(theirs.Notes, Now(theirs).Notes);
        terminal.Press(Key.S.WithCtrl).Press(Key.CursorDown, Key.CursorDown, Key.Enter).Shows("Saved the outing");
        Assert.NotEqual("theirs", Now(theirs).Notes);
    }

    [Fact]
    public void A_form_in_which_nothing_was_typed_begins_from_the_outing_as_it_is_now()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Type("3").Type("e").Press(Key.Esc);
        Outing theirs = Meanwhile(outing => outing with { Notes = "theirs" });
        terminal.Wait(ShellWindow.LookAgainAfter * 2).Type("e").Shows("theirs").Press(Key.Tab, Key.Tab, Key.Tab).Type("chop")
            .Press(Key.S.WithCtrl).Shows("Saved the outing");
        Assert.Equal(theirs.Notes, Now(theirs).Notes);
    }

    [Fact]
    public void A_form_of_paddler_hull_or_paddle_is_not_put_over_a_change_made_elsewhere_unasked()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Type("6").Type("e").Type("reed").Press(Key.Enter).Shows("The paddle Reed 44");
        using (LogbookFile other = LogbookFile.Open(Logbook))
            other.Change("Measured it again", log => log.Put(SampleLog.Reed with { Blade = Length.FromInches(17.75) }));
        terminal.Press(Key.S.WithCtrl).Shows("was changed elsewhere while you typed");
        Assert.Equal(Length.FromInches(17.75), terminal.Workspace.Logbook.Paddles().Single().Blade);
        terminal.Press(Key.S.WithCtrl).Shows("Saved.");
        Assert.Equal(Length.FromInches(18.5), terminal.Workspace.Logbook.Paddles().Single().Blade);
    }

    [Fact]
    public void What_is_shown_is_not_put_over_a_change_made_elsewhere()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Type("3").Press(Key.Enter, Key.CursorDown).Type("x").Type("weed");
        Outing theirs = Meanwhile(
            outing => outing with { Pieces = [.. outing.Pieces.Select(piece => piece with { Time = PieceTime.FromSeconds(400) })] });
        terminal.Press(Key.Enter).Shows("was changed elsewhere just now");
        Assert.Equal(theirs.Pieces, Now(theirs).Pieces);
    }

    [Fact]
    public void Two_screens_never_share_one_draft()
    {
        SampleLog.Write(Logbook);
        using (AtTheTerminal one = Known(), other = Known())
        {
            one.Press(Key.Enter).Type("5:30");
            other.Press(Key.Enter).Type("5:40");
            one.Type("1").Press(Key.Enter).Type("6");
            other.Press(Key.Enter).Type("7").Press(Key.S.WithCtrl);
        }

        using LogbookFile logbook = LogbookFile.Open(Logbook);
        List<string> kept = [.. new[] { $"outing:{Ilse}", $"outing:{Ilse}:2" }.Select(logbook.Draft).OfType<string>()];
        Assert.Contains(kept, text => text.Contains("5:301", StringComparison.Ordinal));
        Assert.Contains(kept, text => text.Contains("5:40", StringComparison.Ordinal));
    }

    private AtTheTerminal Known(bool waits = true) => new(Logbook, analyses: SampleLog.Known, waits: waits);

    private Outing Meanwhile(Func<Outing, Outing> change)
    {
        using LogbookFile other = LogbookFile.Open(Logbook);
        Outing changed = change(other.Outings(Ilse)[^1]);
        other.Change("Changed it elsewhere", log => log.Put(changed));
        return changed;
    }

    private Outing Now(Outing outing)
    {
        using LogbookFile logbook = LogbookFile.Open(Logbook);
        return logbook.Outings(Ilse).Single(known => known.Id == outing.Id);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>Every statement that reaches the database, from whichever thread.</summary>
    private sealed class Calls : IDisposable
    {
        private readonly sqlite3 _handle;

        public Calls(LogbookFile logbook)
        {
            _handle = logbook.Connection.Handle!;
            raw.sqlite3_trace(_handle, (_, statement) =>
            {
                lock (_seen)
                    _seen.Add((Environment.CurrentManagedThreadId, statement));
            }, null);
        }

        private readonly List<(int Thread, string Statement)> _seen = [];

        public IReadOnlyList<string> Seen
        {
            get
            {
                lock (_seen)
                    return [.. _seen.Select(call => call.Statement)];
            }
        }

        public IReadOnlyList<string> SeenOn(int thread)
        {
            lock (_seen)
                return [.. _seen.Where(call => call.Thread == thread).Select(call => call.Statement)];
        }

        public void Dispose() => raw.sqlite3_trace(_handle, (strdelegate_trace?)null, null);
    }
}
