using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Pieces;

namespace TrialLog.Application.Files;

/// <summary>Corrections of a recording as they are typed on a command line. Pieces are numbered from 1 as first shown.</summary>
internal sealed record RecordingMends
{
    /// <summary>Numbers of pieces that count: <c>1,2</c>.</summary>
    public string? Keep { get; init; }

    /// <summary>Numbers of pieces to leave out.</summary>
    public string? Drop { get; init; }

    /// <summary>Pieces to cut, with the time since the start: <c>3@12:30</c>, or <c>3@turn</c>.</summary>
    public IReadOnlyList<string> Split { get; init; } = [];

    /// <summary>Pieces to make one of: <c>3,4</c>.</summary>
    public IReadOnlyList<string> Join { get; init; } = [];

    /// <summary>The pieces themselves, with their lengths: <c>7:21..12:45=49.75in,16:31..21:54=51in</c>.</summary>
    public string? Pieces { get; init; }
}

/// <summary>Corrects a recording by what was typed.</summary>
internal static class MendRecording
{
    /// <summary>
    /// The recording corrected, and the lengths that <see cref="RecordingMends.Pieces"/> gives; null where it gives none.
    /// </summary>
    /// <exception cref="InvalidValueException">Something typed cannot be read, or a correction is impossible.</exception>
    public static (RecordedOuting Recording, IReadOnlyList<Length>? Lengths) By(
        RecordedOuting recording, RecordingMends mends, LengthUnit unit)
    {
        if (mends.Pieces is { } typed)
        {
            var pieces = Listed(typed).Select(text => OnePiece(text, unit)).ToList();
            return (recording.Only([.. pieces.Select(p => (p.Start, p.End))]), [.. pieces.Select(p => p.Length)]);
        }

        var corrections = new List<(int Piece, Func<RecordedOuting, RecordedOuting> Correct)>();
        corrections.AddRange(Listed(mends.Keep).Select(text => Place(recording, text))
            .Select(at => (at, (Func<RecordedOuting, RecordedOuting>)(r => r.Keep(at)))));
        corrections.AddRange(Listed(mends.Drop).Select(text => Place(recording, text))
            .Select(at => (at, (Func<RecordedOuting, RecordedOuting>)(r => r.Drop(at)))));
        foreach (string text in mends.Split.SelectMany(Listed))
        {
            if (text.Split('@') is not [var number, var time])
                throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a piece and a time such as 3@12:30, or 3@turn.");
            int at = Place(recording, number);
            TimeSpan cut = CutAt(recording, at, time);
            corrections.Add((at, r => r.Split(at, cut)));
        }

        foreach (string text in mends.Join)
        {
            if (text.Split(',', StringSplitOptions.TrimEntries) is not [var first, var second] || Place(recording, first) is var at
                && Place(recording, second) != at + 1)
                throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a piece and the next, such as 3,4.");
            corrections.Add((at, r => r.Merge(at)));
        }

        // From the last piece to the first, so that the numbers of those still to come stay as they were shown.
        foreach ((_, Func<RecordedOuting, RecordedOuting> correct) in corrections.OrderByDescending(c => c.Piece))
            recording = correct(recording);
        return (recording, null);
    }

    /// <summary>The place in the list of the piece that a person numbers from 1.</summary>
    /// <exception cref="InvalidValueException">There is no such piece.</exception>
    public static int Place(RecordedOuting recording, string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1
            && number <= recording.Proposals.Count
            ? number - 1
            : throw new InvalidValueException(
                $"“{Quoted.Brief(text)}” is not the number of a piece; they go from 1 to {recording.Proposals.Count}.");

    /// <summary>A time since the recording's start.</summary>
    /// <exception cref="InvalidValueException">It is no time.</exception>
    public static TimeSpan Since(string text) => TimeSpan.FromMilliseconds(PieceTime.Parse(text).Milliseconds);

    /// <summary>Where a piece is to be cut: a time since the recording's start, or <c>turn</c> for where it turns.</summary>
    /// <exception cref="InvalidValueException">It is no time, or the piece does not turn.</exception>
    public static TimeSpan CutAt(RecordedOuting recording, int piece, string text) =>
        !text.Trim().Equals("turn", StringComparison.OrdinalIgnoreCase) ? Since(text)
        : recording.CutOf(piece) ?? throw new InvalidValueException(
            $"Piece {piece + 1} neither turns nor slows down anywhere; say when it is to be cut.");

    private static (TimeSpan Start, TimeSpan End, Length Length) OnePiece(string text, LengthUnit unit)
    {
        if (text.Split('=') is not [var times, var length] || times.Split("..") is not [var start, var end])
            throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a piece with its length, such as 7:21..12:45=49.75in.");
        return (Since(start), Since(end), Length.Parse(length, unit));
    }

    private static string[] Listed(string? text) =>
        (text ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
