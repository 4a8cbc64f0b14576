using TrialLog.Logbook;

namespace TrialLog.Tests.Logbook;

/// <summary>A folder for logbooks that goes when the test ends.</summary>
internal sealed class ScratchFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("triallog-test-").FullName;

    public string File(string name = "season.triallog") => System.IO.Path.Combine(Path, name);

    public LogbookFile Open(string name = "season.triallog") => LogbookFile.Open(File(name));

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
