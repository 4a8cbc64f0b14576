using System.CommandLine;
using TrialLog.TestData.Samples;

namespace TrialLog.Study.Samples;

/// <summary><c>samples</c>: makes the sample sessions anew; the same bytes on every machine.</summary>
internal static class SamplesCommand
{
    public static Command Create()
    {
        Option<DirectoryInfo> folder = new(
            "--out")
        { Description = "Folder to write to.", DefaultValueFactory = _ => new DirectoryInfo("sample-sessions") };
        Command command = new("samples", "Makes the sample sessions: invented logbooks as CSV.") { folder };
        command.SetAction(parsed =>
        {
            DirectoryInfo to = Directory.CreateDirectory(parsed.GetRequiredValue(folder).FullName);
            foreach (SampleSession sample in SampleSession.All)
            {
                File.WriteAllBytes(Path.Combine(to.FullName, sample.FileName), sample.Bytes());
                Console.WriteLine($"{sample.FileName}, random stream {sample.Stream}");
            }
        });
        return command;
    }
}
