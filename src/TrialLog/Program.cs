using TrialLog.Commands;
using TrialLog.Tuning;

// The screens, and the card on its own, need an analysis as soon as the logbook is read.
if (args.Length == 0 || args.Contains("next"))
    FirstAnalysis.MakeReady();
return CommandLineProgram.Run(args, ConsoleHost.OfThisProcess());
