using Terminal.Gui.Input;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Plots;

namespace TrialLog.Tests.Screens;

/// <summary>Every screen as it was looked at and found good, at the smallest size and at a roomy one.</summary>
[Collection(nameof(ScreensTests))]
public sealed class ScreenDrawings : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-screens-").FullName;

    [Theory]
    [InlineData(1, "next", 80, 24)]
    [InlineData(1, "next", 140, 45)]
    [InlineData(2, "enter", 80, 24)]
    [InlineData(2, "enter", 140, 45)]
    [InlineData(3, "logbook", 80, 24)]
    [InlineData(3, "logbook", 140, 45)]
    [InlineData(4, "curve", 80, 24)]
    [InlineData(4, "curve", 140, 45)]
    [InlineData(5, "progress", 80, 24)]
    [InlineData(5, "progress", 140, 45)]
    [InlineData(6, "body", 80, 24)]
    [InlineData(6, "body", 140, 45)]
    [InlineData(7, "squad", 80, 24)]
    [InlineData(7, "squad", 140, 45)]
    public void A_screen_looks_as_it_did(int number, string name, int columns, int rows) => Compare(number, name, columns, rows, "LANG=C.UTF-8");

    [Theory]
    [InlineData(1, "next-ascii")]
    [InlineData(3, "logbook-ascii")]
    [InlineData(4, "curve-ascii")]
    [InlineData(7, "squad-ascii")]
    public void Where_the_terminal_has_only_ASCII_a_screen_uses_nothing_else(int number, string name)
    {
        string shown = Compare(number, name, 80, 24, "LANG=C");
        Assert.All(shown, glyph => Assert.True(glyph is '\n' or (>= ' ' and <= '~'), $"“{glyph}” is not ASCII"));
    }

    [Fact]
    public void The_explanation_looks_as_it_did()
    {
        using AtTheTerminal terminal = Terminal(80, 24, "LANG=C.UTF-8");
        terminal.Press(Key.F1);
        StoredDrawing.Matches("Screens", "explanation-80x24", terminal.Shown);
    }

    private string Compare(int number, string name, int columns, int rows, string environment)
    {
        using AtTheTerminal terminal = Terminal(columns, rows, environment);
        terminal.Type(number.ToString());
        StoredDrawing.Matches("Screens", $"{name}-{columns}x{rows}", terminal.Shown);
        return terminal.Shown;
    }

    private AtTheTerminal Terminal(int columns, int rows, string environment)
    {
        string path = Path.Combine(_folder, "logbook.db");
        SampleLog.Write(path);
        return new AtTheTerminal(path, columns, rows, environment, SampleLog.Known);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
