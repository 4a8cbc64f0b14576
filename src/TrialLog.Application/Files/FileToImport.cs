using TrialLog.Application.Workspaces;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Recordings;

namespace TrialLog.Application.Files;

/// <summary>A file that somebody names to be imported.</summary>
internal static class FileToImport
{
    /// <summary>The path with a leading <c>~</c> put as the home folder, as a shell would do.</summary>
    public static string Path(string typed)
    {
        string path = typed.Trim();
        return path == "~" || path.StartsWith("~/", StringComparison.Ordinal)
            ? Environment.GetFolderPath(Environment.SpecialFolder.UserProfile) + path[1..]
            : path;
    }

    /// <summary>
    /// The paths in a text: one, or several apart by semicolons; a <c>*</c> in a file's name stands for every recording or CSV so named.
    /// </summary>
    public static IReadOnlyList<string> Several(string typed)
    {
        if (File.Exists(Path(typed)))
            return [Path(typed)];
        return [.. typed.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).SelectMany(Named).Distinct()];
    }

    private static IEnumerable<string> Named(string one)
    {
        string path = Path(one), name = System.IO.Path.GetFileName(path);
        string folder = System.IO.Path.GetDirectoryName(path) is { Length: > 0 } parent ? parent : ".";
        if (!name.Contains('*', StringComparison.Ordinal) || File.Exists(path) || !Directory.Exists(folder))
            return [path];
        string[] found = [.. Directory.EnumerateFiles(folder, name).Where(PathCompletion.IsOfKind).Order(StringComparer.OrdinalIgnoreCase)];
        return found.Length > 0 ? found : [path];
    }

    /// <summary>Why there is nothing to open at that path, in a sentence; null if there is a file.</summary>
    public static string? Problem(string path) =>
        Directory.Exists(path) ? $"{Quoted.Brief(path, 200)} is a folder; name the files in it."
        : File.Exists(path) ? null
        : $"There is no file {Quoted.Brief(path, 200)}.";

    /// <exception cref="RequestException">There is no such file, or it cannot be read.</exception>
    public static FileStream Open(string path)
    {
        try
        {
            return InputFile.Open(path);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new RequestException(Problem(path) ?? $"{Quoted.Brief(path, 200)} cannot be read: {failure.Message}");
        }
    }

    /// <summary>Whether it begins as a recording does, rather than a CSV; the stream is left at its beginning.</summary>
    public static bool LooksLikeRecording(FileStream stream)
    {
        Span<byte> beginning = stackalloc byte[16];
        int read = stream.ReadAtLeast(beginning, beginning.Length, throwOnEndOfStream: false);
        stream.Position = 0;
        return RecordingReader.LooksLikeRecording(beginning[..read]);
    }
}
