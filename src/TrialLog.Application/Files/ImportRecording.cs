using TrialLog.Application.Logging;
using TrialLog.Application.Next;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
using TrialLog.Recordings;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Pieces;

namespace TrialLog.Application.Files;

/// <summary>Turns a recording, its pieces found and corrected, into a logged outing.</summary>
internal static class ImportRecording
{
    private const double OneSixth = 1 / 6.0;

    /// <summary>Reads a recording of one outing and finds its pieces.</summary>
    /// <exception cref="RequestException">It cannot be read, was imported before, or holds several outings.</exception>
    public static RecordedOuting Read(Workspace workspace, Stream stream, string fileName, bool again = false) =>
        ReadAll(workspace, stream, fileName, again) is var all && all.Count == 1 ? all[0]
        : throw new RequestException(
            $"{Quoted.Brief(fileName, 60)} holds {all.Count} outings; take each or one with --outing:{Environment.NewLine}{Listed(all)}");

    /// <summary>Reads a recording, finds its outings and their pieces; of several those that were not imported before.</summary>
    /// <exception cref="RequestException">It cannot be read, or was imported before.</exception>
    public static IReadOnlyList<RecordedOuting> ReadAll(
        Workspace workspace, Stream stream, string fileName, bool again = false, bool evenIfCutOff = false)
    {
        IReadOnlyList<RecordedOuting> outings;
        try
        {
            outings = RecordingReader.ReadAll(stream, fileName, TimeZoneInfo.Local, evenIfCutOff);
        }
        catch (RecordingException failure)
        {
            throw new RequestException(failure.CanTakeWhatIsWhole ? $"{failure.Message} For the latter: --even-if-cut-off"
                : failure.Message);
        }

        IReadOnlyList<RecordedOuting> fresh = again ? outings : [.. outings.Where(outing => !workspace.Logbook.HasImported(outing.Hash))];
        return fresh.Count > 0 ? fresh
            : throw new RequestException(
                $"{outings[0].FileName} was imported before; nothing was added. If its outing was deleted since, import it with --again.");
    }

    /// <summary>The outings of a file, by their numbers in it, a line each.</summary>
    public static string Listed(IReadOnlyList<RecordedOuting> outings) => string.Join(
        Environment.NewLine,
            outings.Select(outing => $"  {outing.Number}  {outing.Date:yyyy-MM-dd} {outing.Time:HH:mm}, {outing.Duration:h\\:mm} h, " +
            $"{Say.Count(outing.Kept.Count, "piece")}"));

    /// <summary>
    /// The recording held against the lengths that were typed, else against the card, and the lengths of its pieces as far as they are
    /// known. Where the watch led through the card's own workout, each piece has the length of its step, whatever was left out.
    /// </summary>
    /// <param name="recording">The recording.</param>
    /// <param name="typed">The lengths that were typed; null for none.</param>
    /// <param name="given">The card that was open on that day; null for none.</param>
    /// <param name="unit">The unit in which the workout's steps are named.</param>
    public static (RecordedOuting Recording, RecordingLengths Lengths) HeldAgainst(
        RecordedOuting recording, IReadOnlyList<Length>? typed, GivenCard? given, LengthUnit unit)
    {
        if (typed is not null)
            return (recording.For(new PieceCard(typed.Count, Usual: given?.Card.Distance)), new RecordingLengths(typed, given));
        if (given is not { Card: var card })
            return (recording, RecordingLengths.Unknown);
        recording = recording.For(new PieceCard(card.Lengths.Count, card.Distance, card.Rest));
        return LengthsBySteps(recording, card, unit) is { } steps && !steps.SequenceEqual(card.Lengths)
            ? (recording.For(new PieceCard(steps.Count, card.Distance, card.Rest)), new RecordingLengths(steps, given))
            : (recording, new RecordingLengths(card.Lengths, given));
    }

    /// <summary>
    /// The lengths by the steps of the card's own workout that the watch led through, in the order paddled; null where the pieces are not
    /// such steps.
    /// </summary>
    public static IReadOnlyList<Length>? LengthsBySteps(RecordedOuting recording, TrialCard card, LengthUnit unit)
    {
        IReadOnlyList<PieceProposal> kept = recording.Kept;
        if (kept.Count == 0 || kept.Any(piece => piece.StepName is null))
            return null;
        int[] steps = [.. kept.Select(piece => WatchWorkout.StepOf(card, piece.StepName!, unit))];
        return steps.Distinct().Count() == steps.Length
            && steps.All(step => step >= 0) ? [.. steps.Select(step => card.Lengths[step])] : null;
    }

