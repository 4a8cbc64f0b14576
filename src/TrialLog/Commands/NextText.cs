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
    /// <param name="width">Columns to write into.</param>
    public static void Write(TextWriter to, Analysis analysis, int width)
    {
        bool sore = analysis.Standing == Standing.Sore;
        to.WriteLine($"{Quoted.Visible(analysis.Paddler.Name)} · {Quoted.Visible(analysis.Hull.Name)} · {Quoted.Visible(analysis.Paddle.Name)}   {Answer.Basis(analysis)}");
        to.WriteLine();
        Wrapped.Write(to, Verdict.Headline(analysis), width);
        foreach (string note in Verdict.Notes(analysis))
            Wrapped.Write(to, note, width);
        if (sore)
            WriteCautions(to, Cautions.Own(analysis), width);
        to.WriteLine();
        foreach ((string label, string value) in Answer.Figures(analysis))
            Wrapped.Write(to, value, width, $"  {label,-LabelColumns + 2}", LabelColumns);
        to.WriteLine();
        WriteCard(to, analysis.Card, CardReason.Of(analysis), analysis.Paddler.Unit, width, Answer.CardHeading(analysis));
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

    private static void WriteCautions(TextWriter to, IReadOnlyList<string> cautions, int width)
    {
        foreach (string caution in cautions)
            Wrapped.Write(to, caution, width, "Caution: ", 9);
    }
}
