using System.CommandLine;
using System.Globalization;
using TrialLog.Application.Files;
using TrialLog.Application.Logging;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Pieces;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;

namespace TrialLog.Commands;

/// <summary>The part of <c>import</c> that turns a recording into pieces: shown, corrected, then saved.</summary>
internal sealed class ImportRecordingCommand(CommandFrame frame, ParseResult parsed, Workspace workspace, RecordingOptions options)
{
    private readonly bool quiet = parsed.GetValue(frame.Json);
    private readonly List<RecordingFacts> facts = [];

    /// <summary>What became of the file; what is asked while answering for programs is among it, with nothing saved.</summary>
    /// <exception cref="RequestException">Something is not settled; nothing of that outing was saved.</exception>
    public ImportFacts Run(Stream stream, string name)
    {
        IReadOnlyList<RecordedOuting> outings = ImportRecording.ReadAll(
            workspace, stream, name, parsed.GetValue(options.Again), parsed.GetValue(options.EvenIfCutOff));
        int added = 0;
        var warnings = new List<string>();
        foreach (RecordedOuting recording in Wanted(outings))
        {
            added += One(recording)?.Pieces.Count ?? 0;
            if (!recording.Mended.IsNothing)
                warnings.Add(recording.Mended.ToString());
        }

        return new ImportFacts(name, added, 0, 0, [], warnings, facts);
    }

