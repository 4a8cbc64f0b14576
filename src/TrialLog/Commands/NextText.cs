using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands;

/// <summary>The next trial card and what the log says, as text for a paddler.</summary>
internal static class NextText
{
    private const int LabelColumns = 30;

    /// <param name="to">Where to.</param>
    /// <param name="analysis">What the log says.</param>
    /// <param name="given">The card as it was given.</param>
    /// <param name="width">Columns to write into.</param>
    /// <param name="decided">What was decided before, and what came of it; null where nothing was.</param>
    public static void Write(TextWriter to, Analysis analysis, GivenCard given, int width, string? decided = null)
    {
        bool sore = analysis.Standing == Standing.Sore;
        to.WriteLine($"{Quoted.Visible(analysis.Paddler.Name)} · {Quoted.Visible(analysis.Hull.Name)} · " +
            $"{Quoted.Visible(analysis.Paddle.Name)}   {Answer.Basis(analysis)}");
        to.WriteLine();
        if (decided is not null)
        {
            Wrapped.Write(to, decided, width);
            to.WriteLine();
        }

        Wrapped.Write(to, Verdict.Headline(analysis), width);
        foreach (string note in Verdict.Notes(analysis))
            Wrapped.Write(to, note, width);
        if (sore)
            WriteCautions(to, Cautions.Own(analysis), width);
        to.WriteLine();
        foreach ((string label, string value) in Answer.Figures(analysis))
            Wrapped.Write(to, value, width, $"  {label,-LabelColumns + 2}", LabelColumns);
        to.WriteLine();
        LengthUnit unit = analysis.Paddler.Unit;
        if (given.Card.Lengths.Count == 0)
            Wrapped.Write(to, given.Reason, width);
        else if (given.Blind)
            WriteBlind(to, given.Card, width);
        else
            WriteCard(to, given.Card, given.Reason, unit, width,
                given.By is null ? Answer.CardHeading(analysis) : $"{Quoted.Visible(given.By)}'s card");
        if (given.By is not null && !given.Blind)
            Wrapped.Write(to, CardReason.OwnInstead(given, unit), width, "  ", 2);
        foreach (string option in Answer.MorePieces(analysis))
            Wrapped.Write(to, option, width, "  ", 2);
        if (Answer.ToFeel(analysis) is { } feel)
            Wrapped.Write(to, feel, width, "  ", 2);
        foreach (string warning in Warnings.BesideTheVerdict(analysis))
            Wrapped.Write(to, warning, width, "Warning: ", 9);
        WriteCautions(to, sore ? [Cautions.Water] : Cautions.Of(analysis), width);
    }

    /// <summary>The card in the order to paddle.</summary>
    public static void WriteCard(TextWriter to, TrialCard card, string reason, LengthUnit unit, int width, string heading)
    {
        to.WriteLine(heading);
        for (int i = 0; i < card.Lengths.Count; i++)
            to.WriteLine($"  {i + 1}.  {Say.Length(card.Lengths[i], unit),-10}  {Say.Distance(card.Distance)}  effort {card.Effort}");
        if (card.Lengths.Count > 1)
            to.WriteLine($"      {card.Rest} easy between pieces");
        if (reason.Length > 0)
            Wrapped.Write(to, reason, width, "  Why: ", 7);
    }

    private static void WriteBlind(TextWriter to, TrialCard card, int width)
    {
        to.WriteLine("Blind card");
        IReadOnlyList<string> letters = BlindWords.Letters(card);
        for (int i = 0; i < letters.Count; i++)
            to.WriteLine($"  {i + 1}.  {letters[i],-10}  {Say.Distance(card.Distance)}  effort {card.Effort}");
        to.WriteLine($"      {card.Rest} easy between pieces");
        Wrapped.Write(to, BlindWords.ForThePaddler(card), width, "  ", 2);
        Wrapped.Write(to, BlindWords.Lost, width, "  Lost the file? ", 2);
    }

    private static void WriteCautions(TextWriter to, IReadOnlyList<string> cautions, int width)
    {
        foreach (string caution in cautions)
            Wrapped.Write(to, caution, width, "Caution: ", 9);
    }
}
