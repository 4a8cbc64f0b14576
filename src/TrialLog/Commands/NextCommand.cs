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
        var week = new Coach.WeekOptions(command);
        frame.OnDesk(command, (parsed, desk) =>
        {
            if (week.IsSquad(parsed))
            {
                week.ShowSquad(frame, parsed, desk);
                return;
            }

            Chosen chosen = desk.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            Analysis analysis = NextOuting.For(desk, chosen);
            week.PutIntoCalendar(parsed, desk, [analysis]);
            if (parsed.GetValue(frame.Json))
                Facts.Write(frame.Out, NextFacts.Of(analysis));
            else
                NextText.Write(frame.Out, analysis, frame.Surroundings.Width, desk.IsSore(chosen.Paddler));
            week.SayCalendar(frame, parsed, desk);
        });
        return command;
    }
}
