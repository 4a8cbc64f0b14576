using System.CommandLine;
using TrialLog.Application.Files;
using TrialLog.Application.Text;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Pieces;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;

namespace TrialLog.Commands;

/// <summary>The part of <c>import</c> that turns a recording into pieces: shown, corrected on a terminal, then saved.</summary>
internal static class ImportRecordingCommand
{
    public static ImportFacts Run(CommandFrame frame, ParseResult parsed, Workspace workspace, RecordingOptions options, Stream stream, string name)
    {
        Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
        RecordedOuting recording = ImportRecording.Read(workspace, stream, name, parsed.GetValue(options.Again));
        foreach (string number in (parsed.GetValue(options.Drop) ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            recording = recording.Drop(RecordingQuestions.Place(recording, number));
        bool quiet = parsed.GetValue(frame.Json);
        IReadOnlyList<Length>? lengths = parsed.GetValue(options.Lengths) is { } text
            ? [.. text.Split(',').Select(one => Length.Parse(one, chosen.Paddler.Unit))]
            : ImportRecording.CardLengths(workspace, chosen, recording.Date);

        var answers = new RecordingAnswers
        {
            Chosen = chosen,
            Lengths = lengths ?? [],
            Effort = parsed.GetValue(options.Effort) is { } hard ? Effort.Parse(hard) : null,
            Soreness = parsed.GetValue(options.Soreness) is { } sore ? Soreness.Parse(sore) : null,
            Wind = TextForms.Wind.ReadIfAny(parsed.GetValue(options.Wind)),
            Place = parsed.GetValue(options.Place),
        };
        if (!quiet)
            RecordingText.Write(frame.Out, recording, answers.Lengths, chosen.Paddler.Unit, frame.ConsoleHost.Width);
        if (frame.ConsoleHost.Interactive && !quiet)
        {
            if (new RecordingQuestions(frame.ConsoleHost, chosen.Paddler.Unit).Ask(recording, answers) is not { } settled)
                throw new RequestException("Nothing was saved.");
            (recording, answers) = settled;
        }
        else if (lengths is null)
        {
            throw new RequestException($"{recording.FileName}: no card was open for {chosen.Paddler.Name} in {chosen.Hull.Name} on {recording.Date:yyyy-MM-dd}, so say the length of each of the {recording.Kept.Count} pieces: --lengths L,L,…");
        }

        Outing outing = ImportRecording.Save(workspace, recording, answers);
        if (!quiet)
        {
            frame.Out.WriteLine("Logged:");
            HistoryText.Write(frame.Out, outing, chosen.Hull, workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id), chosen.Paddler.Unit);
            DoubtText.Write(frame, workspace, outing);
        }

        return new ImportFacts(name, outing.Pieces.Count, 0, 0, [], recording.Mended.IsNothing ? [] : [recording.Mended.ToString()]);
    }
}
