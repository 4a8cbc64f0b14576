using TrialLog.Application.Logging;
using TrialLog.Application.Next;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Pieces;

namespace TrialLog.Application.Files;

/// <summary>What a recording cannot tell, as the user answered.</summary>
internal sealed record RecordingAnswers
{
    public required Chosen Chosen { get; init; }

    /// <summary>The length of each piece, in order.</summary>
    public required IReadOnlyList<Length> Lengths { get; init; }

    public Effort? Effort { get; init; }

    public Soreness? Soreness { get; init; }

    public Beaufort? Wind { get; init; }

    public string? Place { get; init; }
}

/// <summary>Turns a recording, its pieces found and corrected, into a logged outing.</summary>
internal static class ImportRecording
{
    /// <summary>Reads a recording and finds its pieces.</summary>
    /// <exception cref="RequestException">It cannot be read, or was imported before.</exception>
    public static RecordedOuting Read(Workspace workspace, Stream stream, string fileName, bool again = false)
    {
        RecordedOuting recording;
        try
        {
            recording = RecordingReader.Read(stream, fileName, TimeZoneInfo.Local);
        }
        catch (RecordingException failure)
        {
            throw new RequestException(failure.Message);
        }

        return !again && workspace.Logbook.HasImported(recording.Hash)
            ? throw new RequestException($"{recording.FileName} was imported before; nothing was added. If its outing was deleted since, import it with --again.")
            : recording;
    }

    /// <summary>The lengths that the open card gives to the pieces of an outing of that day, in order; null where no card was open then.</summary>
    public static IReadOnlyList<Length>? CardLengths(Workspace workspace, Chosen chosen, DateOnly? day = null) => OpenCard.Of(workspace, chosen, day ?? workspace.Today)?.Card.Lengths;

    /// <summary>Saves the pieces that count as one outing.</summary>
    /// <exception cref="RequestException">The number of lengths is not the number of pieces, or a piece cannot be right; nothing was saved.</exception>
    public static Outing Save(Workspace workspace, RecordedOuting recording, RecordingAnswers answers)
    {
        if (recording.QuestionFor(answers.Lengths.Count) is { } question)
            throw new RequestException(question);
        return LogOuting.Save(
            workspace,
            new OutingEntry
            {
                Paddler = answers.Chosen.Paddler,
                Hull = answers.Chosen.Hull,
                Date = recording.Date,
                Time = recording.Time,
                Wind = answers.Wind,
                Place = answers.Place,
                Pieces =
                [
                    .. recording.Kept.Select((piece, i) => new PieceEntry(answers.Chosen.Paddle, answers.Lengths[i], piece.Distance, piece.Time)
                    {
                        Effort = answers.Effort,
                        Soreness = answers.Soreness,
                        HeartRate = piece.HeartRate,
                        StrokeRate = piece.StrokeRate,
                        Course = piece.Course,
                        FadePercent = piece.FadePercent,
                        Notes = piece.CurrentMetresPerSecond is { } current ? $"Current along the course {Math.Abs(current):0.00} m/s." : null,
                        Origin = $"{recording.Hash}#{i + 1}",
                        TimedBy = TimedBy.Watch,
                    }),
                ],
            },
            (recording.Hash, recording.FileName));
    }
}
