using System.IO.Compression;
using Terminal.Gui.Input;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Formats;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Screens.Entry;
using TrialLog.Tests.Plots;

namespace TrialLog.Tests.Screens;

/// <summary>Bringing a watch's recording or a CSV into the log as a person at the keyboard would.</summary>
[Collection(nameof(ScreensTests))]
public sealed class ImportTests : IDisposable
{
    private static readonly Guid Ilse = new(1, 0, 0, new byte[8]);
    private static readonly string Recording = Repository.File("sample-sessions/recordings/ilse-round-trips-laps.fit");

    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-imports-").FullName;

    [Fact]
    public void A_path_completes_and_a_file_imported_before_is_named_by_an_arrow()
    {
        string folder = Directory.CreateDirectory(Path.Combine(_folder, "club rides")).FullName;
        File.WriteAllText(Path.Combine(folder, "march.csv"), "not,a,log\n");
        File.WriteAllText(Path.Combine(folder, "may.csv"), "not,a,log\n");
        File.WriteAllText(Path.Combine(folder, "notes.txt"), "");
        string log = Path.Combine(_folder, "paths.db");
        SampleLog.Write(log);
        using var terminal = new AtTheTerminal(log, 160, 30, analyses: SampleLog.Known);
        terminal.Type("3").Type("i").Type(_folder + "/CLUB").Press(Key.Tab).Shows("club rides/").Shows("may.csv").ShowsNot("notes.txt");
        terminal.Type("m").Press(Key.Tab).Type("r").Press(Key.Tab).Shows("march.csv").Press(Key.Enter).WaitFor("line 1 of 6");
        terminal.Type("i").Shows("Imported before").Press(Key.CursorUp).Shows(Path.Combine(folder, "march.csv"));
    }

    [Fact]
    public void A_recording_with_a_piece_dropped_asks_about_the_card_and_is_saved_when_that_is_settled()
    {
        using AtTheTerminal terminal = Opened(Recording);
        int counted = Counting(terminal);
        Assert.Equal(4, counted);
        terminal.Press(Key.F9).Shows("Saved the outing of").Type("u").Shows("Undone");
        Assert.Equal(6, terminal.Workspace.Logbook.Outings(Ilse).Count);

        Open(terminal, Recording);
        PointAt(terminal, "49¼ in");
        terminal.Type("x").Shows("✗ dropped by hand").Shows("The card has 4 pieces, the recording shows 3");
        terminal.Press(Key.F9).Shows("The card has 4 pieces");
        Assert.Equal(6, terminal.Workspace.Logbook.Outings(Ilse).Count);
        terminal.Press(Key.Enter).Shows("Of the 3 pieces that count").Press(Key.End).Press([.. Enumerable.Repeat(Key.Backspace, 40)])
            .Type("50.75, 50.7x").Shows("✗ ").Press(Key.Backspace).Type("5, 49").Press(Key.Enter);
        terminal.Type("6.5").Press(Key.Enter).Type("2").Press(Key.Enter).Type("3").Press(Key.S.WithCtrl)
            .Shows("effort 6.5 · soreness 2 · wind 3");
        terminal.Press(Key.F9).Shows("with 3 pieces").Shows("7 outings");

        Outing saved = Assert.Single(terminal.Workspace.Logbook.Outings(Ilse), outing => outing.Pieces.Count == 3);
        Assert.Equal([50.75, 50.75, 49], saved.Pieces.Select(piece => piece.Length.Inches));
        Assert.All(
            saved.Pieces, piece =>
            Assert.Equal((Effort.FromPoints(6.5), Soreness.FromPoints(2), Course.RoundTrip), (piece.Effort, piece.Soreness, piece.Course)));
        Assert.Equal(Beaufort.FromNumber(3), saved.Wind);
    }

