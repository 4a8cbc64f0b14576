using System.CommandLine;
using TrialLog.Study.Recordings;
using TrialLog.Study.Samples;
using TrialLog.Study.Seasons;

RootCommand root = new("TrialLog's studies: simulated seasons and speed.")
{
    SeasonsCommand.Create(),
    RecordingCommands.Samples(),
    RecordingCommands.Study(),
    RecordingCommands.Fuzz(),
    SamplesCommand.Create(),
    CsvSpeedCommand.Create(),
};
return root.Parse(args).Invoke();
