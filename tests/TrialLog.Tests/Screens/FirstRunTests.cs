using Terminal.Gui.Input;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Screens;

[Collection(nameof(ScreensTests))]
public sealed class FirstRunTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-screens-").FullName;

    private string Logbook => Path.Combine(_folder, "logbook.db");

    [Fact]
    public void An_empty_logbook_leads_through_paddler_start_length_hull_and_paddle_to_the_first_card()
    {
        using var terminal = new AtTheTerminal(Logbook);
        terminal.Shows("Who is paddling?").Type("Ilse Maro").Press(Key.F9)
            .Shows("From which length shall the search start, Ilse Maro?").Press(Key.Enter).Type("50.5").Shows("Start at 50½ in.")
                .Press(Key.F9)
            .Shows("What do you paddle?").Press(Key.F9)
            .Shows("Which paddle do you have?").Press(Key.F9)
            .Shows("1 Home").Shows("In OC1, start at 50½ in.").Shows("6 pieces of 1 km").Shows("Ilse Maro · OC1 · My paddle");
        Paddler paddler = Assert.Single(terminal.Workspace.Logbook.Paddlers());
        Assert.Equal(Length.FromInches(50.5), paddler.Body.SeatedReach);
        Paddle paddle = Assert.Single(terminal.Workspace.Logbook.Paddles());
        Assert.Equal((Length.FromInches(48), Length.FromInches(54)), (paddle.Shortest, paddle.Longest));
    }

    [Fact]
    public void One_undo_takes_the_whole_first_run_back()
    {
        using var terminal = new AtTheTerminal(Logbook);
        terminal.Type("Ilse Maro").Press(Key.F9, Key.Enter).Type("50.5").Press(Key.F9, Key.F9, Key.F9).Shows("1 Home");
        Assert.Single(terminal.Workspace.Logbook.Changes(10));
        Assert.NotNull(terminal.Workspace.Logbook.Undo());
        Assert.Empty(terminal.Workspace.Logbook.Paddlers());
        Assert.Empty(terminal.Workspace.Logbook.Paddles());
    }

    [Fact]
    public void What_was_typed_on_the_first_run_is_there_after_a_crash()
    {
        using (var before = new AtTheTerminal(Logbook))
            before.Type("Tova Lind").Press(Key.Enter, Key.CursorRight, Key.F9, Key.Enter).Type("128");
        using var after = new AtTheTerminal(Logbook);
        after.Shows("Tova Lind?").Shows("128").Shows("Start at 128 cm");
    }

    [Fact]
    public void Wrong_and_missing_answers_are_marked_in_place_in_words()
    {
        using var terminal = new AtTheTerminal(Logbook);
        terminal.ShowsNot("✗").Press(Key.F9).Shows("✗ Type your name")
            .Type("Jory Pell").ShowsNot("✗").Press(Key.F9, Key.Enter).Type("5x").Shows("✗ “5x” is not a length")
            .Press(Key.Backspace).Type("0").ShowsNot("✗");
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
