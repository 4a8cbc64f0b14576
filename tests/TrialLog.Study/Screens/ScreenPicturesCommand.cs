using System.CommandLine;
using System.Globalization;
using System.Security;
using System.Text;
using Terminal.Gui.App;
using Terminal.Gui.Drawing;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Pictures;
using TrialLog.Screens;
using TrialLog.Screens.Base;
using TrialLog.Screens.Shell;
using Attribute = Terminal.Gui.Drawing.Attribute;
using Command = System.CommandLine.Command;

namespace TrialLog.Study.Screens;

/// <summary><c>screen-pictures</c>: draws the screens of a logbook as SVG, from the very cells of a terminal in memory.</summary>
internal static class ScreenPicturesCommand
{
    private const double CellWidth = 8.4, CellHeight = 17;
    private const string Paper = "#fdfcf8", Text = "#1f2328";

    private static readonly (string Name, Key[] Keys)[] Screens =
    [
        ("home", [new Key('1').WithAlt]), ("enter", [new Key('2').WithAlt]), ("logbook", [new Key('3').WithAlt]),
            ("curve", [new Key('4').WithAlt]),
        ("progress", [new Key('5').WithAlt]), ("body", [new Key('6').WithAlt]), ("squad", [new Key('7').WithAlt]),
    ];

    public static Command Create()
    {
        Option<string> store = new("--store") { Description = "The logbook whose screens are drawn.", Required = true };
        Option<string> to = new("--to") { Description = "The folder for the pictures.", Required = true };
        Option<int> columns = new("--columns") { Description = "Columns of the terminal.", DefaultValueFactory = _ => 80 };
        Option<int> rows = new("--rows") { Description = "Rows of the terminal.", DefaultValueFactory = _ => 24 };
        Command command = new("screen-pictures", "Draws the screens as SVG, from the cells of a terminal in memory.") { store, to,
            columns, rows };
        command.SetAction(parsed => Draw(parsed.GetValue(store)!, parsed.GetValue(to)!, parsed.GetValue(columns), parsed.GetValue(rows)));
        return command;
    }

    private static void Draw(string store, string folder, int columns, int rows)
    {
        Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
        Driver.Force16Colors = true;
        Directory.CreateDirectory(folder);
        using LogbookFile logbook = LogbookFile.Open(store);
        using IApplication app = Terminal.Gui.App.Application.Create();
        app.Init(DriverRegistry.Names.ANSI);
        app.Driver!.SetScreenSize(columns, rows);
        var environment = new Dictionary<string, string> { ["LANG"] = "C.UTF-8" };
        using ShellWindow window = ScreensProgram.Window(
            app, new Workspace(logbook, TimeProvider.System), Analyses.OfTheTuning, environment.GetValueOrDefault);
        SessionToken session = app.Begin(window)!;
        foreach ((string name, Key[] keys) in Screens)
        {
            foreach (Key key in keys)
                app.InjectKey(key);
            do
            {
                Thread.Sleep(20);
                app.TimedEvents!.RunTimers();
                app.LayoutAndDraw();
            }
            while (window.IsWorkingItOut);
            File.WriteAllText(Path.Combine(folder, name + ".svg"), Svg(app.Driver.Contents!, columns, rows));
            Console.WriteLine(Path.Combine(folder, name + ".svg"));
        }

        app.End(session);
    }

    private static string Svg(Cell[,] cells, int columns, int rows)
    {
        var svg = new StringBuilder();
        string width = N(columns * CellWidth), height = N(rows * CellHeight);
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" " +
            $"font-family=\"DejaVu Sans Mono, Menlo, Consolas, monospace\" font-size=\"14\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<rect width=\"{width}\" height=\"{height}\" fill=\"{Paper}\"/>\n");
        for (int row = 0; row < rows; row++)
        {
            for (int from = 0; from < columns;)
            {
                Attribute look = cells[row, from].Attribute ?? default;
                int to = from;
                var text = new StringBuilder();
                for (; to < columns && (cells[row, to].Attribute ?? default) == look; to++)
                    text.Append(cells[row, to].Grapheme is { Length: > 0 } glyph ? glyph : " ");
                Run(svg, row, from, text.ToString(), look);
                from = to;
            }
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static void Run(StringBuilder svg, int row, int column, string text, Attribute look)
    {
        bool reverse = look.Style.HasFlag(TextStyle.Reverse), underline = look.Style.HasFlag(TextStyle.Underline);
        if (string.IsNullOrWhiteSpace(text) && !reverse && !underline)
            return;
        string x = N(column * CellWidth), width = N(text.Length * CellWidth);
        if (reverse)
            svg.Append(CultureInfo.InvariantCulture,
                $"<rect x=\"{x}\" y=\"{N(row * CellHeight)}\" width=\"{width}\" height=\"{N(CellHeight)}\" fill=\"{Text}\"/>\n");
        string style = (look.Style.HasFlag(TextStyle.Bold) ? " font-weight=\"bold\"" : "")
            + (look.Style.HasFlag(TextStyle.Faint) ? " fill-opacity=\"0.6\"" : "")
            + (underline ? " text-decoration=\"underline\"" : "");
        svg.Append(CultureInfo.InvariantCulture,
            $"<text xml:space=\"preserve\" x=\"{x}\" y=\"{N(row * CellHeight + 13)}\" textLength=\"{width}\" " +
                $"lengthAdjust=\"spacingAndGlyphs\" " +
                $"fill=\"{(reverse ? Paper : Fill(look.Foreground))}\"{style}>{SecurityElement.Escape(text)}</text>\n");
    }

    // Darker than a terminal's own, to be read on paper.
    private static string Fill(Color colour) => colour == Color.None ? Text : colour.GetClosestNamedColor16() switch
    {
        ColorName16.Cyan or ColorName16.BrightCyan => "#00707f",
        ColorName16.Green or ColorName16.BrightGreen => "#1a7f37",
        ColorName16.Magenta or ColorName16.BrightMagenta => "#8250a8",
        ColorName16.Yellow or ColorName16.BrightYellow => "#8a6100",
        ColorName16.Red or ColorName16.BrightRed => "#c0262d",
        _ => Text,
    };

    private static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
