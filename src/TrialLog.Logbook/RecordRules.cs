using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;

namespace TrialLog.Logbook;

/// <summary>
/// What a record must hold before it is written, beyond what its values already guarantee: texts within bounds, numbers
/// within the ranges that the records state. Each check throws <see cref="InvalidValueException"/> with a sentence.
/// </summary>
internal static class RecordRules
{
    public const int LongestText = 10_000, LongestCoachNote = 4_000, LongestWord = 200, MostPieces = 1_000, MostCardLengths = 100;

    // Whoever knows what day it is refuses later ones; this is for what nobody looked at.
    private static readonly DateOnly LastDay = new(2199, 12, 31);

    public static Paddler Checked(Paddler paddler)
    {
        Range(paddler.WorthwhilePercent, above: 0, upTo: 5, "A worthwhile change lies above 0 and up to 5 %.");
        if (paddler.Goal is { Distance: null, Time: null })
            throw new InvalidValueException("A goal event needs a distance or a time.");
        if (paddler.Trials.Pieces is int pieces && (pieces is < 4 or > 16 || pieces % 2 != 0))
            throw new InvalidValueException("A trial outing has an even number of pieces, from 4 to 16.");
        if (paddler.Trials.Minutes is < 15 or > 300)
            throw new InvalidValueException("A trial outing takes 15 to 300 minutes.");
        Range(paddler.Trials.PricePercent, above: 0.000499, upTo: 1, "What an outing is worth lies between 0.0005 and 1 % of speed.");
        return paddler with { Name = Name(paddler.Name, "paddler") };
    }

    public static Hull Checked(Hull hull) => hull.Crew is >= 1 and <= 24
        ? hull with { Name = Name(hull.Name, "hull") }
        : throw new InvalidValueException("A hull has a crew of 1 to 24.");

    public static Paddle Checked(Paddle paddle)
    {
        string? problem = Plausible.ProblemWithPaddleLength(paddle.Shortest)
            ?? Plausible.ProblemWithPaddleLength(paddle.Longest)
            ?? Plausible.ProblemWithBlade(paddle.Blade, paddle.Shortest)
            ?? (paddle.Longest < paddle.Shortest
                ? $"A paddle's longest length ({paddle.Longest}) is below its shortest ({paddle.Shortest})." : null)
            ?? (paddle.Step.Nanometres == 0 && !paddle.IsFixed ? "A paddle's step between settings is above zero." : null);
        if (problem is not null)
            throw new InvalidValueException(problem);
        Range(paddle.BladeAreaSquareInches, above: 19.999, upTo: 250, "A blade's area lies between 20 and 250 square inches.");
        if (paddle is { BelongsToClub: true, OwnerId: not null })
            throw new InvalidValueException("A paddle is one paddler's or the club's, not both.");
        return paddle with { Name = Name(paddle.Name, "paddle") };
    }

    public static Outing Checked(Outing outing)
    {
        if (outing.Date < Plausible.FirstDay || outing.Date > LastDay)
            throw new InvalidValueException($"{outing.Date:yyyy-MM-dd} is no day of an outing; check the year.");
        if (outing.Pieces.Count > MostPieces)
            throw new InvalidValueException($"An outing holds at most {MostPieces} pieces.");
        Text(outing.Label, NameRule.Longest, "label");
        Text(outing.Place, LongestWord, "place");
        Text(outing.Water, LongestWord, "description of the water");
        Text(outing.Notes, LongestText, "notes");
        var orders = new HashSet<int>();
        var ids = new HashSet<Guid>();
        foreach (Piece piece in outing.Pieces)
        {
            if (piece.Order < 1 || !orders.Add(piece.Order) || !ids.Add(piece.Id))
                throw new InvalidValueException("The pieces of an outing have ids and numbers of their own, from 1.");
            Check(piece);
        }
        return outing;
    }

