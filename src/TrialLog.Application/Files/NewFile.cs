using TrialLog.Application.Workspaces;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Files;

/// <summary>A file that the user named for something new: never the logbook itself.</summary>
internal static class NewFile
{
    /// <summary>Writes it whole or not at all.</summary>
    /// <exception cref="RequestException">It is the logbook, or cannot be written; what was there is untouched.</exception>
    public static void Write(Workspace workspace, string file, string text)
    {
        Refuse(workspace, file);
        WholeFile.Write(file, text);
    }

    /// <summary>Writes it whole or not at all.</summary>
    /// <exception cref="RequestException">It is the logbook, or cannot be written; what was there is untouched.</exception>
    public static void Write(Workspace workspace, string file, byte[] contents)
    {
        Refuse(workspace, file);
        WholeFile.Write(file, contents);
    }

    /// <summary>Writes it whole or not at all.</summary>
    /// <exception cref="RequestException">It is the logbook, or cannot be written; what was there is untouched.</exception>
    public static void Write(Workspace workspace, string file, Action<Stream> write)
    {
        Refuse(workspace, file);
        WholeFile.Write(file, write);
    }

    /// <exception cref="RequestException">It is the logbook, or has no name.</exception>
    public static void Refuse(Workspace workspace, string file)
    {
        if (string.IsNullOrWhiteSpace(file))
            throw new RequestException("A file needs a name.");
        if (string.Equals(Path.GetFullPath(file), workspace.Logbook.Path, StringComparison.OrdinalIgnoreCase))
            throw new RequestException($"{Quoted.Brief(file, 200)} is the logbook itself; name another file.");
    }
}
