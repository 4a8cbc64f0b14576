using System.Text;
using System.Text.RegularExpressions;
using TrialLog.Application.Files;
using TrialLog.Application.Text;
using TrialLog.Application.Workspaces;
using TrialLog.Commands;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Logbook.Exchange;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Formats;
using TrialLog.Reports.Coach;
using TrialLog.TestData.Recordings.Fuzzing;

namespace TrialLog.TestData.Fuzzing;

/// <summary>What became of an odd input.</summary>
/// <param name="WasTaken">Whether it was read, and not refused.</param>
/// <param name="Failure">What should not have happened; null if all is well.</param>
internal readonly record struct OddResult(bool WasTaken, string? Failure);

/// <summary>A reader that takes in what others or the user wrote, with inputs that are nearly right: built from sound ones, with values,
/// words, cells or bytes put out of place. One input a seed.</summary>
internal sealed class OddInputs : IDisposable
{
    private static readonly string[] Oddities =
    [
        "", "0", "-1", "1e308", "NaN", "-0", "99999999999999999999", "0.0000001", "49¾", "49 3/4", "126.4cm", "1264mm", "5:32", "5:32.4",
        "1:02:10", "332s", "1km", "0.62mi", "none", "yes", "2026-02-30", "9999-12-31", "0001-01-01", "today", "=1+1", "＝1", "@sum",
        "\u001b[2J", "\u202e", "\0", "\uD83D", "é", "שלום", "\u2028", "a\nb", "\"", "'", ",", ";", "\t", "null", "true", "[]", "{}",
        "\\u0000", "--", "-", "..", "49,5", "１２", "OC1", "Reed", "Ilse Maro", "1/0", "½", "inf", "0x10", " ", "%", "18.5in",
        "48in..54in", "50in,1km,5:32,6", "12000000-0000-4000-8000-000000000000",
    ];

    private static readonly string[] Words =
    [
        "next", "log", "history", "curve", "check", "progress", "paddler", "paddle", "hull", "add", "set", "list", "remove", "join",
        "owners", "start-length", "transfer", "technique", "steering", "order-sheet", "decide", "soreness", "clear", "edit", "exclude",
        "include", "delete", "undo", "redo", "note", "verify", "plan", "export", "--json", "--paddler", "--hull", "--paddle", "--squad",
        "--pieces", "--minutes", "--distance", "--lengths", "--by", "--because", "--date", "--at", "--label", "--wind", "--effort",
        "--soreness", "--course", "--notes", "--reach", "--stature", "--start", "--goal", "--unit", "--blade", "--range", "--step",
        "--fixed", "--owner", "--club", "--crew", "--name", "--length", "--ordered", "--last", "--since", "--weeks", "--paddles",
        "--price", "--timed", "--swaps", "--help", "--version", "--plain", "50in,1km,5:32,6", "49in,1000m,5:40", "5:32", "2026-05-02",
    ];

    private static readonly CsvReadOptions Csv = new() { Today = new DateOnly(2026, 6, 1), SkipBad = true };

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("triallog-odd-");
    private readonly IReadOnlyList<byte[]> _recordings = DamagedFiles.SoundFiles();
    private readonly string _csv, _record, _store;

    /// <param name="samples">The folder of the sample sessions.</param>
    public OddInputs(string samples)
    {
        _csv = File.ReadAllText(Path.Combine(samples, "messy.csv"));
        _store = Path.Combine(_folder.FullName, "odd.db");
        using LogbookFile log = LogbookFile.Open(_store);
        using FileStream lean = File.OpenRead(Path.Combine(samples, "lean.csv"));
        TrialLog.Application.Files.ImportCsv.From(new Workspace(log, TimeProvider.System), lean, "lean.csv", Csv);
        using var written = new MemoryStream();
        Sharing.Write(log, new ShareOptions(), written);
        _record = Encoding.UTF8.GetString(written.ToArray());
        Readers = new Dictionary<string, Func<int, OddResult>>
        {
            ["text"] = Text, ["csv"] = OfCsv, ["record"] = Record, ["recording"] = Recording, ["command"] = Command, ["logbook"] = Logbook,
        };
    }

