using System.CommandLine;
using TrialLog.Study.OddLogs;
using TrialLog.Study.Recordings;
using TrialLog.Study.Samples;
using TrialLog.Study.Screens;
using TrialLog.Study.Seasons;
using TrialLog.Study.Speed;

RootCommand root = new("TrialLog's studies: simulated seasons and speed.")
{
    SeasonsCommand.Create(),
    SeasonTablesCommand.Create(),
    BenchCommand.Create(),
    SensitivityCommand.Create(),
    TrialLog.Study.Squads.SquadWeeksCommand.Create(),
    OddLogsCommand.Create(),
    RecordingCommands.Samples(),
    RecordingCommands.Study(),
    RecordingCommands.Fuzz(),
    SamplesCommand.Create(),
    CsvSpeedCommand.Create(),
    ProcessSpeedCommand.Create(),
    LargeCommand.Create(),
    TrialLog.Study.Fuzzing.FuzzCommand.Create(),
    ScreensSpeedCommand.Create(),
    ScreenPicturesCommand.Create(),
};
return root.Parse(args).Invoke();
