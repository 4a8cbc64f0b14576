using System.Diagnostics;
using System.Text.RegularExpressions;
using TrialLog.Logbook.Shared;
using TrialLog.Tests.Recordings.Csv;
using TrialLog.Tests.Tuning.References;

namespace TrialLog.Tests.Logbook;

/// <summary>
/// What a program wrote to a folder, system call by system call, as <c>strace</c> saw it; and the folder as it would be had the program
/// been killed, or the power failed, at any of them. A failing disk is thought of as one that keeps names in their order (as a journal
/// does) and of what was written to a file since its last <c>fsync</c> any part, in sectors.
/// </summary>
internal sealed partial class DiskTrace
{
    private const int Sector = 512;

    private readonly string _folder;
    private readonly Dictionary<string, byte[]> _before;
    private readonly List<Event> _events;

    private DiskTrace(string folder, Dictionary<string, byte[]> before, List<Event> events) =>
        (_folder, _before, _events) = (folder, before, events);

    private enum Kind { Made, Written, Cut, Synced, Renamed, Linked, Removed }

    private sealed record Event(Kind Kind, string File, string Other = "", byte[]? Bytes = null, long At = 0);

    /// <summary>How many calls there were.</summary>
    public int Count => _events.Count;

    /// <summary>How often files were brought to the disk.</summary>
    public int Syncs => _events.Count(one => one.Kind == Kind.Synced);

    /// <summary>Whether it can be seen here what a program writes.</summary>
    public static bool IsPossible()
    {
        try
        {
            using Process process = Process.Start(new ProcessStartInfo("strace", ["-f", "-o", "/dev/null", "true"])
            {
                RedirectStandardError = true,
            })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    /// <summary>Runs a program that writes to a folder, and sees what it writes.</summary>
    public static DiskTrace Of(string folder, ProcessStartInfo program)
    {
        Dictionary<string, byte[]> before = Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(Counts).ToDictionary(file => file, File.ReadAllBytes);
        string trace = Path.GetTempFileName();
        try
        {
            var start = new ProcessStartInfo("strace", ["-f", "--seccomp-bpf", "-y", "-xx", "-s", "20000000", "-o", trace, "-e",
                "trace=openat,pwrite64,write,ftruncate,fsync,fdatasync,rename,renameat,renameat2,link,linkat,unlink,unlinkat",
                program.FileName, .. program.ArgumentList])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            };
            foreach ((string name, string? value) in program.Environment)
                start.Environment[name] = value;
            using Process process = Process.Start(start)!;
            OtherProcess.WaitForSuccess(process);
            return new(folder, before, [.. File.ReadLines(trace).Select(Parse).OfType<Event>()
                .Where(one => one.File.StartsWith(folder, StringComparison.Ordinal) && Counts(one.File))]);
        }
        finally
        {
            File.Delete(trace);
        }
    }

    /// <summary>The folder before the first call and after each, one after the other.</summary>
    public IEnumerable<DiskMoment> Moments()
    {
        var files = _before.ToDictionary(file => file.Key, file => new Content(file.Value));
        yield return new(0, _folder, files);
        for (int calls = 0; calls < _events.Count; calls++)
        {
            Event one = _events[calls];
            switch (one.Kind)
            {
                case Kind.Made: files.TryAdd(one.File, new Content([])); break;
                case Kind.Written when files.TryGetValue(one.File, out Content? content): content.Put(one.Bytes!, one.At); break;
                case Kind.Cut when files.TryGetValue(one.File, out Content? content): content.Cut(one.At); break;
                case Kind.Synced when files.TryGetValue(one.File, out Content? content): content.Sync(); break;
                case Kind.Linked when files.TryGetValue(one.File, out Content? content): files[one.Other] = content; break;
                case Kind.Removed: files.Remove(one.File); break;
                case Kind.Renamed when files.Remove(one.File, out Content? content): files[one.Other] = content; break;
            }

            yield return new(calls + 1, _folder, files);
        }
    }

    // The index of the write-ahead log is memory that programs share; it is made anew.
    private static bool Counts(string file) => !file.EndsWith("-shm", StringComparison.Ordinal);

    private static Event? Parse(string line)
    {
        if (Call().Match(line) is not { Success: true } call || line.Contains(" = -1 ", StringComparison.Ordinal))
            return null;
        string words = call.Groups["words"].Value;
        List<string> texts = [.. Quoted().Matches(words).Select(match => Text(Bytes(match.Groups[1].Value)))];
        string file = OfDescriptor().Match(words) is { Success: true } at ? Text(Bytes(at.Groups[1].Value)) : "";
        long Last() => long.Parse(words[(words.LastIndexOf(',') + 1)..].Split([' ', ')', '<'], StringSplitOptions.RemoveEmptyEntries)[0]);
        switch (call.Groups["name"].Value)
        {
            case "openat":
                return words.Contains("O_CREAT", StringComparison.Ordinal) ? new(Kind.Made, texts[0]) : null;
            case "pwrite64":
                return new(Kind.Written, file, Bytes: Bytes(Quoted().Match(words).Groups[1].Value), At: Last());
            case "write":
                return new(Kind.Written, file, Bytes: Bytes(Quoted().Match(words).Groups[1].Value), At: -1);
            case "ftruncate":
                return new(Kind.Cut, file, At: Last());
            case "fsync" or "fdatasync":
                return new(Kind.Synced, file);
            case "rename" or "renameat" or "renameat2":
                return new(Kind.Renamed, texts[0], texts[1]);
            case "link" or "linkat":
                return new(Kind.Linked, texts[0], texts[1]);
            default:
                return new(Kind.Removed, texts[0]);
        }
    }

    private static byte[] Bytes(string hex) => Convert.FromHexString(hex.Replace("\\x", "", StringComparison.Ordinal));

    private static string Text(byte[] bytes) => System.Text.Encoding.UTF8.GetString(bytes);

    [GeneratedRegex(@"^\d+ +(?<name>[a-z0-9]+)\((?<words>.*)$")]
    private static partial Regex Call();

    [GeneratedRegex("\"((?:\\\\x[0-9a-f]{2})*)\"")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"^\d+<((?:\\x[0-9a-f]{2})*)>")]
    private static partial Regex OfDescriptor();

