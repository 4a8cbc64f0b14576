using Terminal.Gui.Input;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Screens;

/// <summary>Typing the card's outing, and mending the log, as a person at the keyboard or with a mouse would.</summary>
[Collection(nameof(ScreensTests))]
public sealed class OutingTests : IDisposable
{
    private static readonly Guid Ilse = new(1, 0, 0, new byte[8]);

    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-screens-").FullName;

    private string Logbook => Path.Combine(_folder, "logbook.db");

    [Fact]
    public void The_cards_outing_takes_one_key_a_time_and_an_effort_a_piece_soreness_once_and_one_key()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Press(Key.Enter);
        string[] times = ["5:34.2", "5:31.8", "5:33", "5:36.1"];
        foreach (string time in times)
            terminal.Type(time).Press(Key.Enter).Type("6.5").Press(Key.Enter);
        terminal.Type("2").Press(Key.S.WithCtrl).Shows("Saved the outing of 2026-11-25");
        Outing saved = terminal.Workspace.Logbook.Outings(Ilse)[^1];
        Assert.Equal(times, saved.Pieces.Select(piece => piece.Time.ToString()));
        Assert.Equal([49.25, 50.75, 50.75, 49.25], saved.Pieces.Select(piece => piece.Length.Inches));
        Assert.All(saved.Pieces, piece => Assert.Equal((Effort.FromPoints(6.5), Soreness.FromPoints(2)), (piece.Effort, piece.Soreness)));
        Assert.Equal(saved.Id, Assert.Single(terminal.Workspace.Logbook.Cards(Ilse), card => card.PaddledAs is not null).PaddledAs);
        Assert.Null(terminal.Workspace.Logbook.Draft($"outing:{Ilse}"));
    }

    [Fact]
    public void Wrong_input_is_marked_beside_itself_in_words_as_it_is_typed_and_is_not_saved()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Press(Key.Enter).Type("5:3x").Shows("✗ is not a time").Press(Key.S.WithCtrl).Shows("Piece 1: “5:3x” is not a time");
        terminal.Press(Key.Backspace, Key.Backspace, Key.Backspace, Key.Backspace).Type("1:01").Shows("faster than any");
        Assert.Equal(6, terminal.Workspace.Logbook.Outings(Ilse).Count);
    }

    [Fact]
    public void A_time_far_off_the_others_is_asked_about_as_it_is_typed_and_kept()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Press(Key.Enter);
        foreach (string time in new[] { "5:34", "55:30", "5:33", "5:36" })
            terminal.Type(time).Press(Key.Enter, Key.Enter);
        terminal.Shows("? 55:30 /km, 10 times slower").ShowsNot("✗").Press(Key.S.WithCtrl)
            .Shows("Saved. Piece 2, 1 km in 55:30, is 10 times slower than the others; is it right?");
        Assert.Equal("55:30", terminal.Workspace.Logbook.Outings(Ilse)[^1].Pieces[1].Time.ToString());
    }

    [Fact]
    public void What_was_typed_of_an_outing_is_there_after_the_terminal_is_gone_until_it_is_saved()
    {
        SampleLog.Write(Logbook);
        using (AtTheTerminal before = Known())
            before.Press(Key.Enter).Type("5:41").Press(Key.Enter).Type("7");
        using AtTheTerminal after = Known();
        after.Shows("half typed").Press(Key.Enter).Shows("5:41 /km").Shows("as you left it").Press(Key.Z.WithCtrl)
            .Shows("There is nothing to undo here");
    }

    [Fact]
    public void Pieces_are_added_and_dropped_and_a_second_outing_of_a_day_is_kept_apart()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        for (int outing = 0; outing < 2; outing++)
        {
            terminal.Press(Key.Enter, Key.D.WithCtrl, Key.D.WithCtrl, Key.N.WithCtrl);
            terminal.Press(Key.CursorUp).Type("5:30").Press(Key.Enter, Key.Enter).Type("5:31").Press(Key.Enter, Key.Enter).Type("5:32")
                .Press(Key.F9);
        }

        Outing[] today = [.. terminal.Workspace.Logbook.Outings(Ilse).Where(outing => outing.Date == new DateOnly(2026, 11, 25))];
        terminal.Shows("Saved. All pieces are the same as those of 2026-11-25; is it logged twice?");
        Assert.Equal(["", "2"], today.Select(outing => outing.Label));
        Assert.All(today, outing => Assert.Equal(3, outing.Pieces.Count));
    }

    [Fact]
    public void A_logged_outing_is_changed_in_the_same_form_and_keeps_what_the_form_does_not_show()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        Outing before = terminal.Workspace.Logbook.Outings(Ilse)[^1];
        terminal.Type("3").Type("e").Shows("changing 2026-11-22").Press(Key.Tab.WithShift).Press(Key.Tab.WithShift);
        terminal.Press(Key.S.WithCtrl).Shows("Saved the outing");
        Outing after = terminal.Workspace.Logbook.Outings(Ilse)[^1];
        Assert.Equal(before with { Pieces = [] }, after with { Pieces = [] });
        Assert.Equal(before.Pieces, after.Pieces);
    }

    [Fact]
    public void A_piece_is_left_out_for_a_reason_counts_again_is_deleted_and_every_step_is_taken_back()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Type("3").Press(Key.Enter, Key.CursorDown).Type("x").Shows("Why does piece 1 of 2026-11-22 not count?").Press(Key.Enter)
            .Shows("Say why");
        terminal.Type("weed on the rudder").Press(Key.Enter).Shows("✗ out: weed on the rudder").Shows("4, 1 out");
        terminal.Type("x").ShowsNot("✗ out:").Type("d").Shows("Deleted piece 1");
        Assert.Equal(3, terminal.Workspace.Logbook.Outings(Ilse)[^1].Pieces.Count);
        terminal.Type("u").Shows("Undone: Deleted piece 1").Type("u").Shows("✗ out: weed on the rudder").Type("u").ShowsNot("✗ out:");
        terminal.Press(Key.Home).Type("d").Shows("Deleted the outing of 2026-11-22").Shows("5 outings").Type("u").Shows("6 outings")
            .Press(Key.Y.WithCtrl).Shows("5 outings");
    }

    [Fact]
    public void While_it_hurts_rest_comes_first_the_card_is_behind_a_key_and_a_word_that_it_is_gone_ends_it()
    {
        SampleLog.Write(Logbook);
        // As the tuning does: sore as long as the log says so and nobody has said that it is gone.
        using AtTheTerminal terminal = new(Logbook, analyses: SampleLog.Known with
        {
            Analyse = question => StandingSoreness.Of(question.Outings, question.SorenessClearances, question.Today) is { } soreness
                ? SampleLog.Sore(SampleLog.Known.Analyse(question), soreness)
                : SampleLog.Known.Analyse(question),
        });
        terminal.Shows("Next outing").Press(Key.Enter).Type("5:34").Press(Key.Enter, Key.Enter);
        foreach (string time in new[] { "5:35", "5:33", "5:36" })
            terminal.Type(time).Press(Key.Enter, Key.Enter);
        terminal.Type("5").Press(Key.S.WithCtrl).Shows("Rest first: you logged soreness of 5").ShowsNot("4 pieces of").ShowsNot("┠");
        // Nor does any other screen tell of lengths.
        terminal.Type("4").Shows("Rest first").ShowsNot("likely").ShowsNot("best");
        terminal.Type("5").Shows("Rest first").ShowsNot("gain left").ShowsNot("best");
        terminal.Type("6").Shows("Rest first").ShowsNot("likely").ShowsNot("pieces");
        terminal.Type("1").Type("c").Shows("When it no longer hurts").Press(Key.Esc).Type("z").Shows("Who says that the soreness is gone?")
            .Type("Dr Vale").Press(Key.Enter);
        terminal.Shows("Next outing").ShowsNot("Rest first");
        terminal.Type("3").Type("u").Type("1").Shows("Rest first");
    }

    [Fact]
    public void A_paddle_much_like_a_known_one_is_added_only_when_saved_again()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Type("6").Type("a").Type("Reeed 44").Press(Key.Enter).Type("18.5").Press(Key.Enter).Type("48").Press(Key.Enter).Type("52");
        terminal.Press(Key.S.WithCtrl).Shows("Did you mean the paddle “Reed 44”?");
        Assert.Single(terminal.Workspace.Logbook.Paddles());
        terminal.Press(Key.S.WithCtrl).Shows("Added the paddle Reeed 44");
    }

    [Fact]
    public void The_logbook_is_filtered_and_sorted()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Type("3").Type("f").Press(Key.CursorRight, Key.CursorRight, Key.CursorRight, Key.F9).Shows("1 of 6 outings: in OC6")
            .Shows("2026-11-19");
        terminal.Type("f").Press(Key.CursorLeft, Key.CursorLeft, Key.CursorLeft, Key.CursorDown, Key.CursorDown).Type("2026-11-1x")
            .Shows("✗ “2026-11-1x” is not a date")
            .Press(Key.Backspace).Type("5").Press(Key.S.WithCtrl).Shows("3 of 6 outings: from 2026-11-15").ShowsNot("2026-11-13");
        terminal.Type("s").Shows("oldest first").Type("s").Shows("longest paddle first").Type("s").Shows("fastest piece first");
    }

    [Fact]
    public void Everything_is_within_reach_of_the_mouse()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Click("3 Logbook").Shows("6 outings").Click("2026-11-13").Shows("line 4 of 6").Click("d delete")
            .Shows("Deleted the outing of 2026-11-13")
            .Click("u undo").Shows("6 outings").Click("4 Curve").Shows("chance of each setting").Click("F1 help").Shows("The small squares")
                .Click("Esc back")
            .Click("h hull").Shows("In which hull?").Click("OC6").Shows("Ilse Maro · OC6").Click("2 Enter").Shows("soreness");
    }

    [Fact]
    public void A_terminal_of_any_size_is_drawn_to_its_edges_and_no_further()
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        foreach (char number in "1234567")
        {
            terminal.Press(new Key(number).WithAlt);
            foreach ((int columns, int rows) in new[] { (200, 60), (80, 24), (40, 10), (20, 5), (111, 33), (80, 24) })
            {
                terminal.Resize(columns, rows);
                Assert.True(terminal.Lines.Count(line => line.Length > 0) > 1 || rows < 6, terminal.Shown);
                Assert.All(terminal.Lines, line => Assert.True(line.Length <= columns, line));
            }

            terminal.Shows("7 Squad").Shows("quit");
        }
    }

    [Fact]
    public void Ten_thousand_outings_scroll_with_no_more_work_than_sixty()
    {
        // Memory asked for tells of work without a clock: a page that made a line of each outing would ask for much more.
        double sixty = PageDown(60), many = PageDown(10_000);
        Assert.True(many < 1.1 * sixty, $"A page down asks for {many:N0} bytes with 10,000 outings and for {sixty:N0} with 60.");

        double PageDown(int outings)
        {
            string path = Path.Combine(_folder, $"{outings}.db");
            SampleLog.Write(path, outings);
            using var terminal = new AtTheTerminal(path, analyses: SampleLog.Known);
            terminal.Type("3").Shows($"{outings} outings").Press(Key.PageDown, Key.Home);
            const int pages = 20;
            long before = GC.GetAllocatedBytesForCurrentThread();
            for (int page = 0; page < pages; page++)
                terminal.Press(page % 2 == 0 ? Key.PageDown : Key.PageUp);
            long asked = GC.GetAllocatedBytesForCurrentThread() - before;
            terminal.Press(Key.End).Shows($"line {outings} of {outings}");
            return asked / (double)pages;
        }
    }

    private AtTheTerminal Known() => new(Logbook, analyses: SampleLog.Known);

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
