using Dapper;
using TrialLog.Logbook;

namespace TrialLog.Tests.Logbook;

/// <summary>A folder for logbooks that goes when the test ends.</summary>
internal sealed class ScratchFolder : IDisposable
{
    private static readonly Lazy<byte[]> NewLogbook = new(() =>
    {
        using var folder = new ScratchFolder();
        folder.Open().Dispose();
        return System.IO.File.ReadAllBytes(folder.File());
    });

    public string Path { get; } = Directory.CreateTempSubdirectory("triallog-test-").FullName;

    public string File(string name = "season.triallog") => System.IO.Path.Combine(Path, name);

    public LogbookFile Open(string name = "season.triallog") => LogbookFile.Open(File(name));

    /// <summary>
    /// Opens a logbook without waiting for the disk, for tests that write thousands of changes: a power cut is not among them.
    /// </summary>
    public LogbookFile OpenHastily(string name = "season.triallog")
    {
        if (!System.IO.File.Exists(File(name)))
            System.IO.File.WriteAllBytes(File(name), NewLogbook.Value);
        LogbookFile log = Open(name);
        log.Connection.Execute("PRAGMA synchronous = OFF");
        return log;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
