using TrialLog.Domain;

namespace TrialLog.UseCases;

/// <summary>A file that the user named for something new: never the logbook itself.</summary>
internal static class NewFile
{
    /// <summary>Writes it whole or not at all.</summary>
    /// <exception cref="RequestException">It is the logbook, or cannot be written; what was there is untouched.</exception>
    public static void Write(Desk desk, string file, string text)
    {
        Refuse(desk, file);
        WholeFile.Write(file, text);
    }

    /// <summary>Writes it whole or not at all.</summary>
    /// <exception cref="RequestException">It is the logbook, or cannot be written; what was there is untouched.</exception>
    public static void Write(Desk desk, string file, byte[] contents)
    {
        Refuse(desk, file);
        WholeFile.Write(file, contents);
    }

    /// <exception cref="RequestException">It is the logbook, or has no name.</exception>
    public static void Refuse(Desk desk, string file)
    {
        if (string.IsNullOrWhiteSpace(file))
            throw new RequestException("A file needs a name.");
        if (string.Equals(Path.GetFullPath(file), desk.Logbook.Path, StringComparison.OrdinalIgnoreCase))
            throw new RequestException($"{Quoted.Brief(file, 200)} is the logbook itself; name another file.");
    }
}
