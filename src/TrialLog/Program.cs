using TrialLog.Commands;

return CommandLineProgram.Run(args, ConsoleHost.OfThisProcess());