    /// <summary>The readers by name, each given a seed.</summary>
    public IReadOnlyDictionary<string, Func<int, OddResult>> Readers { get; }

    public void Dispose() => _folder.Delete(recursive: true);

    // Every form of a typed value, the words of a piece and what the next call makes of it.
    private static OddResult Text(int seed)
    {
        var random = new Random(seed);
        string text = Odd(random, random.Next(3) == 0 ? "" : Oddities[random.Next(Oddities.Length)]);
        return Guarded(() =>
        {
            switch (random.Next(12))
            {
                case 0: return TextForms.Length(LengthUnit.Inches).Read(text).ToString();
                case 1: return TextForms.Length(LengthUnit.Centimetres).Read(text).ToString();
                case 2: return TextForms.Distance.Read(text).ToString();
                case 3: return TextForms.Time.Read(text).ToString();
                case 4: return TextForms.Date(new DateOnly(2026, 6, 1)).Read(text).ToString();
                case 5: return TextForms.TimeOfDay.Read(text).ToString();
                case 6: return TextForms.Effort.Read(text).ToString();
                case 7: return TextForms.HeartRate.Read(text).ToString();
                case 8: return TextForms.StrokeRate.Read(text).ToString();
                case 9: return TextForms.Wind.Read(text).ToString();
                case 10: return NameRule.Checked(text, "paddler");
                default: return new CloseNames(["Ilse Maro", "Bram Okello", text]).To(text + "x") ?? "";
            }
        });
    }

    private OddResult OfCsv(int seed)
    {
        var random = new Random(seed);
        string[] lines = _csv.Split('\n');
        int first = 1 + random.Next(Math.Max(1, lines.Length - 8));
        List<string> rows = [lines[0], .. lines.Skip(first).Take(1 + random.Next(6))];
        for (int times = random.Next(1, 5); times > 0; times--)
        {
            int at = random.Next(rows.Count);
            string[] cells = rows[at].Split(',');
            cells[random.Next(cells.Length)] = Odd(random, cells[random.Next(cells.Length)]);
            rows[at] = string.Join(random.Next(20) == 0 ? ";" : ",", cells);
        }

        byte[] bytes = Bytes(random, string.Join(random.Next(10) == 0 ? "\r" : "\n", rows));
        return Guarded(() =>
        {
            CsvLogContents contents = CsvLog.Read(new MemoryStream(bytes), Csv);
            return CsvAssembly.Assemble(contents, KnownLog.Fresh, Csv).Says();
        });
    }

    private OddResult Record(int seed)
    {
        var random = new Random(seed);
        string text = _record;
        MatchCollection values = Regex.Matches(text, "(?<=: )[^{\\[][^,\\n]*|\"[a-z_]+\"(?=:)");
        for (int times = random.Next(3); times > 0; times--)
        {
            Match value = values[random.Next(values.Count)];
            string odd = Odd(random, Oddities[random.Next(Oddities.Length)]);
            if (value.Index + value.Length <= text.Length)
                text = text[..value.Index] + (random.Next(2) == 0 ? $"\"{odd}\"" : odd) + text[(value.Index + value.Length)..];
        }

        byte[] bytes = Bytes(random, text);
        return Guarded(() => $"{Sharing.Read(new MemoryStream(bytes))}");
    }

    private OddResult Recording(int seed)
    {
        FuzzResult result = DamagedFiles.Try(DamagedFiles.Make(_recordings, seed), seed);
        return new(result.WasRead, result.Failure);
    }

