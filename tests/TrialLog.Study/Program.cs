using System.CommandLine;
using TrialLog.Study.Seasons;

RootCommand root = new("TrialLog's studies: simulated seasons and speed.")
{
    SeasonsCommand.Create(),
};
return root.Parse(args).Invoke();
