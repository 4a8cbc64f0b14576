using Terminal.Gui.Drawing;
using Terminal.Gui.Input;
using TrialLog.Application.Wording;
using TrialLog.Screens.Paint;

namespace TrialLog.Tests.Screens;

/// <summary>What is typed on a sheet is not lost by a slip, and what must be heeded is never cut.</summary>
[Collection(nameof(ScreensTests))]
public sealed class SheetTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-sheets-").FullName;

    [Fact]
    public void Help_over_a_form_gives_it_back_with_what_was_typed_and_the_cursor_where_it_was()
    {
        using AtTheTerminal terminal = Terminal();
        terminal.Type("6a").Type("Heron").Press(Key.CursorDown).Type("18").Press(Key.F1).ShowsNot("Heron").Press(Key.Esc)
            .Shows("Heron").Type(".5").Shows("18.5");
        Assert.Contains("▸ Blade", terminal.Shown);
    }

    [Fact]
    public void Help_over_an_outing_that_is_typed_leaves_the_cursor_where_it_was()
    {
        using AtTheTerminal terminal = Terminal();
        terminal.Press(Key.Enter).Type("5:3").Press(Key.F1).Press(Key.Esc).Type("2").Shows("5:32 ").Press(Key.CursorLeft)
            .Press(Key.F2).Press(Key.Esc).Type("1").Shows("5:312");
    }

    [Fact]
    public void Help_in_the_first_run_leaves_the_cursor_where_it_was_at_any_size_and_a_refusal_is_said_whole()
    {
        using var terminal = new AtTheTerminal(Path.Combine(_folder, "empty.db"), analyses: SampleLog.Known);
        terminal.Type("Ilse").Press(Key.F9).Press(Key.Enter).Type("50").Press(Key.F9).Press(Key.F9)
            .Press(Key.CursorDown, Key.CursorDown, Key.CursorDown, Key.CursorDown).Type("4").Press(Key.F1).Resize(40, 10).Press(Key.Esc)
            .Resize(120, 40).Resize(80, 12).Type("0").Press(Key.F9);
        Assert.Contains("The longest length is below the shortest; give the longer one here.",
            string.Join(' ', terminal.Lines.Select(line => line.Trim())));
        terminal.Press(Key.Backspace, Key.Backspace).Type("54").Press(Key.F9).Shows("paddle the next card");
        Assert.Equal("My paddle", Assert.Single(terminal.Workspace.Logbook.Paddles()).Name);
    }

    [Fact]
    public void A_form_with_something_typed_is_left_by_the_same_key_twice_only()
    {
        using AtTheTerminal terminal = Terminal();
        foreach (Key leaves in (Key[])[Key.Esc, new Key('1').WithAlt])
        {
            terminal.Press(new Key('6').WithAlt).Type("a").Type("Heron").Press(leaves).Shows("What you typed here is not saved.")
                .Press(Key.CursorDown).ShowsNot("is not saved").Press(leaves).Shows("is not saved").Shows("Heron");
            terminal.Press(leaves).ShowsNot("Heron").ShowsNot("Another paddle");
        }

        terminal.Type("6a").Press(Key.Esc).ShowsNot("Another paddle");
    }

    [Fact]
    public void A_card_is_not_written_over_a_file_unasked()
    {
        string file = Path.Combine(_folder, "card.html");
        File.WriteAllText(file, "mine");
        using AtTheTerminal terminal = Terminal();
        terminal.Type("c").Type("paper").Press(Key.Enter).Press(Key.End).Press([.. Enumerable.Repeat(Key.Backspace, 20)]).Type(file)
            .Press(Key.Enter).Shows("is there already. Write over it?").Press(Key.Enter).Shows("Into which file?");
        Assert.Equal("mine", File.ReadAllText(file));
        terminal.Press(Key.Enter, Key.CursorDown, Key.Enter).Shows("The card is in");
        Assert.NotEqual("mine", File.ReadAllText(file));
    }

    [Theory]
    [InlineData(80, 12)]
    [InlineData(80, 24)]
    [InlineData(120, 12)]
    public void The_caution_of_the_first_run_is_whole(int columns, int rows)
    {
        using var terminal = new AtTheTerminal(Path.Combine(_folder, "empty.db"), columns, rows, analyses: SampleLog.Known);
        terminal.Type("Ilse").Press(Key.F9).Press(Key.Enter).Type("50").Press(Key.F9).Press(Key.F9).Shows("Shortest length");
        Assert.Contains($"{Cautions.Water} {Cautions.Pain}", string.Join(' ', terminal.Lines.Select(line => line.Trim())));
        // Every field can be come to, and is in sight then.
        foreach (string field in (string[])["▸ Name", "▸ Blade", "▸ Shaft", "▸ Shortest", "▸ Longest"])
            terminal.Shows(field).Press(Key.CursorDown);
    }

    [Fact]
    public void An_empty_logbook_says_what_to_do()
    {
        using var terminal = new AtTheTerminal(Path.Combine(_folder, "empty.db"), analyses: SampleLog.Known);
        terminal.Type("Ilse").Press(Key.F9).Press(Key.Enter).Type("50").Press(Key.F9, Key.F9, Key.F9).Type("3")
            .Shows("No outing yet. n types the first one.");
    }

    [Fact]
    public void On_a_light_background_no_pale_colour_is_used_and_without_colour_none()
    {
        Palette light = Palette.Of(_ => null), none = Palette.Of(name => name == "NO_COLOR" ? "1" : null);
        (light.OnLight, none.OnLight) = (true, true);
        Assert.All(Enum.GetValues<Tone>(), tone =>
        {
            Color colour = light[tone].Foreground;
            Assert.True(colour == Color.None
                || colour.GetClosestNamedColor16() is ColorName16.Blue or ColorName16.Magenta or ColorName16.Red, $"{tone} is {colour}");
            Assert.Equal(Color.None, none[tone].Foreground);
        });
    }

    private AtTheTerminal Terminal()
    {
        string path = Path.Combine(_folder, "logbook.db");
        SampleLog.Write(path);
        return new AtTheTerminal(path, analyses: SampleLog.Known);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
