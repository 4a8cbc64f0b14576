namespace TrialLog.Logbook;

/// <summary>
/// Writes a file that the user named, whole or not at all: under another name first, on the disk, then under its own. It is
/// its owner's alone, unless a file of other rights was there. Links are followed; devices and pipes are written to.
/// </summary>
public static class OutputFile
{
    /// <summary>Writes it.</summary>
    /// <param name="file">Its name.</param>
    /// <param name="write">Writes the contents.</param>
    /// <exception cref="IOException">It cannot be written; what was there is untouched.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written; what was there is untouched.</exception>
    public static void Write(string file, Action<Stream> write)
    {
        string path = Path.GetFullPath(file);
        if (new FileInfo(path) is { LinkTarget: not null } link)
            path = link.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? path;
        if (File.Exists(path) && IsNoFile(path))
        {
            using var device = new FileStream(path, FileMode.Open, FileAccess.Write);
            write(device);
            return;
        }

        string beside = $"{path}.{Guid.NewGuid():N}.part";
        try
        {
            using (FileStream stream = Create(
                beside, File.Exists(path) && !OperatingSystem.IsWindows() ? File.GetUnixFileMode(path) : null))
            {
                write(stream);
                stream.Flush(flushToDisk: true);
            }

            File.Move(beside, path, overwrite: true);
        }
        catch
        {
            Discard(beside);
            throw;
        }
    }

    /// <summary>Makes a file that is not there, for its owner alone unless told otherwise.</summary>
    internal static FileStream Create(string path, UnixFileMode? mode = null)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        var stream = new FileStream(path, options);
        if (mode is UnixFileMode kept && !OperatingSystem.IsWindows())
            File.SetUnixFileMode(stream.SafeFileHandle, kept);
        return stream;
    }

    /// <summary>Removes what was left half done; that it cannot be is not the trouble to tell.</summary>
    internal static void Discard(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
        }
    }

    // A pipe is opened both ways, since opening one end waits for the other.
    private static bool IsNoFile(string path)
    {
        if (OperatingSystem.IsWindows())
            return false;
        // In /dev/shm are files like any other.
        if ((path.StartsWith("/dev/", StringComparison.Ordinal) && !path.StartsWith("/dev/shm/", StringComparison.Ordinal))
            || path.StartsWith("/proc/", StringComparison.Ordinal))
            return true;
        using var open = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        return !open.CanSeek;
    }
}
