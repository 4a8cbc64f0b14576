using System.CommandLine;
using TrialLog.Application.Deciding;
using TrialLog.Application.Files;
using TrialLog.Application.Logging;
using TrialLog.Application.Next;
using TrialLog.Application.Setup;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Coach;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands;

/// <summary><c>triallog next</c>: the next trial card and what the log says.</summary>
internal static class NextCommand
{
    public static Command Build(CommandFrame frame)
    {
        TrialOptions trial = new();
        Option<string?> lengths = PaddlerCommand.Text(
            "--lengths", "A coach's lengths instead of the program's; both cards are kept.", "L,L,...");
        Option<string?> by = PaddlerCommand.Text("--by", "With --lengths: whose card it is.", "WHO");
        Option<string?> because = PaddlerCommand.Text("--because", "With --lengths: why.", "TEXT");
        Option<string?> blind = PaddlerCommand.Text("--blind", "The lengths go to the partner's file, letters to the paddler.", "FILE");
        var command = new Command("next", "The next trial card, and what the log says so far.") { frame.Paddler, frame.Hull, frame.Paddle,
            frame.Json };
        Option<string?> watch = PaddlerCommand.Text(
            "--watch", "Also the card as a workout for the watch: a step a piece, named by its length, rests between.", "FILE.fit");
        foreach (Option option in trial.All.Concat([lengths, by, because, blind, watch]))
            command.Options.Add(option);
        var week = new Coach.WeekOptions(command);
        command.Validators.Add(result =>
        {
            if ((result.GetValue(by) ?? result.GetValue(because)) is not null && result.GetValue(lengths) is null)
                result.AddError("--by and --because go with --lengths L,L,…");
        });
        frame.OnDesk(command, (parsed, workspace) =>
        {
            if (week.IsSquad(parsed))
            {
                week.ShowSquad(frame, parsed, workspace);
                return;
            }

            Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            string? partner = parsed.GetValue(blind);
            if (partner is not null)
                NewFile.Refuse(workspace, partner);
            GivenCard? open = OpenCard.Of(workspace, chosen);
            CardWish wish = new()
            {
                ThisOuting = trial.Read(parsed),
                Lengths = parsed.GetValue(lengths) is { } text
                    ? [.. text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                    .Select(TextForms.Length(chosen.Paddler.Unit).Read)] : [],
                By = parsed.GetValue(by),
                Because = parsed.GetValue(because),
                // While a blind card is open nothing shows its lengths, whatever is asked.
                Blind = partner is not null || open is { Blind: true },
            };
            (Analysis analysis, GivenCard card) = NextOuting.For(workspace, chosen, wish);
            if (partner is not null)
                NewFile.Write(workspace, partner,
                    BlindWords.ForThePartner(card, chosen.Paddler, chosen.Hull.Name, chosen.Paddle.Name, workspace.Today));
            week.PutIntoCalendar(parsed, workspace, [(analysis, card.By is null && !card.Blind ? null : card)]);
            if (parsed.GetValue(frame.Json))
                JsonOutput.Write(frame.Out, NextFacts.Of(analysis, card));
            else
                NextText.Write(frame.Out, analysis, card, frame.ConsoleHost.Width, Decided(workspace, chosen, analysis));
            if (partner is not null && !parsed.GetValue(frame.Json))
                frame.Out.WriteLine($"The lengths are in {Quoted.Brief(partner, 200)}, for your partner alone.");
            if (PaddleOwners.AreNew(workspace) && !parsed.GetValue(frame.Json))
                frame.Out.WriteLine("Nobody said yet whose some paddles are; say it once: triallog paddle owners");
            week.SayCalendar(frame, parsed, workspace);
            if (parsed.GetValue(watch) is { } file)
                WatchText.Write(frame, workspace, chosen, file, quiet: parsed.GetValue(frame.Json));
        });
        return command;
    }

    private static string? Decided(Workspace workspace, Chosen chosen, Analysis analysis)
    {
        if (Decide.Latest(workspace, chosen) is not { } decision)
            return null;
        LengthUnit unit = chosen.Paddler.Unit;
        int since = Decide.OutingsSince(decision, workspace.Logbook.Outings(chosen.Paddler.Id));
        return DecisionWords.WithAfter(decision, since, analysis, unit);
    }
}
