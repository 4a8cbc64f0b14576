using System.CommandLine;
using TrialLog.Commands.Json;
using TrialLog.Domain;
using TrialLog.Recordings;
using TrialLog.UseCases;

namespace TrialLog.Commands;

/// <summary>The part of <c>import</c> that turns a recording into pieces: shown, corrected on a terminal, then saved.</summary>
internal static class ImportRecordingCommand
{
    public static ImportFacts Run(CommandFrame frame, ParseResult parsed, Desk desk, RecordingOptions options, Stream stream, string name)
    {
        Chosen chosen = desk.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
        RecordedOuting recording = ImportRecording.Read(desk, stream, name, parsed.GetValue(options.Again));
        foreach (string number in (parsed.GetValue(options.Drop) ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            recording = recording.Drop(RecordingQuestions.Place(recording, number));
        bool quiet = parsed.GetValue(frame.Json);
        IReadOnlyList<Length>? lengths = parsed.GetValue(options.Lengths) is { } text
            ? [.. text.Split(',').Select(one => Length.Parse(one, chosen.Paddler.Unit))]
            : ImportRecording.CardLengths(desk, chosen, recording.Date);

        var answers = new RecordingAnswers
        {
            Chosen = chosen,
            Lengths = lengths ?? [],
            Effort = parsed.GetValue(options.Effort) is { } hard ? Effort.Parse(hard) : null,
            Soreness = parsed.GetValue(options.Soreness) is { } sore ? Soreness.Parse(sore) : null,
            Wind = parsed.GetValue(options.Wind) is { } wind ? Values.Wind(wind) : null,
            Place = parsed.GetValue(options.Place),
        };
        if (!quiet)
            RecordingText.Write(frame.Out, recording, answers.Lengths, chosen.Paddler.Unit, frame.Surroundings.Width);
        if (frame.Surroundings.Interactive && !quiet)
        {
            if (new RecordingQuestions(frame.Surroundings, chosen.Paddler.Unit).Ask(recording, answers) is not { } settled)
                throw new RequestException("Nothing was saved.");
            (recording, answers) = settled;
        }
        else if (lengths is null)
        {
            throw new RequestException($"{recording.FileName}: no card was open for {chosen.Paddler.Name} in {chosen.Hull.Name} on {recording.Date:yyyy-MM-dd}, so say the length of each of the {recording.Kept.Count} pieces: --lengths L,L,…");
        }

        Outing outing = ImportRecording.Save(desk, recording, answers);
        if (!quiet)
        {
            frame.Out.WriteLine("Logged:");
            HistoryText.Write(frame.Out, outing, chosen.Hull, desk.Logbook.Paddles().ToDictionary(paddle => paddle.Id), chosen.Paddler.Unit);
            DoubtText.Write(frame, desk, outing);
        }

        return new ImportFacts(name, outing.Pieces.Count, 0, 0, [], recording.Mended.IsNothing ? [] : [recording.Mended.ToString()]);
    }
}