    public static void Check(Piece piece)
    {
        if ((Plausible.ProblemWithPaddleLength(piece.Length) ?? Piece.ProblemWithSpeed(piece.Distance, piece.Time)) is string problem)
            throw new InvalidValueException(problem);
        Range(piece.FadePercent, above: -1000, upTo: 1000, "A fade lies between -1,000 and 1,000 %.");
        Range(piece.SpeedErrorPercent, above: 0, upTo: 20, "A piece's speed is measured with an error above 0 and up to 20 %.");
        Text(piece.ExcludedBecause, LongestText, "reason for not counting a piece");
        Text(piece.Notes, LongestText, "notes");
        Text(piece.Origin, LongestWord, "origin");
    }

    public static GivenCard Checked(GivenCard card)
    {
        if (card.Card.Lengths.Count is 0 or > MostCardLengths)
            throw new InvalidValueException($"A trial card has 1 to {MostCardLengths} pieces.");
        if (card.LikelyLow > card.LikelyHigh || card.Outings < 0 || card.Pieces < 0 || card.AsOfChange < 0)
            throw new InvalidValueException("A trial card's range runs from low to high, and its counts are not negative.");
        Range(card.GainLeftPercent, above: -1, upTo: 1000, "A gain left lies between 0 and 1,000 %.");
        Text(card.Reason, LongestText, "reason of a trial card");
        if (card.OwnLengths.Count > MostCardLengths || card.OutingsToGo is { } toGo
            && (toGo.Low < 0 || toGo.Low > toGo.Median || toGo.Median > toGo.High))
            throw new InvalidValueException(
                "The outings to go of a trial card run from low over median to high, and its own lengths are as many as it has pieces.");
        Text(card.Because, NoteRule.Longest, "coach's reason");
        return card.By is null ? card : card with { By = Name(card.By, "coach") };
    }

    public static TechniqueCheck Checked(TechniqueCheck check)
    {
        Range(check.HandAboveEyeInches, above: -30.0001, upTo: 30, "The top hand lies within 30 in of the eye.");
        Range(check.ShaftLeanDegrees, above: -0.0001, upTo: 60, "A shaft leans 0 to 60 degrees.");
        return check;
    }

    public static SorenessClearance Checked(SorenessClearance clearance)
    {
        Text(clearance.Because, NoteRule.Longest, "reason");
        return clearance with { By = Name(clearance.By, "person who says that soreness is gone") };
    }

    public static Decision Checked(Decision decision)
    {
        if (Plausible.ProblemWithPaddleLength(decision.Length) is string problem)
            throw new InvalidValueException(problem);
        Text(decision.Because, NoteRule.Longest, "reason");
        return decision.By is null ? decision : decision with { By = Name(decision.By, "person who decided") };
    }

    public static CoachNote Checked(CoachNote note)
    {
        Text(note.Text, LongestCoachNote, "note");
        return note.Text.Trim().Length > 0
            ? note with { Author = Name(note.Author, "note's author") }
            : throw new InvalidValueException("A note needs a text.");
    }

    /// <summary>
    /// At most so many characters, no control characters but tab and new line, no half surrogate pairs: so it is kept exactly.
    /// </summary>
    public static void Text(string? text, int longest, string kind)
    {
        if (text is null)
            return;
        if (text.Length > longest)
            throw new InvalidValueException($"The {kind} is longer than {longest:N0} characters; shorten it.");
        for (int i = 0; i < text.Length; i++)
        {
            bool pair = char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]);
            if ((char.IsControl(text[i]) && text[i] is not ('\t' or '\n' or '\r')) || (char.IsSurrogate(text[i]) && !pair))
                throw new InvalidValueException($"The {kind} “{Quoted.Brief(text)}” has control characters; type it anew.");
            i += pair ? 1 : 0;
        }
    }

    private static string Name(string name, string kind)
    {
        Text(name, int.MaxValue, $"{kind}'s name");
        return NameRule.Checked(name, kind);
    }

    private static void Range(double? number, double above, double upTo, string otherwise)
    {
        if (number is double value && !(value > above && value <= upTo))
            throw new InvalidValueException(otherwise);
    }
}
