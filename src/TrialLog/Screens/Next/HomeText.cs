using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Next;

/// <summary>What the first screen says, by where the search stands: the verdict, what must be heeded, the figures behind it.</summary>
/// <param name="Headline">What to do, then how sure that is; never cut.</param>
/// <param name="Look">How the headline looks.</param>
/// <param name="Own">Cautions of this paddler's own, never cut.</param>
/// <param name="Beside">What belongs beside the headline, and warnings about the trials.</param>
/// <param name="Figures">The figures, what matters most first.</param>
/// <param name="ShowsCard">Whether the card is on the screen; else it is behind a key.</param>
/// <param name="Large">The length to race, to be read from the beach; null while there is none.</param>
internal sealed record HomeText(
    string Headline, Tone Look, IReadOnlyList<string> Own, IReadOnlyList<string> Beside,
        IReadOnlyList<(string Label, string Value)> Figures, bool ShowsCard, string? Large)
{
    /// <summary>The text for an answer.</summary>
    public static HomeText Of(Analysis analysis)
    {
        bool races = analysis.Standing is Standing.Settled or Standing.Flat && !analysis.Paddle.IsFixed && analysis.PiecesInHull > 0;
        return new(
            Verdict.Headline(analysis),
            analysis.Standing switch
            {
                Standing.Sore => Tone.Caution,
                Standing.CannotTell => Tone.Now,
                Standing.Settled or Standing.Flat => Tone.Best,
                _ => Tone.Strong,
            },
            Cautions.Own(analysis),
            [.. Verdict.Notes(analysis), .. Warnings.BesideTheVerdict(analysis).Select(warning => "Warning: " + warning)],
            [.. Answer.Figures(analysis)],
            analysis.Standing == Standing.Testing && !analysis.Paddle.IsFixed && analysis.Card.Lengths.Count > 0,
            races || analysis.Standing == Standing.CannotTell ? Say.Length(analysis.Best.Length, analysis.Paddler.Unit) : null);
    }

    /// <summary>The figures, the gain left shortened where the whole has no room.</summary>
    public IEnumerable<(string Label, string Value)> FiguresIn(int columns, Analysis analysis) => Figures.Select(figure =>
        figure.Label == "Gain left" && figure.Value.Length > columns ? (figure.Label, Answer.ShortGainLeft(analysis)) : figure);

    /// <summary>The whole answer in sentences, for those who cannot see the screen.</summary>
    public static string InWords(Analysis analysis, GivenCard? given = null)
    {
        HomeText text = Of(analysis);
        List<string> lines =
        [
            text.Headline,
            .. text.Own.Select(caution => "Caution: " + caution),
            .. text.Beside,
            .. text.Figures.Select(figure => $"{figure.Label}: {figure.Value}."),
            $"From {Answer.Basis(analysis)}.",
        ];
        if (text.ShowsCard)
            lines.AddRange(["# " + Heading(analysis, given), .. Card(analysis, given)]);
        lines.AddRange(["# Cautions", Cautions.Water]);
        return Paragraphs(lines);
    }

    /// <summary>The card and everything behind it, in sentences; the cautions first while it hurts.</summary>
    public static string Why(Analysis analysis, GivenCard? given = null)
    {
        List<string> lines = analysis.Standing == Standing.Sore ? [.. Cautions.Of(analysis).Select(caution => "! " + caution)] : [];
        lines.AddRange(["# " + Heading(analysis, given), .. Card(analysis, given), "# What the log says", Verdict.Of(analysis)]);
        lines.AddRange(Answer.Figures(analysis).Select(figure => $"{figure.Label}: {figure.Value}."));
        lines.AddRange([$"From {Answer.Basis(analysis)}.", "# Warnings"]);
        lines.AddRange(analysis.Checks.Count == 0 ? [Warnings.None] : Warnings.Of(analysis).Select(warning => "! " + warning));
        if (analysis.Standing != Standing.Sore)
            lines.AddRange(["# Cautions", .. Cautions.Of(analysis).Select(caution => "! " + caution)]);
        return Paragraphs(lines);
    }

    /// <summary>Over the card: whose it is, where it is the coach's.</summary>
    public static string Heading(Analysis analysis, GivenCard? given) =>
        given?.By is { } by ? $"{PlainText.Line(by)}'s card" : Answer.CardHeading(analysis);

    // While a blind card stands nothing names its lengths.
    private static IEnumerable<string> Card(Analysis analysis, GivenCard? given) => analysis.Card.Lengths.Count == 0 ? [] :
        [$"{Answer.Plan(analysis.Card)}{(given is { Blind: true } ? "" : ": " + CardReason.InALine(analysis, given))}.",
            CardReason.Of(analysis, given)];

    private static string Paragraphs(IEnumerable<string> lines) =>
        string.Join('\n', lines.Select((line, index) => line.StartsWith('#') && index > 0 ? "\n" + line : line));
}
