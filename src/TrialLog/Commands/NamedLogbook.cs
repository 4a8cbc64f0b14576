using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;

namespace TrialLog.Commands;

/// <summary>
/// A logbook that the user named, with <c>--store</c> or <c>TRIALLOG_STORE</c>, and that is not there: a slip in its name must not begin
/// another one unseen.
/// </summary>
internal static class NamedLogbook
{
    // A folder of more files than that is no place where somebody looks for a logbook.
    private const int MostLookedAt = 1000;

    /// <summary>Refuses what looks like a slip, and tells whether a new logbook is going to be begun.</summary>
    /// <param name="path">Where it should be.</param>
    /// <param name="begins">Whether the command puts in what a new logbook begins with; else there is nothing to do without one.</param>
    /// <param name="meant">Whether the user said that a new one is meant.</param>
    /// <exception cref="RequestException">There is none, and none is begun.</exception>
    public static bool IsToBegin(string path, bool begins, bool meant)
    {
        var file = new FileInfo(path);
        // What else is wrong with the place is told by whoever opens it.
        if (file is { Exists: true, Length: > 0 } || Directory.Exists(file.FullName) || file.Directory is not { Exists: true }
            || Backups.Of(file.FullName).Count > 0)
            return false;
        if (meant)
            return true;
        string none = $"There is no logbook at {Quoted.Visible(file.FullName)}";
        if (Neighbour(file) is { } near)
            throw new RequestException($"{none}; did you mean {Quoted.Visible(near)}? To begin a new one all the same: --new-logbook");
        return begins ? true : throw new RequestException(
            $"{none}; look at its name, or begin a new one there with: triallog paddler add NAME --reach 50in");
    }

    private static string? Neighbour(FileInfo file)
    {
        List<string> names = [.. file.Directory!.EnumerateFiles().Take(MostLookedAt)
            .Where(other => other.Extension != ".bak" && other.Name != file.Name && LogbookFile.IsAt(other.FullName))
            .Select(other => other.Name)];
        string stem = Path.GetFileNameWithoutExtension(file.Name);
        return names.FirstOrDefault(name => Path.GetFileNameWithoutExtension(name).Equals(stem, StringComparison.OrdinalIgnoreCase))
            ?? (new CloseNames(names.Select(Path.GetFileNameWithoutExtension).OfType<string>()).To(stem) is { } close
                ? names.First(name => Path.GetFileNameWithoutExtension(name) == close) : null);
    }
}
