using System.CommandLine;
using TrialLog.Commands.Json;
using TrialLog.Tuning;
using TrialLog.UseCases;

namespace TrialLog.Commands;

/// <summary><c>triallog next</c>: the next trial card and what the log says.</summary>
internal static class NextCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("next", "The next trial card, and what the log says so far.") { frame.Paddler, frame.Hull, frame.Paddle, frame.Json };
        frame.OnDesk(command, (parsed, desk) =>
        {
            Chosen chosen = desk.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            Analysis analysis = NextOuting.For(desk, chosen);
            if (parsed.GetValue(frame.Json))
                Facts.Write(frame.Out, NextFacts.Of(analysis));
            else
                NextText.Write(frame.Out, analysis, frame.Surroundings.Width);
        });
        return command;
    }
}