    /// <summary>The command line of a seed.</summary>
    public static IReadOnlyList<string> CommandOf(int seed)
    {
        var random = new Random(seed);
        List<string> words = [Words[random.Next(33)]];
        for (int i = random.Next(7); i > 0; i--)
            words.Add(random.Next(3) == 0 ? Odd(random, Oddities[random.Next(Oddities.Length)]) : Words[random.Next(Words.Length)]);
        return words;
    }

    // A whole command line in this process, on a logbook of its own; what writes files or asks is not among the words.
    private OddResult Command(int seed)
    {
        IReadOnlyList<string> words = CommandOf(seed);
        using var output = new StringWriter();
        using var error = new StringWriter();
        try
        {
            int code = CommandLineProgram.Run([.. words], new ConsoleHost
            {
                In = new StringReader(""), Out = output, Error = error, Interactive = false,
                Environment = name => name switch { "TRIALLOG_STORE" => _store, "LANG" => "C.UTF-8", _ => null },
            });
            string said = output.ToString() + error;
            return new(code == 0, said.Contains('\u001b') ? $"an escape came through: {string.Join(' ', words)}"
                : code is < 0 or > 2 ? $"exit {code}: {string.Join(' ', words)}"
                : code != 0 && said.Length == 0 ? $"no word: {string.Join(' ', words)}" : null);
        }
        catch (Exception e)
        {
            return new(false, $"{string.Join(' ', words.Select(word => $"[{word}]"))}: {e}");
        }
    }

    // The logbook itself, with bytes out of place.
    private OddResult Logbook(int seed)
    {
        var random = new Random(seed);
        byte[] bytes = File.ReadAllBytes(_store);
        for (int times = random.Next(1, 6); times > 0; times--)
        {
            int page = random.Next(bytes.Length / 4096), at = page * 4096 + (random.Next(2) == 0 ? random.Next(100) : random.Next(4096));
            random.NextBytes(bytes.AsSpan(at, Math.Min(random.Next(1, 9), bytes.Length - at)));
        }

        string damaged = Path.Combine(_folder.FullName, "damaged.db");
        foreach (string part in (string[])["", "-wal", "-shm"])
            File.Delete(damaged + part);
        File.WriteAllBytes(damaged, bytes);
        return Guarded(() =>
        {
            using LogbookFile log = LogbookFile.Open(damaged);
            LogbookSnapshot all = log.Everything();
            log.Verify();
            if (all.Paddlers.Count > 0)
                log.Change("Noted", writer => writer.Put(all.Paddlers[0]));
            return log.Undo()?.What ?? "";
        });
    }

    private static OddResult Guarded(Func<string> read)
    {
        try
        {
            _ = read();
            return new(true, null);
        }
        catch (Exception e) when (e is InvalidValueException or LogbookException or RequestException or RecordingException)
        {
            bool isClear = e.Message.Length is > 8 and < 3000 && !e.Message.Contains('\u001b');
            return new(false, isClear ? null : $"no clear sentence: {e.Message}");
        }
        catch (Exception e)
        {
            return new(false, e.ToString());
        }
    }

    private static byte[] Bytes(Random random, string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        if (bytes.Length > 0 && random.Next(8) == 0)
            bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        return random.Next(12) == 0 ? bytes[..random.Next(bytes.Length + 1)] : bytes;
    }

    // A value with a few characters put in, taken out, doubled or turned into another value.
    private static string Odd(Random random, string text)
    {
        for (int times = random.Next(3); times >= 0; times--)
        {
            int at = random.Next(text.Length + 1), length = random.Next(text.Length - at + 1);
            string other = Oddities[random.Next(Oddities.Length)];
            text = random.Next(5) switch
            {
                0 => text[..at] + other + text[at..],
                1 => text[..at] + text[(at + length)..],
                2 => text[..(at + length)] + text[at..],
                3 => other,
                _ => text[..at] + (char)random.Next(1, 0x250) + text[at..],
            };
        }

        return text.Length > 400 ? text[..400] : text;
    }
}
