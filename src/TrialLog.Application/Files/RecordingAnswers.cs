using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Pieces;

namespace TrialLog.Application.Files;

/// <summary>What a recording cannot tell, as the user answered.</summary>
internal sealed record RecordingAnswers
{
    public required Chosen Chosen { get; init; }

    /// <summary>The length of each piece, in order.</summary>
    public required IReadOnlyList<Length> Lengths { get; init; }

    /// <summary>How hard the pieces were: one for all of them, or one a piece, in order; empty where it was not said.</summary>
    public IReadOnlyList<Effort> Efforts { get; init; } = [];

    public Soreness? Soreness { get; init; }

    public Beaufort? Wind { get; init; }

    public string? Place { get; init; }

    /// <summary>The effort of a piece, counted from 0; null where it was not said.</summary>
    public Effort? EffortOf(int piece) => Efforts.Count == 1 ? Efforts[0] : piece < Efforts.Count ? Efforts[piece] : null;

    /// <summary>Why the efforts do not belong to so many pieces, in a sentence; null where they do.</summary>
    public string? EffortProblem(int pieces) => Efforts.Count <= 1 || Efforts.Count == pieces ? null
        : $"{Say.Count(Efforts.Count, "effort")} typed, but {Say.Count(pieces, "piece")} that {(pieces == 1 ? "counts" : "count")}: say " +
            $"one for all, or one a piece.";

    /// <summary>Efforts as they are typed: <c>6</c> for all pieces, or <c>6, 6.5, 6, 7</c>; none for an empty text.</summary>
    /// <exception cref="InvalidValueException">One of them is no effort.</exception>
    public static IReadOnlyList<Effort> EffortsIn(string? text) => string.IsNullOrWhiteSpace(text) ? []
        : [.. text.Split(',', StringSplitOptions.TrimEntries).Select(TextForms.Effort.Read)];
}

/// <summary>The lengths of a recording's pieces, in order, as far as they are known.</summary>
/// <param name="All">The lengths.</param>
/// <param name="Given">The card that was open; of a blind one letters are shown until the times are in the log.</param>
internal sealed record RecordingLengths(IReadOnlyList<Length> All, GivenCard? Given = null)
{
    /// <summary>None is known.</summary>
    public static readonly RecordingLengths Unknown = new([]);

    /// <summary>Whether the paddler is not to read them yet.</summary>
    public bool Blind => Given is { Blind: true };

    /// <summary>The length of a piece as it may be shown, or its letter; null where it is not known.</summary>
    public string? Of(int piece, LengthUnit unit) => piece < All.Count ? Shown(All[piece], unit) : null;

    /// <summary>A length as it may be shown, or its letter.</summary>
    public string Shown(Length length, LengthUnit unit) =>
        Letters.FirstOrDefault(letter => letter.Length == length).Letter ?? Say.Length(length, unit);

    /// <summary>Lengths apart by commas; of a blind card its letters will do.</summary>
    /// <exception cref="InvalidValueException">One of them is not a length.</exception>
    public static IReadOnlyList<Length> Read(string text, GivenCard? given, LengthUnit unit)
    {
        (string Letter, Length Length)[] letters = [.. new RecordingLengths([], given).Letters];
        return
        [
            .. text.Split(',', StringSplitOptions.TrimEntries).Select(one =>
                letters.FirstOrDefault(letter => letter.Letter.Equals(one, StringComparison.OrdinalIgnoreCase))
                    is { Letter: not null } known
                    ? known.Length : Length.Parse(one, unit)),
        ];
    }

    private IEnumerable<(string Letter, Length Length)> Letters => Given is { Blind: true, Card: var card }
        ? BlindWords.Letters(card).Zip(card.Lengths).Distinct() : [];
}
