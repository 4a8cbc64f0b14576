namespace TrialLog.Logbook;

/// <summary>Opens a file that the user named to be read.</summary>
public static class InputFile
{
    /// <summary>Opens it.</summary>
    /// <param name="path">Its name.</param>
    /// <exception cref="IOException">There is none, it cannot be read, or it is a pipe or a device, which could be waited for without
    /// end.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public static FileStream Open(string path) => IsPipe(path)
        ? throw new IOException("it is a pipe or a device, not a file; save what comes through it in a file first")
        : File.OpenRead(path);

    /// <summary>
    /// Whether a name stands for a pipe or a device. It is opened both ways, since opening one end of a pipe waits for the other.
    /// </summary>
    public static bool IsPipe(string path)
    {
        if (OperatingSystem.IsWindows() || !File.Exists(path))
            return false;
        try
        {
            using var open = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);
            return !open.CanSeek;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // What may only be read is told as it is by whoever reads it.
            return false;
        }
    }
}
