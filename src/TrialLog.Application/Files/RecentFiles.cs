using TrialLog.Application.Workspaces;

namespace TrialLog.Application.Files;

/// <summary>
/// The files imported last on this machine, to be named again without typing. Of a recording only the folder is kept: its name may be that
/// of a place, and it comes in once.
/// </summary>
internal static class RecentFiles
{
    private const string Name = "recent-files";

    private const int Most = 8;

    /// <summary>Their paths, the latest first; those that are gone are left out.</summary>
    public static IReadOnlyList<string> Of(Workspace workspace) =>
        [.. (workspace.Logbook.Setting(Name) ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(Path.Exists)];

    /// <summary>Puts the folder of a recording first.</summary>
    public static void RememberFolderOf(Workspace workspace, string path)
    {
        if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder)
            Remember(workspace, folder.EndsWith(Path.DirectorySeparatorChar) ? folder : folder + Path.DirectorySeparatorChar);
    }

    /// <summary>Puts a path first.</summary>
    public static void Remember(Workspace workspace, string path)
    {
        string full = Path.GetFullPath(path);
        if (!full.Contains('\n', StringComparison.Ordinal) && !workspace.Logbook.IsReadOnly)
            workspace.Logbook.SaveSetting(Name, string.Join('\n', Of(workspace).Where(one => one != full).Prepend(full).Take(Most)));
    }
}
