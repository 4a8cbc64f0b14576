using Terminal.Gui.Input;
using TrialLog.Screens.Base;
using TrialLog.Tests.Plots;

namespace TrialLog.Tests.Screens;

/// <summary>One key means one thing on every screen and sheet, but for what is named here with its reason.</summary>
[Collection(nameof(ScreensTests))]
public sealed class KeyLawTests : IDisposable
{
    /// <summary>One action that is called by what it does to what is there.</summary>
    private static readonly Dictionary<string, string[]> OneActionInOtherWords = new()
    {
        // To save what is typed, or as far as it goes.
        ["Ctrl+S"] = ["save", "save change", "next step", "to your first card"],
        // What is left out counts again.
        ["x"] = ["out", "count"],
        // What the screen is of is added.
        ["a"] = ["add paddle", "add piece"],
        // A look at the same in another way, and back.
        ["b"] = ["by outing", "all pieces"],
        ["k"] = ["the season", "the search"],
        // It leaves: a text that is read, and else the program.
        ["q"] = ["quit", "back"],
    };

    /// <summary>
    /// Keys that move and go on, and so do what moving and going on is where they are pressed: they lead into what is pointed at, out of
    /// what is open, and from one thing to the next.
    /// </summary>
    private static readonly string[] KeysThatMove =
        ["Enter", "Esc", "Tab", "↑", "↓", "←", "→", "← →", "PgDn", "PgUp", "1…7", "Alt+1…7", "a…z"];

    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-keys-").FullName;
    private readonly Dictionary<string, Dictionary<string, string>> _meanings = [];
    private readonly HashSet<Type> _seen = [];

    [Fact]
    public void A_key_means_the_same_on_every_screen_and_sheet()
    {
        foreach (string standing in (string[])["testing", "settled", "sore", "cannot-tell"])
            LookAtEveryScreen(standing);
        FirstRun();

        Type[] all = [.. typeof(Sheet).Assembly.GetTypes().Where(type => !type.IsAbstract
            && (type.IsSubclassOf(typeof(Screen)) || type.IsSubclassOf(typeof(Sheet))))];
        Assert.Empty(all.Except(_seen).Select(type => type.Name));
        Assert.All(_meanings.Where(key => !KeysThatMove.Contains(key.Key)), key =>
        {
            string[] others = OneActionInOtherWords.GetValueOrDefault(key.Key) ?? [key.Value.Keys.First()];
            Assert.All(key.Value, meaning => Assert.True(others.Contains(meaning.Key),
                $"{key.Key} is “{meaning.Key}” on {meaning.Value}, and else “{string.Join("”, “", others)}”"));
        });
        Assert.Empty(OneActionInOtherWords.Keys.Except(_meanings.Keys));
        Assert.All(OneActionInOtherWords, named => Assert.Equal(named.Value.Order(), _meanings[named.Key].Keys.Order()));
    }

    private void LookAtEveryScreen(string standing)
    {
        using AtTheTerminal terminal = Terminal(standing);
        foreach (char screen in "1234567")
            Look(terminal.Press(new Key(screen).WithAlt), screen);
        Look(terminal.Type("1").Type("c"));
        Look(terminal.Press(Key.Esc).Press(Key.F1));
        Look(terminal.Press(Key.Esc).Press(Key.F2));
        terminal.Press(Key.Esc);
        if (standing != "testing")
            return;

        Look(terminal.Type("4b"));
        Look(terminal.Type("5k"));
        Look(terminal.Type("6m"));
        Look(terminal.Press(Key.Esc).Type("g"));
        Look(terminal.Press(Key.Esc).Type("3"));
        Look(terminal.Type("/"));
        Look(terminal.Press(Key.Esc).Press(Key.Enter, Key.CursorDown));
        Look(terminal.Type("x").Type("weed").Press(Key.Enter));
        Look(terminal.Type("e"));
        Look(terminal.Press(Key.Esc).Type("i"));
        string one = Path.Combine(_folder, "one.fit"), two = Path.Combine(_folder, "two.fit");
        string samples = Repository.File("sample-sessions/recordings");
        File.Copy(Path.Combine(samples, "ilse-round-trips-laps.fit"), one);
        File.Copy(Path.Combine(samples, "tova-one-way-laps.tcx.gz"), two);
        terminal.Type(Path.Combine(_folder, "*.fit")).Press(Key.Enter);
        _seen.Add(typeof(TrialLog.Screens.Imports.ReadingSheet));
        Look(terminal.WaitFor("outings to look at"));
        Look(terminal.Type("x"));
        Look(terminal.Type("u").Press(Key.Enter));
        Look(terminal.Type("x"));
        Look(terminal.Type("a"));
    }

    private void FirstRun()
    {
        using var terminal = new AtTheTerminal(Path.Combine(_folder, "empty.db"), analyses: SampleLog.Known);
        Look(terminal);
        Look(terminal.Type("Ilse").Press(Key.F9));
        Look(terminal.Press(Key.Enter).Type("50").Press(Key.F9).Press(Key.F9));
    }

    private void Look(AtTheTerminal terminal, char screen = ' ')
    {
        _seen.Add(terminal.Up.GetType());
        if (terminal.Sheet is { } sheet)
            _seen.Add(sheet.GetType());
        string where = $"{terminal.Sheet?.GetType().Name ?? terminal.Up.GetType().Name} {screen}".TrimEnd();
        foreach (KeyHint hint in terminal.Keys.Where(hint => hint.Label.Length > 0))
        {
            string[] labels = hint.Also.Where(also => also.AsRune.Value is >= 'a' and <= 'z' && !also.IsCtrl && !also.IsAlt)
                .Select(also => also.AsRune.ToString()).Prepend(hint.Label).ToArray();
            foreach (string label in labels)
            {
                if (!_meanings.TryGetValue(label, out Dictionary<string, string>? meanings))
                    _meanings[label] = meanings = [];
                meanings.TryAdd(hint.What, where);
            }
        }
    }

    private AtTheTerminal Terminal(string standing)
    {
        string path = Path.Combine(_folder, standing + ".db");
        SampleLog.Write(path);
        // Only what is truly worked out has the log's own pieces on the curve.
        return standing == "testing" ? new AtTheTerminal(path, 200, 60) : new AtTheTerminal(path, 200, 60, analyses: SampleLog.Known with
        {
            Analyse = question => ScreenDrawings.As(standing, SampleLog.Known.Analyse(question)),
        });
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
