using TrialLog.Commands;

return CommandLineProgram.Run(args, Surroundings.OfThisProcess());
