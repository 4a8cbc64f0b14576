using System.CommandLine;
using TrialLog.Application.Deciding;
using TrialLog.Application.Setup;
using TrialLog.Application.Sizing;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
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

/// <summary><c>triallog start-length</c>: where a search starts, from body measures.</summary>
internal static class StartLengthCommand
{
    public static Command Build(CommandFrame frame)
    {
        BodyOptions body = new();
        var save = new Option<bool>("--save") { Description = "Keep the measures for the paddler." };
        var steps = new Option<bool>("--steps") { Description = "How to take the measures alone, with a tape." };
        Option<string?> unit = PaddlerCommand.Text("--unit", "Unit of bare lengths and of the answer: in or cm.", "in|cm");
        Option<string?> hull = PaddlerCommand.Text("--hull", "For this hull; else for a solo canoe.", "NAME");
        var command = new Command("start-length",
            "Where a search starts, from the best of what is known of the body; what would improve it most.") { frame.Paddler, hull };
        foreach (Option<string?> option in body.All)
            command.Options.Add(option);
        command.Options.Add(unit);
        command.Options.Add(save);
        command.Options.Add(steps);
        command.Options.Add(frame.Json);
        frame.OnDesk(command, (parsed, workspace) =>
        {
            bool json = parsed.GetValue(frame.Json);
            if (parsed.GetValue(steps) && !json)
            {
                WriteSteps(frame.Out, frame.ConsoleHost.Width);
                return;
            }

            // Measures without a name are anybody's: a coach on the beach needs no paddler in the logbook for a first length.
            bool anybodys = body.AnyGiven(parsed) && parsed.GetValue(frame.Paddler) is null && !parsed.GetValue(save);
            Paddler? paddler = anybodys ? null : workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
            LengthUnit shown = TextForms.Unit.ReadIfAny(parsed.GetValue(unit)) ?? paddler?.Unit ?? workspace.Unit;
            PaddlerDetails given = body.Read(parsed, shown);
            BodyMeasures measures = given.Over(paddler?.Body ?? BodyMeasures.Unknown);
            StartLengthAnswer answer = FindStartLength.Of(measures, given.KnownLength ?? paddler?.KnownLength, shown,
                parsed.GetValue(hull) is { } asked ? workspace.HullNamed(asked) : null, workspace.Logbook.Hulls());
            if (parsed.GetValue(save))
                SetUpPaddler.Change(workspace, paddler!.Name, given);
            StandingSoreness? sore = paddler is null ? null : ClearSoreness.Standing(workspace, paddler);
            if (json)
                JsonOutput.Write(frame.Out, StartLengthFacts.Of(paddler?.Name, RestFirst.Of(sore), answer, parsed.GetValue(steps)));
            else if (RestText.Instead(frame.Out, Quoted.Visible(paddler?.Name), RestFirst.Page(sore), frame.ConsoleHost.Width))
                WriteSaved(frame.Out, parsed.GetValue(save));
            else
                Write(frame.Out, paddler, answer, parsed.GetValue(save), frame.ConsoleHost.Width);
        }, begins: true);
        return command;
    }

    private static void Write(TextWriter to, Paddler? paddler, StartLengthAnswer answer, bool saved, int width)
    {
        LengthUnit unit = answer.Unit;
        to.WriteLine(
            $"Start length{(paddler is null ? "" : $" for {Quoted.Visible(paddler.Name)}")}" +
                $"{(answer.Hull is null ? "" : $" in {Quoted.Visible(answer.Hull.Name)}")}: {Say.Quarter(answer.InHull, unit)}");
        to.WriteLine();
        Wrapped.Write(to, $"{Say.Range(answer.Likely.Low, answer.Likely.High, unit)} (9 times in 10)", width, "  Likely range  ", 16);
        Wrapped.Write(to, $"{(answer.Hull is null ? "a solo canoe" : Quoted.Visible(answer.Hull.Name))}, a blade of " +
            $"{Say.Quarter(ExposedShaftRule.ReferenceBlade, unit)}; for your own: triallog transfer", width, "  Meant for     ", 16);
        if (answer.HandSpacing is { } hands)
            Wrapped.Write(to, $"about {Say.Quarter(hands, unit)} apart, twice the shoulder breadth (common practice, no source)", width,
                "  Hands         ", 16);
        else
            Wrapped.Write(to, "both elbows at 90° overhead: about as far apart as the elbows (common practice, no source)", width,
                "  Hands         ", 16);
        to.WriteLine();
        Wrapped.Write(to, answer.Explanation, width, "Why: ", 5);
        if (answer.HullNote is { } note)
            Wrapped.Write(to, note, width, "Hull: ", 6);
        Wrapped.Write(to, answer.WhatNext, width, "Next: ", 6);
        foreach (string question in answer.Questions)
            Wrapped.Write(to, question, width, "Please check: ", 14);
        if (answer.Improvements.Count > 0)
            to.WriteLine("How to measure alone: triallog start-length --steps");
        WriteSaved(to, saved);
    }

    private static void WriteSaved(TextWriter to, bool saved)
    {
        if (saved)
            to.WriteLine("Saved. To undo: triallog undo");
    }

    private static void WriteSteps(TextWriter to, int width)
    {
        Wrapped.Write(to, Measuring.Caution, width, "Caution: ", 9);
        foreach (Measuring measuring in Measuring.All)
        {
            to.WriteLine();
            to.WriteLine(measuring.What);
            for (int i = 0; i < measuring.Steps.Count; i++)
                Wrapped.Write(to, measuring.Steps[i], width, $"  {i + 1}. ", 5);
        }

        to.WriteLine();
        Wrapped.Write(to, StartWords.HandsQuickly, width, "Hands: ", 7);
    }
}
