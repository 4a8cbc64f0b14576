using System.Globalization;
using System.Security;
using System.Text;
using Terminal.Gui.App;
using Terminal.Gui.Drawing;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using TrialLog.Application.Files;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Pictures;
using TrialLog.Screens;
using TrialLog.Screens.Base;
using TrialLog.Screens.Entry;
using TrialLog.Screens.Shell;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace TrialLog.TestData.Screens;

/// <summary>Pictures of the screens as SVG, from the very cells of a terminal in memory.</summary>
internal static class ScreenPictures
{
    private const double CellWidth = 8.4, CellHeight = 17;

    private static readonly (string Name, Key[] Keys)[] Screens =
    [
        ("home", [new Key('1').WithAlt]), ("enter", [new Key('2').WithAlt]), ("logbook", [new Key('3').WithAlt]),
            ("curve", [new Key('4').WithAlt]),
        ("progress", [new Key('5').WithAlt]), ("body", [new Key('6').WithAlt]), ("squad", [new Key('7').WithAlt]),
        ("typing", [new Key('2').WithAlt, .. Typed("5:41"), Key.Enter, .. Typed("6"), Key.Enter, .. Typed("538")]),
        ("recording",
            [new Key('3').WithAlt, new Key('i'), .. Typed(Repository.File("sample-sessions/recordings/ilse-round-trips-laps.fit")),
            Key.Enter]),
    ];

    // What the documents show: which screens of which sample, and in which files.
    private static readonly (string Sample, (string Screen, string File)[] Pictures)[] OfTheDocuments =
    [
        ("settles.csv", [("home", "home"), ("curve", "curve"), ("progress", "progress"),
            ("recording", "recording")]),
        ("fleet.csv", [("home", "card"), ("typing", "enter")]),
        ("squad.csv", [("squad", "squad")]),
    ];

    /// <summary>Draws what the documents show.</summary>
    /// <param name="folder">Where the pictures go.</param>
    /// <param name="size">Columns and rows of the terminal.</param>
    /// <param name="dark">Whether on a dark background.</param>
    public static IEnumerable<string> DrawOfTheDocuments(string folder, (int Columns, int Rows) size, bool dark) =>
        OfTheDocuments.SelectMany(one => DrawSample(Repository.File("sample-sessions/" + one.Sample), folder, size, dark, one.Pictures));

    // A season of the samples as it looks three days after its last outing, whatever the day is.
    private static List<string> DrawSample(
        string sample, string folder, (int Columns, int Rows) size, bool dark, (string Screen, string File)[] pictures)
    {
        string scratch = Directory.CreateTempSubdirectory("triallog-pictures-").FullName;
        try
        {
            string store = Path.Combine(scratch, "logbook.db");
            DateOnly last;
            using (LogbookFile logbook = LogbookFile.Open(store))
            {
                using FileStream csv = File.OpenRead(sample);
                ImportCsv.From(new Workspace(logbook, TimeProvider.System), csv, Path.GetFileName(sample),
                    new CsvReadOptions { Today = DateOnly.FromDateTime(DateTime.Today) });
                last = logbook.Outings().Max(outing => outing.Date);
            }

            return [.. Draw(store, new StoppedClock(last.AddDays(3)), folder, size, dark, pictures)];
        }
        finally
        {
            Directory.Delete(scratch, recursive: true);
        }
    }

    private static IEnumerable<Key> Typed(string text) => text.Select(letter => new Key(letter));

    /// <summary>Draws screens of a logbook.</summary>
    /// <param name="store">The logbook.</param>
    /// <param name="clock">The clock; outings are dated by it.</param>
    /// <param name="folder">Where the pictures go.</param>
    /// <param name="size">Columns and rows of the terminal.</param>
    /// <param name="dark">Whether on a dark background.</param>
    /// <param name="pictures">Which screens, each with the name of its file; none for the seven.</param>
    public static IEnumerable<string> Draw(string store, TimeProvider clock, string folder, (int Columns, int Rows) size, bool dark,
        IReadOnlyList<(string Screen, string File)>? pictures = null) =>
        Draw(store, clock, folder, size, dark ? Paper.Dark : Paper.Light,
            pictures ?? [.. Screens.SkipLast(2).Select(screen => (screen.Name, screen.Name))]);