    [Fact]
    public void The_same_file_comes_in_once_also_when_it_is_gzipped()
    {
        string gzipped = Path.Combine(_folder, "morning.fit.gz");
        using (var packed = new GZipStream(File.Create(gzipped), CompressionLevel.Fastest))
            packed.Write(File.ReadAllBytes(Recording));
        using AtTheTerminal terminal = Opened(gzipped);
        terminal.Press(Key.F9).Shows("Saved the outing of").Type("i").Type(Recording).Press(Key.Enter).WaitFor("was imported before");
        // Nothing of the file's name is kept, which may be that of a place: only the folder is offered again.
        terminal.Type("i").Press(Key.CursorUp).ShowsNot("ilse-round-trips").Press(Key.Esc);
        Assert.DoesNotContain(
            "ilse-round-trips", string.Concat(Directory.GetFiles(_folder, "logbook.db*")
                .Select(file => System.Text.Encoding.Latin1.GetString(Shared(file)))));
        Assert.Equal(7, terminal.Workspace.Logbook.Outings(Ilse).Count);
    }

    [Fact]
    public void A_wrong_path_or_a_file_that_is_nothing_is_said_in_words()
    {
        string nothing = Path.Combine(_folder, "nothing.gpx");
        File.WriteAllText(nothing, "<gpx><trk>");
        using AtTheTerminal terminal = Logbook();
        terminal.Type("i").Shows("Import which file?").Press(Key.Enter).Shows("Type the path of a file.")
            .Type("/nowhere.fit").Shows("✗ There is no file /nowhere.fit").Press(Key.Enter).Shows("Import which file?").Press(Key.Esc);
        terminal.Type("i").Type(nothing).Press(Key.Enter).WaitFor("6 outings").Shows("✗ ").Shows("nothing.gpx");
    }

    [Fact]
    public void What_cannot_be_is_said_and_changes_nothing_and_what_can_be_moves_cuts_and_joins_pieces()
    {
        using AtTheTerminal terminal = Opened(Recording);
        PointAt(terminal, "49¼ in");
        string before = Here(terminal);
        terminal.Type("-").Type("0:05").Press(Key.Enter).Shows("must lie inside").Type("e").Type("typed").Press(Key.Enter)
            .Press([.. Enumerable.Repeat(Key.Backspace, 20)])
            .Type("9:99").Shows("✗ ").Press(Key.Esc);
        Assert.Equal(before, Here(terminal));
        terminal.Press(Key.CursorRight).Type("[");
        Assert.NotEqual(before, Here(terminal));
        terminal.Press(Key.CursorLeft).Type("]");
        Assert.Equal(before, Here(terminal));

        string[] words = before.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        TimeSpan from = At(words[2]), to = At(words[3]);
        int pieces = Counting(terminal);
        terminal.Type("-").Type($"{(int)(from + to).TotalMinutes / 2}:30").Press(Key.Enter);
        Assert.Equal(pieces + 1, Counting(terminal));
        terminal.Shows("The card has 4 pieces, the recording shows 5").Type("+");
        Assert.Equal(pieces, Counting(terminal));

        static TimeSpan At(string clock) => TimeSpan.FromMilliseconds(PieceTime.Parse(clock).Milliseconds);
    }

    [Fact]
    public void A_recording_is_still_in_hand_after_the_explanation_and_after_another_screen_until_it_is_left()
    {
        using AtTheTerminal terminal = Opened(Recording);
        PointAt(terminal, "49¼ in");
        terminal.Click("25:39").Shows("▸ 4").Click("7:21").Shows("▸ 2").Type("x").Press(Key.F1).Shows("Pieces found in a recording")
            .Press(Key.Esc).Shows("✗ dropped by hand");
        terminal.Press(new Key('4').WithAlt).Shows("chance of each setting").Type("3").Type("i").Shows("✗ dropped by hand");
        terminal.Press(Key.Esc).Shows("This recording is not saved.").Press(Key.CursorDown).Press(Key.Esc).Shows("Press the key again");
        terminal.Press(Key.Esc).Shows("nothing was saved").Type("i").Shows("Import which file?");
        Assert.Equal(6, terminal.Workspace.Logbook.Outings(Ilse).Count);
    }

    [Fact]
    public void A_CSV_is_added_and_says_what_came_of_it()
    {
        string csv = Path.Combine(_folder, "may.csv"), wrong = Path.Combine(_folder, "wrong.csv");
        File.WriteAllText(csv, "date,hull,paddle,length_in,distance_m,time\n2026-05-03,OC1,Reed 44,49.5,1000,5:31\n2026-05-03,OC1,Reed " +
            "44,50.5,1000,5:33\n");
        File.WriteAllText(wrong, "date,hull,paddle,length_in,distance_m,time\n2026-05-04,OC1,Reed 44,soon,1000,5:31\n");
        using AtTheTerminal terminal = Logbook();
        terminal.Type("i").Type(csv).Press(Key.Enter).WaitFor("2 pieces in 1 outing added").Shows("7 outings");
        terminal.Type("i").Type(wrong).Press(Key.Enter).WaitFor("Nothing was imported").Shows("soon").Press(Key.Esc).Shows("7 outings");
    }

