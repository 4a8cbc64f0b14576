using System.CommandLine;
using TrialLog.TestData.Screens;

namespace TrialLog.Study.Screens;

/// <summary><c>screen-pictures</c>: draws the screens of a logbook as SVG, from the very cells of a terminal in memory.</summary>
internal static class ScreenPicturesCommand
{
    public static Command Create()
    {
        Option<string?> store = new("--store")
        {
            Description = "The logbook whose screens are drawn; else, of the samples, the pictures that the documents show.",
        };
        Option<string> to = new("--to") { Description = "The folder for the pictures.", DefaultValueFactory = _ => "docs/pictures" };
        Option<int> columns = new("--columns") { Description = "Columns of the terminal.", DefaultValueFactory = _ => 80 };
        Option<int> rows = new("--rows") { Description = "Rows of the terminal.", DefaultValueFactory = _ => 24 };
        Option<bool> dark = new("--dark") { Description = "On a dark background." };
        Command command = new("screen-pictures", "Draws the screens as SVG, from the cells of a terminal in memory.") { store, to,
            columns, rows, dark };
        command.SetAction(parsed =>
        {
            (string folder, bool isDark) = (parsed.GetValue(to)!, parsed.GetValue(dark));
            (int Columns, int Rows) size = (parsed.GetValue(columns), parsed.GetValue(rows));
            IEnumerable<string> drawn = parsed.GetValue(store) is { } logbook
                ? ScreenPictures.Draw(logbook, TimeProvider.System, folder, size, isDark)
                : ScreenPictures.DrawOfTheDocuments(folder, size, isDark);
            foreach (string path in drawn)
                Console.WriteLine(path);
        });
        return command;
    }
}
