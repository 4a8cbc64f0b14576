using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Wording;

/// <summary>A blind card: letters for the paddler, lengths for the partner.</summary>
internal static class BlindWords
{
    /// <summary>What the paddler is told beside the letters.</summary>
    public static string ForThePaddler(TrialCard card, Voice voice = default) => voice.Name is null
        ? $"Your partner sets the lengths, in the order {CardReason.Letters(card.Lengths)}; do not look, and do not ask until the " +
            $"times are written down."
        : $"Blind: a partner sets the lengths, in the order {CardReason.Letters(card.Lengths)}; {voice.You} neither looks nor asks until " +
            $"the times are written down.";

    /// <summary>What helps whoever lost the partner's file.</summary>
    public const string Lost = "The lengths are in the logbook: write the partner's file again with triallog next --blind FILE. Until " +
        "then log times alone, by the card.";

    /// <summary>The letter of each piece: <c>A</c>, <c>B</c>.</summary>
    public static IReadOnlyList<string> Letters(TrialCard card) => CardReason.Letters(card.Lengths).Split(' ');

    /// <summary>The partner's sheet.</summary>
    public static string ForThePartner(GivenCard given, Paddler paddler, string hull, string paddle, DateOnly day)
    {
        LengthUnit unit = paddler.Unit;
        IReadOnlyList<string> letters = Letters(given.Card);
        var lines = new List<string>
        {
            $"Blind card for {PlainText.Line(paddler.Name)}, {PlainText.Line(hull)} with {PlainText.Line(paddle)}, {Say.DayInWords(day)}",
            "",
            "For the partner alone. Set the shaft where the paddler cannot see it, tape over its marks, and",
            "do not say the lengths before the times are written down. Set a length anew even where it stays.",
            "",
        };
        lines.AddRange(
            given.Card.Lengths.Zip(letters).DistinctBy(one => one.Second).Select(one => $"  {one.Second} = {Say.Length(one.First, unit)}"));
        lines.Add("");
        lines.AddRange(given.Card.Lengths.Select((length, at) => $"  {at + 1,2}.  {letters[at]}   {Say.Length(length, unit)}"));
        lines.Add("");
        lines.Add(Cautions.Water);
        return string.Join('\n', lines) + "\n";
    }
}
