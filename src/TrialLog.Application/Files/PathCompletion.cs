using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Files;

/// <summary>What a half typed path may become: the folders and the files to import that begin so.</summary>
internal static class PathCompletion
{
    /// <summary>So many entries of a folder are looked at; more are not worth the wait for a key.</summary>
    private const int MostEntries = 2000;

    private static readonly string[] Kinds = [".gpx", ".tcx", ".fit", ".csv", ".gz"];

    /// <summary>Whether a file's name is that of one to import.</summary>
    public static bool IsOfKind(string name) => Kinds.Contains(Path.GetExtension(name), StringComparer.OrdinalIgnoreCase);

    /// <summary>As <see cref="Of"/>, for the last of several paths apart by semicolons, those before it as typed.</summary>
    public static IReadOnlyList<string> OfLast(string typed)
    {
        int last = typed.LastIndexOf(';') + 1;
        string before = last == 0 ? "" : typed[..last] + " ";
        return [.. Of(typed[last..]).Select(path => before + path)];
    }

    /// <summary>The paths that begin as typed, folders with their separator, in order; as typed before, so <c>~</c> stays.</summary>
    public static IReadOnlyList<string> Of(string typed)
    {
        string text = typed.TrimStart();
        if (text == "~")
            return ["~/"];
        int cut = text.LastIndexOfAny(['/', Path.DirectorySeparatorChar]) + 1;
        (string folder, string begins) = (text[..cut], text[cut..]);
        try
        {
            string looked = folder.Length == 0 ? "." : FileToImport.Path(folder);
            return
            [
                .. new DirectoryInfo(looked).EnumerateFileSystemInfos().Take(MostEntries)
                    .Where(entry => entry.Name.StartsWith(begins, StringComparison.OrdinalIgnoreCase)
                        && (begins.StartsWith('.') || !entry.Name.StartsWith('.')))
                    .Where(entry => entry is DirectoryInfo || IsOfKind(entry.Name))
                    .OrderBy(entry => entry.Name, StringComparer.OrdinalIgnoreCase)
                    .Select(entry => folder + entry.Name + (entry is DirectoryInfo ? "/" : "")),
            ];
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return [];
        }
    }

    /// <summary>The text with all that its completions have in common.</summary>
    public static string Common(string typed, IReadOnlyList<string> completions)
    {
        if (completions.Count == 0)
            return typed;
        int same = completions.Min(one => one.Length);
        for (int at = 0; at < same; at++)
        {
            if (completions.Any(one => char.ToUpperInvariant(one[at]) != char.ToUpperInvariant(completions[0][at])))
                same = at;
        }

        return same > typed.TrimStart().Length || completions.Count == 1 ? completions[0][..same] : typed;
    }
}