    private IReadOnlyList<RecordedOuting> Wanted(IReadOnlyList<RecordedOuting> outings)
    {
        string? which = parsed.GetValue(options.Outing);
        if (outings.Count == 1 && which is null)
            return outings;
        if (which is null && frame.ConsoleHost.Interactive && !quiet)
        {
            frame.Out.WriteLine($"{outings[0].FileName} holds {outings.Count} outings:");
            frame.Out.WriteLine(ImportRecording.Listed(outings));
            frame.Out.Write("Which one, or all? ");
            frame.Out.Flush();
            which = frame.ConsoleHost.In.ReadLine();
        }

        if (string.Equals(which?.Trim(), "all", StringComparison.OrdinalIgnoreCase))
            return outings;
        return int.TryParse(which, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && outings.FirstOrDefault(outing => outing.Number == number) is { } one
            ? [one]
            : throw new RequestException($"{outings[0].FileName} holds {Say.Count(outings.Count, "outing")} that " +
                $"{(outings.Count == 1 ? "is" : "are")} not imported yet; take each or one with --outing N or --outing all:" +
                $"{Environment.NewLine}{ImportRecording.Listed(outings)}");
    }

    private Outing? One(RecordedOuting recording)
    {
        Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
        LengthUnit unit = chosen.Paddler.Unit;
        if (parsed.GetValue(options.Start) is { } start)
            recording = recording.StartingAt(RecordingWords.Start(start));
        if (parsed.GetValue(options.EvenIfCutOff))
            recording = recording.Confirm(QuestionKind.CutOff);
        GivenCard? given = OpenCard.Of(workspace, chosen, recording.Date);
        IReadOnlyList<Length>? typed = parsed.GetValue(options.Lengths) is { } text ? RecordingLengths.Read(text, given, unit) : null;
        recording = ImportRecording.HeldAgainst(recording, typed, given, unit).Recording;
        if (parsed.GetValue(options.As) is { } shape)
            recording = recording.As(RecordingWords.Shape(shape));
        (recording, IReadOnlyList<Length>? mended) = MendRecording.By(recording, options.Mends(parsed), unit);
        (recording, RecordingLengths lengths) = ImportRecording.HeldAgainst(recording, mended ?? typed, given, unit);
        if (parsed.GetValue(options.AsShown))
        {
            foreach (RecordingQuestion asked in recording.Questions.Where(q => q.CanBeConfirmed))
                recording = recording.Confirm(asked.Kind);
        }

        return Settled(recording, chosen, lengths);
    }

    private Outing? Settled(RecordedOuting recording, Chosen chosen, RecordingLengths lengths)
    {
        var answers = new RecordingAnswers
        {
            Chosen = chosen,
            Lengths = lengths.All,
            Efforts = RecordingAnswers.EffortsIn(parsed.GetValue(options.Effort)),
            Soreness = parsed.GetValue(options.Soreness) is { } sore ? Soreness.Parse(sore) : null,
            Wind = TextForms.Wind.ReadIfAny(parsed.GetValue(options.Wind)),
            Place = parsed.GetValue(options.Place),
        };
        if (!quiet)
            RecordingText.Write(frame.Out, recording, lengths, chosen.Paddler.Unit, frame.ConsoleHost.Width);
        if (parsed.GetValue(options.Look))
        {
            facts.Add(RecordingFacts.Of(recording, lengths, chosen.Paddler.Unit, saved: false));
            return null;
        }

        if (parsed.GetValue(options.Over))
            return Done(recording, answers, ImportRecording.LayOver(workspace, recording, TheOneOfThatTime(recording, chosen)));
        if (!parsed.GetValue(options.Beside) && ImportRecording.SameTime(workspace, chosen, recording) is [var other, ..])
            throw Unsettled(recording, lengths, chosen,
                $"{recording.FileName}: the log has an outing of that time, {FindOuting.NameOf(other)} with {other.Pieces.Count} pieces. "
                + "Lay the recording over it, so that its times stay and heart rate and the rest come in, with --over; save it as "
                + "another outing with --beside.");
        if (frame.ConsoleHost.Interactive && !quiet)
        {
            if (new RecordingQuestions(frame.ConsoleHost, chosen.Paddler.Unit, lengths.Given).Ask(recording, answers) is not { } settled)
                throw new RequestException("Nothing was saved.");
            (recording, answers) = settled;
        }
        else if (lengths.All.Count == 0)
        {
            throw Unsettled(recording, lengths, chosen,
                $"{recording.FileName}: no card was open for {chosen.Paddler.Name} in {chosen.Hull.Name} " +
                $"on {recording.Date:yyyy-MM-dd}, so say the length of each of the {recording.Kept.Count} pieces: --lengths L,L,…");
        }
        else if (recording.Questions is [var question, ..])
        {
            throw Unsettled(recording, lengths, chosen, !question.CanBeConfirmed ? question.Says
                : question.Kind == QuestionKind.Clock
                    ? $"{question.Says} Type it with --start \"2026-05-09 10:00\", or if the clock is right: " +
                    "--as-shown"
                : $"{question.Says} If it is right as shown: --as-shown");
        }

        return Done(recording, answers, ImportRecording.Save(workspace, recording, answers));
    }

    private Outing Done(RecordedOuting recording, RecordingAnswers answers, Outing outing)
    {
        facts.Add(RecordingFacts.Of(recording, new RecordingLengths(answers.Lengths), answers.Chosen.Paddler.Unit, saved: true));
        if (!quiet)
        {
            frame.Out.WriteLine("Logged:");
            HistoryText.Write(frame.Out, outing, answers.Chosen.Hull, workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id),
                answers.Chosen.Paddler.Unit);
            DoubtText.Write(frame, workspace, outing);
        }

        return outing;
    }

    private Outing TheOneOfThatTime(RecordedOuting recording, Chosen chosen) =>
        ImportRecording.SameTime(workspace, chosen, recording) is [var only] ? only
        : throw new RequestException($"There is not just one outing of that time in the log, {recording.Date:yyyy-MM-dd} " +
            $"{recording.Time:HH:mm}, to lay {recording.FileName} over.");

    // A program gets what was found, so that it can settle what is asked.
    private RequestException Unsettled(RecordedOuting recording, RecordingLengths lengths, Chosen chosen, string question)
    {
        if (quiet)
            JsonOutput.Write<IReadOnlyList<RecordingFacts>>(
                frame.Out, [.. facts, RecordingFacts.Of(recording, lengths, chosen.Paddler.Unit, saved: false)]);
        return new RequestException(question);
    }
}