    /// <summary>A folder at a moment.</summary>
    /// <param name="Calls">After how many calls.</param>
    /// <param name="Folder">Its name.</param>
    /// <param name="Files">What is in it.</param>
    internal sealed record DiskMoment(int Calls, string Folder, IReadOnlyDictionary<string, Content> Files)
    {
        /// <summary>Writes it into another folder.</summary>
        /// <param name="into">That folder.</param>
        /// <param name="power">Where the power failed: decides what of the unsynced writes reached the disk; null where the program was
        /// only killed.</param>
        public void WriteTo(string into, Random? power)
        {
            foreach ((string file, Content content) in Files)
            {
                string path = Path.Combine(into, Path.GetRelativePath(Folder, file));
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.WriteAllBytes(path, power is null ? content.Written : content.AfterPowerLoss(power));
            }
        }

        /// <summary>What was written to a file.</summary>
        public string TextOf(string file) => Files.TryGetValue(file, out Content? content) ? Text(content.Written) : "";
    }

    /// <summary>A file's bytes, those on the disk for good, and what was done to it since.</summary>
    internal sealed class Content(byte[] bytes)
    {
        private readonly List<(long At, byte[]? Bytes)> _unsynced = [];
        private byte[] _synced = bytes;

        public byte[] Written { get; private set; } = bytes;

        public void Put(byte[] what, long at)
        {
            long from = at < 0 ? Written.Length : at;
            _unsynced.Add((from, what));
            Written = With(Written, from, what);
        }

        public void Cut(long length)
        {
            _unsynced.Add((length, null));
            Written = Resized(Written, length);
        }

        public void Sync()
        {
            _synced = Written;
            _unsynced.Clear();
        }

        public byte[] AfterPowerLoss(Random random)
        {
            byte[] left = _synced;
            foreach ((long at, byte[]? what) in _unsynced)
            {
                if (what is null)
                {
                    left = random.Next(2) == 0 ? Resized(left, at) : left;
                    continue;
                }

                int fate = random.Next(3);
                for (int i = 0; fate > 0 && i < what.Length; i += Sector)
                {
                    if (fate == 1 || random.Next(2) == 0)
                        left = With(left, at + i, what[i..Math.Min(i + Sector, what.Length)]);
                }
            }

            return left;
        }

        private static byte[] With(byte[] bytes, long at, byte[] what)
        {
            byte[] all = Resized(bytes, Math.Max(bytes.Length, at + what.Length));
            what.CopyTo(all, at);
            return all;
        }

        private static byte[] Resized(byte[] bytes, long length)
        {
            byte[] all = new byte[length];
            Array.Copy(bytes, all, Math.Min(bytes.Length, length));
            return all;
        }
    }
}
