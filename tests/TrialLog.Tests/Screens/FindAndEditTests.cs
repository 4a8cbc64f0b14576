using Terminal.Gui.Input;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Screens;

/// <summary>Finding what is on the screen, doing by name, and mending where it is shown.</summary>
[Collection(nameof(ScreensTests))]
public sealed class FindAndEditTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-find-").FullName;

    [Fact]
    public void Every_field_of_a_long_form_comes_into_sight_on_twelve_rows()
    {
        string log = Path.Combine(_folder, "long-form.db");
        SampleLog.Write(log);
        using var terminal = new AtTheTerminal(log, 80, 12, analyses: SampleLog.Known);
        terminal.Type("6").Type("m").Shows("▸ Seated reach");
        foreach (string field in new[] { "Overhead reach", "Arm span", "Standing height", "Sitting eye height", "Shoulder breadth",
            "A paddle that suits", "Worthwhile change", "Lengths change on water", "Seated reach" })
            terminal.Press(Key.Tab).Shows("▸ " + field);
        terminal.Press(Key.CursorDown).Type("x").Shows("✗ “x” is not a length").Shows("have the shoulder seen to.");
    }

    /// <summary>Help in a form tells of the form, not of the screen below it.</summary>
    [Fact]
    public void Help_in_a_form_and_at_a_question_tells_of_them()
    {
        using AtTheTerminal terminal = Known();
        terminal.Type("6").Type("m").Press(Key.F1).Shows("What you can type").Press(Key.Esc).Shows("▸ Seated reach").Press(Key.Esc);
        terminal.Type("3").Type("i").Press(Key.F1).Shows("The path of a recording").ShowsNot("Leaving a piece out").Press(Key.Esc)
            .Shows("Import which file?");
    }

    [Fact]
    public void The_lengths_of_the_card_stand_on_twelve_rows_and_nothing_peeps_through_the_cautions()
    {
        string log = Path.Combine(_folder, "low.db");
        SampleLog.Write(log);
        using var terminal = new AtTheTerminal(log, 80, 12, analyses: SampleLog.Known);
        terminal.Shows("Next outing: 49¼ in · 50¾ in · 50¾ in · 49¼ in").Shows("\n leash, cold water and traffic.").Shows("\n coach.\n");
    }

    [Fact]
    public void A_text_is_found_on_the_screen_and_again_further_down()
    {
        using AtTheTerminal terminal = Known();
        terminal.Type("3").Type("/").Type("chop").Shows("line 2 of 6").Press(Key.Enter).Shows("line 5 of 6").Press(Key.Enter)
            .Shows("line 2 of 6");
        terminal.Type("q").Shows("not on this screen").Press(Key.Esc).ShowsNot("find /").Press(Key.CursorDown).Shows("line 3 of 6");
        terminal.Type("7").Type("/").Type("tova").Shows("▸ Tova Lind").Press(Key.Esc).Type("6").Type("/").Type("Exposed").Press(Key.Esc)
            .Shows("Exposed-shaft");
        terminal.Type("?").Type("/").Type("technique check").Press(Key.Esc).Press(Key.Esc).Shows("Seat-height rule");
    }

    [Fact]
    public void Every_action_is_listed_by_name_with_its_key_and_letters_narrow_the_list()
    {
        using AtTheTerminal terminal = Known();
        terminal.Press(Key.F2).Shows("What do you want to do?").Shows("type the outing").Shows("go to Squad");
        terminal.Type("squ").ShowsNot("type the outing").Press(Key.Enter).Shows("this week");
        // Whoever is used to searching with a slash finds the same.
        terminal.Press(Key.F2).Type("/prog").ShowsNot("go to Curve").Press(Key.Enter).Shows("price of an outing");
        terminal.Press(new Key('2').WithAlt).Press(Key.F2).Shows("clear all").Press(Key.Esc).Shows("soreness");
    }

    [Fact]
    public void Paddler_hull_and_paddle_are_mended_where_they_are_shown()
    {
        using AtTheTerminal terminal = Known();
        terminal.Type("6").Type("e").Shows("Change what?").Press(Key.Enter).Press(Key.End).Type(" Roa")
            .Press(Key.CursorDown, Key.CursorDown).Type("OC1, 12km").Press(Key.S.WithCtrl);
        terminal.Shows("Ilse Maro Roa");
        Paddler paddler = terminal.Workspace.Logbook.Paddlers().Single(known => known.Name == "Ilse Maro Roa");
        Assert.Equal(Distance.FromMetres(12_000), paddler.Goal!.Distance);
        terminal.Type("e").Type("reed").Press(Key.Enter).Press(Key.CursorDown, Key.CursorDown, Key.CursorDown, Key.End).Press(Key.Backspace)
            .Type("4").Press(Key.CursorDown, Key.CursorRight).Press(Key.S.WithCtrl);
        Assert.Equal((Length.FromInches(54), true),
            (terminal.Workspace.Logbook.Paddles()[0].Longest, terminal.Workspace.Logbook.Paddles()[0].BelongsToClub));
        terminal.Type("e").Type("hull").Press(Key.Enter).Press(Key.CursorDown, Key.CursorDown).Type("8.5").Press(Key.S.WithCtrl);
        Assert.Equal(Length.FromInches(8.5), terminal.Workspace.Logbook.Hulls().Single(hull => hull.Name == "OC1").SeatHeight);
    }

    [Fact]
    public void A_paddle_added_on_the_screen_is_its_paddlers_and_nobody_else_is_shown_lengths_for_it()
    {
        using AtTheTerminal terminal = Known();
        terminal.Type("6").Type("a");
        foreach (string field in new[] { "Short blade", "17.5", "46", "52" })
            terminal.Type(field).Press(Key.Enter);
        terminal.Press(Key.S.WithCtrl);
        terminal.Shows("Short blade  blade 17½ in").Shows("Reed 44  blade");
        Assert.Equal("Ilse Maro", terminal.Workspace.Logbook.Paddlers().Single(
            paddler => paddler.Id == terminal.Workspace.Logbook.Paddles().Single(paddle => paddle.Name == "Short blade").OwnerId).Name);
        terminal.Shows("Added the paddle Short blade").Click("4 Curve").Click("6 Body").ShowsNot("Added the paddle");
        terminal.Type("l").Type("bram").Press(Key.Enter).Shows("Bram Okello").Shows("Reed 44  blade")
            .ShowsNot("Short blade  blade 17½ in");
    }

    private AtTheTerminal Known()
    {
        string path = Path.Combine(_folder, "logbook.db");
        SampleLog.Write(path);
        return new AtTheTerminal(path, analyses: SampleLog.Known);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