    private static List<string> Draw(string store, TimeProvider clock, string folder, (int Columns, int Rows) size, Paper paper,
        IReadOnlyList<(string Screen, string File)> pictures)
    {
        List<string> drawn = [];
        Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
        Driver.Force16Colors = true;
        Directory.CreateDirectory(folder);
        using LogbookFile logbook = LogbookFile.Open(store);
        using IApplication app = Terminal.Gui.App.Application.Create();
        app.Init(DriverRegistry.Names.ANSI);
        app.Driver!.SetScreenSize(size.Columns, size.Rows);
        var environment = new Dictionary<string, string> { ["LANG"] = "C.UTF-8" };
        using ShellWindow window = ScreensProgram.Window(
            app, new Workspace(logbook, clock), Analyses.OfTheTuning, environment.GetValueOrDefault);
        window.SuitBackground(light: paper == Paper.Light);
        SessionToken session = app.Begin(window)!;
        foreach ((string name, string file) in pictures)
        {
            foreach (Key key in Screens.First(screen => screen.Name == name).Keys)
            {
                app.InjectKey(key);
                Settle();
            }

            string path = Path.Combine(folder, file + ".svg");
            File.WriteAllText(path, Svg(app.Driver.Contents!, size.Columns, size.Rows, paper));
            drawn.Add(path);
        }

        app.End(session);
        return drawn;

        void Settle()
        {
            do
            {
                Thread.Sleep(5);
                app.TimedEvents!.RunTimers();
                app.LayoutAndDraw();
            }
            while (window.IsWorkingItOut || app.Driver!.ToString()!.Contains("Reading ", StringComparison.Ordinal));
        }
    }

    private static string Svg(Cell[,] cells, int columns, int rows, Paper paper)
    {
        var svg = new StringBuilder();
        string width = N(columns * CellWidth), height = N(rows * CellHeight);
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" " +
            $"font-family=\"DejaVu Sans Mono, Menlo, Consolas, monospace\" font-size=\"14\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<rect width=\"{width}\" height=\"{height}\" fill=\"{paper.Back}\"/>\n");
        for (int row = 0; row < rows; row++)
        {
            for (int from = 0; from < columns;)
            {
                Attribute look = cells[row, from].Attribute ?? default;
                int to = from;
                var text = new StringBuilder();
                for (; to < columns && (cells[row, to].Attribute ?? default) == look; to++)
                    text.Append(cells[row, to].Grapheme is { Length: > 0 } glyph ? glyph : " ");
                Run(svg, row, from, text.ToString(), look, paper);
                from = to;
            }
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static void Run(StringBuilder svg, int row, int column, string text, Attribute look, Paper paper)
    {
        bool reverse = look.Style.HasFlag(TextStyle.Reverse), underline = look.Style.HasFlag(TextStyle.Underline);
        if (string.IsNullOrWhiteSpace(text) && !reverse && !underline)
            return;
        string x = N(column * CellWidth), width = N(text.Length * CellWidth);
        if (reverse)
            svg.Append(CultureInfo.InvariantCulture,
                $"<rect x=\"{x}\" y=\"{N(row * CellHeight)}\" width=\"{width}\" height=\"{N(CellHeight)}\" fill=\"{paper.Text}\"/>\n");
        string style = (look.Style.HasFlag(TextStyle.Bold) ? " font-weight=\"bold\"" : "")
            + (look.Style.HasFlag(TextStyle.Faint) ? " fill-opacity=\"0.6\"" : "")
            + (underline ? " text-decoration=\"underline\"" : "");
        svg.Append(CultureInfo.InvariantCulture,
            $"<text xml:space=\"preserve\" x=\"{x}\" y=\"{N(row * CellHeight + 13)}\" textLength=\"{width}\" " +
                $"lengthAdjust=\"spacingAndGlyphs\" " +
                $"fill=\"{(reverse ? paper.Back : paper.Fill(look.Foreground))}\"{style}>{SecurityElement.Escape(text)}</text>\n");
    }

    private static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>What the cells are drawn on, and in which colours: darker than a terminal's own to be read on paper.</summary>
    private sealed record Paper(string Back, string Text, string Cyan, string Green, string Magenta, string Yellow, string Red, string Blue)
    {
        public static readonly Paper
            Light = new("#fdfcf8", "#1f2328", "#00707f", "#1a7f37", "#8250a8", "#8a6100", "#c0262d", "#0550ae"),
            Dark = new("#16191d", "#d5d9de", "#4fc3d4", "#5fce7d", "#d08cf0", "#d9b44a", "#ff7b72", "#79b8ff");

        public string Fill(Color colour) => colour == Color.None ? Text : colour.GetClosestNamedColor16() switch
        {
            ColorName16.Cyan or ColorName16.BrightCyan => Cyan,
            ColorName16.Green or ColorName16.BrightGreen => Green,
            ColorName16.Magenta or ColorName16.BrightMagenta => Magenta,
            ColorName16.Yellow or ColorName16.BrightYellow => Yellow,
            ColorName16.Red or ColorName16.BrightRed => Red,
            ColorName16.Blue or ColorName16.BrightBlue => Blue,
            _ => Text,
        };
    }

    private sealed class StoppedClock(DateOnly day) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(day.ToDateTime(new TimeOnly(9, 30)), TimeSpan.Zero);
    }
}
