using System.CommandLine;
using TrialLog.Application.Deciding;
using TrialLog.Application.Sizing;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Sizing;

/// <summary><c>triallog transfer</c>: the best length in every hull with every blade.</summary>
internal static class TransferCommand
{
    public static Command Build(CommandFrame frame)
    {
        Option<string?> hull = PaddlerCommand.Text("--hull", "Only this hull; with --length, the hull it is good in.", "NAME");
        Option<string?> paddle = PaddlerCommand.Text("--paddle", "Only this paddle; with --length, the paddle it is good with.", "NAME");
        Option<string?> length = PaddlerCommand.Text("--length", "Carry this length over by the rules alone, whatever the log says.", "L");
        var command = new Command("transfer", "The best length in every hull with every blade, tuned or carried over by rule.")
        {
            frame.Paddler, hull, paddle, length, frame.Json,
        };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            if (parsed.GetValue(length) is { } text)
                ByHand(frame, parsed, workspace, text, hull, paddle);
            else
                Tuned(frame, parsed, workspace, parsed.GetValue(hull), parsed.GetValue(paddle));
        });
        return command;
    }

    private static void Tuned(CommandFrame frame, ParseResult parsed, Workspace workspace, string? hull, string? paddle)
    {
        Paddler paddler = workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
        IReadOnlyList<CarriedRow> rows = CarryLengths.Tuned(workspace, paddler, hull, paddle);
        workspace.Remember(paddler);
        StandingSoreness? sore = ClearSoreness.Standing(workspace, paddler);
        if (parsed.GetValue(frame.Json))
        {
            JsonOutput.Write(frame.Out, TransferFacts.Of(paddler.Name, RestFirst.Of(sore), null, rows));
            return;
        }

        if (RestText.Instead(frame.Out, Quoted.Visible(paddler.Name), RestFirst.Page(sore), frame.ConsoleHost.Width))
        {
            TransferText.WriteForNow(frame.Out, rows, paddler.Unit);
            return;
        }

        frame.Out.WriteLine($"Best length for {Quoted.Visible(paddler.Name)} in every hull with every blade");
        TransferText.Write(frame.Out, rows, HullChecks.Questions(workspace.Logbook.Hulls(), paddler.Unit), paddler.Unit,
            frame.ConsoleHost.Width);
    }

    private static void ByHand(CommandFrame frame, ParseResult parsed, Workspace workspace, string text,
        Option<string?> hull, Option<string?> paddle)
    {
        // A length carried by the rules alone needs no paddler; one that is named gives the unit.
        Paddler? paddler = parsed.GetValue(frame.Paddler) is { } name ? workspace.PaddlerNamed(name)
            : workspace.Logbook.Paddlers() is [var only] ? only : null;
        LengthUnit unit = paddler?.Unit ?? workspace.Unit;
        Hull goodIn = workspace.HullNamed(
            parsed.GetValue(hull) ?? throw new RequestException("Say in which hull that length is good: --hull NAME."));
        Paddle goodWith = parsed.GetValue(paddle) is { } paddleName ? workspace.PaddleNamed(paddleName)
            : workspace.Logbook.Paddles() is [var single] ? single
            : throw new RequestException("Say with which paddle that length is good: --paddle NAME.");
        Length given = Length.Parse(text, unit);
        IReadOnlyList<CarriedRow> rows = CarryLengths.ByHand(workspace, paddler, given, goodIn, goodWith);
        if (parsed.GetValue(frame.Json))
        {
            JsonOutput.Write(
                frame.Out, TransferFacts.Of(paddler?.Name, null, new(goodIn.Name, goodWith.Name, JsonOutput.Inches(given)), rows));
            return;
        }

        frame.Out.WriteLine($"{Say.Quarter(given, unit)}, good in {Quoted.Visible(goodIn.Name)} with " +
            $"{Quoted.Visible(goodWith.Name)}: carried over by the rules alone");
        TransferText.Write(frame.Out, rows, HullChecks.Questions(workspace.Logbook.Hulls(), unit), unit, frame.ConsoleHost.Width);
    }
}
