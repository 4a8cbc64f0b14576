using System.Globalization;
using TrialLog.Application.Files;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
using TrialLog.Plots;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Pieces;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;

namespace TrialLog.Commands;

/// <summary>Lets a person correct the pieces found in a recording, and asks what it cannot tell.</summary>
internal sealed class RecordingQuestions(ConsoleHost surroundings, LengthUnit unit, GivenCard? given)
{
    private const string Words = "save · drop N · keep N · merge N (with the next) · split N [M:SS] · move N start|end M:SS · add M:SS " +
        "M:SS · undo · as out-and-back|one-way|easy-way-back|watch · yes · lengths L,L,… · effort E[,E,…] · soreness S · wind B · quit";

    /// <summary>The recording and the answers as settled, or null where the user quits.</summary>
    public (RecordedOuting Recording, RecordingAnswers Answers)? Ask(RecordedOuting recording, RecordingAnswers answers)
    {
        Wrapped.Write(surroundings.Out, Words, surroundings.Width);
        while (true)
        {
            surroundings.Out.Write("> ");
            surroundings.Out.Flush();
            if (surroundings.In.ReadLine() is not { } line)
                return null;
            string[] words = line.Split(' ', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            string verb = words.Length == 0 ? "" : words[0].ToLowerInvariant();
            try
            {
                switch (verb)
                {
                    case "":
                        continue;
                    case "quit" or "q":
                        return null;
                    case "save" or "s" when answers.Lengths.Count == 0:
                        surroundings.Out.WriteLine("Say the length of each piece first: lengths L,L,…");
                        continue;
                    case "save" or "s" when recording.Questions is [var question, ..]:
                        Wrapped.Write(surroundings.Out, question.Says + (question.CanBeConfirmed ? " If it is right as shown: yes" : ""),
                            surroundings.Width);
                        continue;
                    case "yes" or "y":
                        if (recording.Questions.FirstOrDefault(q => q.CanBeConfirmed) is { } answered)
                            recording = recording.Confirm(answered.Kind);
                        continue;
                    case "save" or "s" when answers.EffortProblem(recording.Kept.Count) is { } problem:
                        Wrapped.Write(surroundings.Out, problem, surroundings.Width);
                        continue;
                    case "save" or "s":
                        return (recording, answers);
                    default:
                        (recording, answers) = Corrected(recording, answers, verb, words);
                        RecordingText.Write(surroundings.Out, recording, new RecordingLengths(answers.Lengths, given), unit,
                            surroundings.Width);
                        break;
                }
            }
            catch (Exception wrong) when (wrong is InvalidValueException or RecordingException or IndexOutOfRangeException)
            {
                surroundings.Out.WriteLine(wrong is IndexOutOfRangeException ? $"“{verb}” needs more words: {Words}" : wrong.Message);
            }
        }
    }

    private (RecordedOuting, RecordingAnswers) Corrected(RecordedOuting recording, RecordingAnswers answers, string verb, string[] words) =>
        verb switch
        {
            "drop" => (recording.Drop(MendRecording.Place(recording, words[1])), answers),
            "keep" => (recording.Keep(MendRecording.Place(recording, words[1])), answers),
            "merge" => (recording.Merge(MendRecording.Place(recording, words[1])), answers),
            "split" => (recording.Split(MendRecording.Place(recording, words[1]), words.Length > 2 ? At(words[2])
                : MendRecording.CutAt(recording, MendRecording.Place(recording, words[1]), "turn")), answers),
            "move" => (Moved(recording, MendRecording.Place(recording, words[1]), words[2], At(words[3])), answers),
            "add" => (recording.Add(At(words[1]), At(words[2])), answers),
            "undo" => (recording.Before ?? throw new InvalidValueException("There is nothing to undo."), answers),
            "as" => (recording.As(RecordingWords.Shape(words[1])), answers),
            "lengths" =>
                WithLengths(recording, answers, RecordingLengths.Read(string.Join(' ', words[1..]), given, unit)),
            "effort" => (recording, answers with { Efforts = RecordingAnswers.EffortsIn(string.Join(' ', words[1..])) }),
            "soreness" => (recording, answers with { Soreness = Soreness.Parse(words[1]) }),
            "wind" => (recording, answers with { Wind = TextForms.Wind.Read(words[1]) }),
            _ => throw new InvalidValueException($"“{Quoted.Brief(verb)}” is none of: {Words}"),
        };

    private (RecordedOuting, RecordingAnswers) WithLengths(
        RecordedOuting recording, RecordingAnswers answers, IReadOnlyList<Length> typed) =>
        (ImportRecording.HeldAgainst(recording, typed, given, unit).Recording, answers with { Lengths = typed });

    private static RecordedOuting Moved(RecordedOuting recording, int piece, string edge, TimeSpan to) => edge.ToLowerInvariant() switch
    {
        "start" => recording.MoveEdge(piece, 0, LegEdge.Start, to),
        "end" => recording.MoveEdge(piece, recording.Proposals[piece].Legs.Count - 1, LegEdge.End, to),
        _ => throw new InvalidValueException($"“{Quoted.Brief(edge)}” is neither start nor end."),
    };

    private static TimeSpan At(string text) => TimeSpan.FromMilliseconds(PieceTime.Parse(text).Milliseconds);
}
