using System.Runtime.CompilerServices;
using TrialLog;
using TrialLog.Commands;
using TrialLog.Tuning;

BuiltInSqlite.Use();
// The screens, and the card on its own, need an analysis as soon as the logbook is read; machine code is always ready.
if (RuntimeFeature.IsDynamicCodeSupported && (args.Length == 0 || args.Contains("next")))
    FirstAnalysis.MakeReady();
return CommandLineProgram.Run(args, ConsoleHost.OfThisProcess());
