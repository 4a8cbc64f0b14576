using System.CommandLine;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.TestData.Recordings;
using TrialLog.TestData.Recordings.Simulation;

namespace TrialLog.Study.Recordings;

/// <summary>The commands about recordings.</summary>
internal static class RecordingCommands
{
    /// <summary><c>recordings</c>: makes the sample recordings.</summary>
    public static Command Samples()
    {
        Option<DirectoryInfo> folder = new(
            "--folder")
        { Description = "Where to put them.", DefaultValueFactory = _ => new DirectoryInfo("sample-sessions/recordings") };
        Command command = new("recordings", "Makes the sample recordings, over invented water.") { folder };
        command.SetAction(parsed => SampleRecordings.Write(parsed.GetValue(folder)!.FullName));
        return command;
    }

    /// <summary><c>recordings-study</c>: how well pieces are found.</summary>
    public static Command Study()
    {
        Option<int> outings = new("--outings") { Description = "Simulated outings for each watch.", DefaultValueFactory = _ => 400 };
        Option<int> seed = new("--seed") { Description = "Seed of the first outing.", DefaultValueFactory = _ => 1 };
        Option<string?> only = new("--only") { Description = "Of the outings by a card only the rows whose name has this." };
        Option<string?> explain = new("--explain") { Description = "Of the row of that name, the outings that were not read as paddled." };
        Command command = new("recordings-study",
            "Pieces, speeds and currents found in simulated outings against the truth; then time and memory for a day's recording.")
        {
            outings, seed, only, explain,
        };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(explain) is { } row)
            {
                CardStudy.Explain(Console.Out, parsed.GetValue(outings), parsed.GetValue(seed), row);
                return 0;
            }

            CardStudy.Run(Console.Out, parsed.GetValue(outings), parsed.GetValue(seed), parsed.GetValue(only));
            return parsed.GetValue(only) is null ? RecordingsStudy.Run(Console.Out, parsed.GetValue(outings), parsed.GetValue(seed)) : 0;
        });
        return command;
    }

    /// <summary><c>fuzz-recordings</c>: damaged files for as long as wanted.</summary>
    public static Command Fuzz()
    {
        Option<double> minutes = new("--minutes") { Description = "How long.", DefaultValueFactory = _ => 10 };
        Option<int> seed = new("--seed") { Description = "Seed of the first file.", DefaultValueFactory = _ => 1 };
        Command command = new("fuzz-recordings",
            "Reads damaged recordings; each must give pieces or one clear sentence, within five seconds.") { minutes, seed };
        command.SetAction(parsed => FuzzRun.Run(Console.Out, TimeSpan.FromMinutes(parsed.GetValue(minutes)), parsed.GetValue(seed)));
        return command;
    }
}
