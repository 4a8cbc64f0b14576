using System.Text;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Values;
using TrialLog.Logbook;

namespace TrialLog.Application.Files;

/// <summary>Writes a file whole or not at all: a full disk or a kill never leaves half of it, nor harms what was there.</summary>
internal static class WholeFile
{
    /// <summary>Writes text as UTF-8 without a mark.</summary>
    /// <exception cref="RequestException">It cannot be written; what was there is untouched.</exception>
    public static void Write(string file, string text) =>
        Write(file, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(text));

    /// <exception cref="RequestException">It cannot be written; what was there is untouched.</exception>
    public static void Write(string file, byte[] contents) => Write(file, stream => stream.Write(contents));

    /// <exception cref="RequestException">It cannot be written; what was there is untouched.</exception>
    public static void Write(string file, Action<Stream> write)
    {
        string path = Path.GetFullPath(file);
        if (Directory.Exists(path) || !Directory.Exists(Path.GetDirectoryName(path)))
            throw new RequestException($"{Quoted.Brief(file, 200)} cannot be written: " +
                $"{(Directory.Exists(path) ? "it is a folder" : "its folder is not there")}; name another file.");
        try
        {
            OutputFile.Write(path, write);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new RequestException($"{Quoted.Brief(file, 200)} cannot be written: {failure.Message}");
        }
    }
}