    [Fact]
    public void Reading_a_long_CSV_is_stopped_by_Esc_and_nothing_is_added()
    {
        string csv = Path.Combine(_folder, "years.csv");
        File.WriteAllLines(csv, Enumerable.Range(0, 150_000).Select(row => $"2026-05-03,OC1,Reed 44,49.5,1000,{300 + row % 60}s")
            .Prepend("date,hull,paddle,length_in,distance_m,time"));
        using AtTheTerminal terminal = Logbook();
        terminal.Type("i").Type(csv).Press(Key.Enter).Shows("Reading years.csv").Type("q").Press(Key.Esc)
            .WaitFor("Stopped; nothing of years.csv was added").Shows("6 outings");
    }

    [Theory]
    [InlineData("recording", 80, 24, "LANG=C.UTF-8")]
    [InlineData("recording", 140, 45, "LANG=C.UTF-8")]
    [InlineData("recording-ascii", 80, 24, "LANG=C")]
    public void The_pieces_of_a_recording_look_as_they_did(string name, int columns, int rows, string environment)
    {
        using AtTheTerminal terminal = Opened(Recording, columns, rows, environment);
        if (environment == "LANG=C")
            Assert.All(terminal.Shown, glyph => Assert.True(glyph is '\n' or (>= ' ' and <= '~'), $"“{glyph}” is not ASCII"));
        StoredDrawing.Matches("Screens", $"{name}-{columns}x{rows}", terminal.Shown);
    }

    [Fact]
    public void A_small_terminal_still_shows_the_piece_that_is_pointed_at()
    {
        using AtTheTerminal terminal = Opened(Recording);
        foreach ((int columns, int rows) in new[] { (40, 12), (20, 5), (200, 60), (80, 24) })
        {
            terminal.Resize(columns, rows);
            Assert.All(terminal.Lines, line => Assert.True(line.Length <= columns, line));
        }

        terminal.Resize(60, 14).Shows("▸ 2").Press(Key.CursorDown, Key.CursorDown, Key.CursorDown, Key.CursorDown).Shows("▸ 6");
    }

    // The logbook is open meanwhile.
    private static byte[] Shared(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static string Here(AtTheTerminal terminal) => terminal.Lines.Single(line => line.StartsWith(" ▸ ", StringComparison.Ordinal));

    private static int Counting(AtTheTerminal terminal) =>
        terminal.Lines.Count(line => line.Contains(" /km ", StringComparison.Ordinal) && !line.Contains('✗'));

    private static void PointAt(AtTheTerminal terminal, string text)
    {
        for (int press = 0; press < 20 && !Here(terminal).Contains(text, StringComparison.Ordinal); press++)
            terminal.Press(Key.CursorDown);
        Assert.Contains(text, Here(terminal));
    }

    private AtTheTerminal Logbook(int columns = 80, int rows = 24, string environment = "LANG=C.UTF-8")
    {
        string path = Path.Combine(_folder, "logbook.db");
        SampleLog.Write(path);
        AtTheTerminal terminal = new AtTheTerminal(path, columns, rows, environment, SampleLog.Known).Type("3");
        // The card was given before the day of the recordings, or its lengths would not be theirs.
        foreach (GivenCard card in terminal.Workspace.Logbook.Cards(Ilse))
            terminal.Workspace.Logbook.Note("Gave the card earlier",
                writer => writer.Put(card with { GivenAt = new DateTimeOffset(2026, 5, 1, 12, 0, 0, TimeSpan.Zero) }));
        return terminal;
    }

    private AtTheTerminal Opened(string file, int columns = 80, int rows = 24, string environment = "LANG=C.UTF-8")
    {
        AtTheTerminal terminal = Logbook(columns, rows, environment);
        Open(terminal, file);
        return terminal;
    }

    private static void Open(AtTheTerminal terminal, string file) => terminal.Type("i").Type(file).Press(Key.Enter).WaitFor("distance");

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