    /// <summary>
    /// The logged outings of the paddler that overlap the recording in time, or may: those of that day and hull without a time.
    /// </summary>
    public static IReadOnlyList<Outing> SameTime(Workspace workspace, Chosen chosen, RecordedOuting recording)
    {
        return [.. workspace.Logbook.Outings(chosen.Paddler.Id).Where(outing => outing.Date == recording.Date && Overlaps(outing))];

        bool Overlaps(Outing outing)
        {
            if (outing.Time is not { } time)
                return outing.HullId == chosen.Hull.Id;
            // A logged outing lasts as long as its pieces, and about three minutes around each: chosen.
            TimeSpan lasts = TimeSpan.FromSeconds(outing.Pieces.Sum(piece => piece.Time.Seconds + 180));
            TimeSpan begins = time.ToTimeSpan(), recorded = recording.StartedAt.TimeOfDay;
            return begins < recorded + recording.Duration && recorded < begins + lasts;
        }
    }

    /// <summary>Saves the pieces that count as one outing.</summary>
    /// <exception cref="RequestException">The number of lengths is not the number of pieces, or a piece cannot be right; nothing was
    /// saved.</exception>
    public static Outing Save(Workspace workspace, RecordedOuting recording, RecordingAnswers answers)
    {
        if (recording.Card?.Pieces != answers.Lengths.Count)
            recording = recording.For(new PieceCard(answers.Lengths.Count));
        if (recording.Questions is [var question, ..])
            throw new RequestException(question.Says);
        if (answers.EffortProblem(recording.Kept.Count) is { } problem)
            throw new RequestException(problem);
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
                    .. recording.Kept.Select(
                        (piece, i) => new PieceEntry(answers.Chosen.Paddle, answers.Lengths[i], piece.Distance, piece.Time)
                    {
                        Effort = answers.EffortOf(i),
                        Soreness = answers.Soreness,
                        HeartRate = piece.HeartRate,
                        StrokeRate = piece.StrokeRate,
                        Course = piece.Course,
                        FadePercent = piece.FadePercent,
                        Notes = piece.CurrentMetresPerSecond is { } current
                            ? $"Current along the course {Math.Abs(current):0.00} m/s." : null,
                        Origin = $"{recording.Hash}#{i + 1}",
                        TimedBy = TimedBy.Watch,
                        SpeedErrorPercent = piece.SpeedErrorPercent,
                    }),
                ],
            },
            (recording.Hash, SourceName(recording)));
    }

    /// <summary>
    /// Lays the recording over an outing typed by hand: its lengths, distances and times stay; heart rate, stroke rate and fade, and when
    /// it began, come in where nothing was typed.
    /// </summary>
    /// <exception cref="RequestException">What belongs to which piece is in doubt; nothing was changed.</exception>
    public static Outing LayOver(Workspace workspace, RecordedOuting recording, Outing outing)
    {
        recording = HeldAgainst(recording, outing);
        if (OverProblem(recording, outing) is { } problem)
            throw new RequestException($"{problem} Nothing was changed.");
        IReadOnlyList<PieceProposal> kept = recording.Kept;
        Outing changed = outing with
        {
            Time = outing.Time ?? recording.Time,
            Pieces =
            [
                .. outing.Pieces.Zip(kept, (piece, found) => piece with
                {
                    HeartRate = piece.HeartRate ?? found.HeartRate,
                    StrokeRate = piece.StrokeRate ?? found.StrokeRate,
                    FadePercent = piece.FadePercent ?? found.FadePercent,
                    TimedBy = piece.TimedBy ?? TimedBy.Hand,
                }),
            ],
        };
        workspace.Logbook.Change($"Laid a recording over the outing {FindOuting.NameOf(outing)}", logbook =>
        {
            logbook.Put(changed);
            logbook.RememberImport(recording.Hash, SourceName(recording));
        });
        return changed;
    }

    /// <summary>The recording held against an outing of the log that it is to be laid over.</summary>
    private static RecordedOuting HeldAgainst(RecordedOuting recording, Outing outing) => recording.For(new PieceCard(
        outing.Pieces.Count, outing.Pieces.Select(piece => piece.Distance).Distinct().Count() == 1 ? outing.Pieces[0].Distance : null));

    // A stopwatch and the edges that were found differ by some seconds; by a sixth only where they are not of one piece.
    private static string? OverProblem(RecordedOuting recording, Outing outing)
    {
        IReadOnlyList<PieceProposal> kept = recording.Kept;
        string name = FindOuting.NameOf(outing);
        if (kept.Count != outing.Pieces.Count)
            return $"The outing {name} has {Say.Count(outing.Pieces.Count, "piece")}, the recording shows {kept.Count}: which belongs to " +
                $"which?";
        if (recording.Questions is [var question, ..])
            return question.Says;
        return outing.Pieces.Zip(kept, (piece, found) => (Piece: piece, Lasts: (found.End - found.Start).TotalSeconds))
            .Where(pair => Math.Abs(pair.Lasts / pair.Piece.Time.Seconds - 1) > OneSixth)
            .Select(pair => $"Piece {pair.Piece.Order} of the outing {name} took {Say.Time(pair.Piece.Time)}, that of the recording " +
                $"{Say.Clock(pair.Lasts)}: are they the same?")
            .FirstOrDefault();
    }

    // The name of a file may be that of a place, so it is not kept.
    private static string SourceName(RecordedOuting recording) => $"{recording.Format.ToString().ToUpperInvariant()} recording";
}
