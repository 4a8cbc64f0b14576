using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Checks;

namespace TrialLog.Application.Wording;

/// <summary>
/// What may mislead in the trials themselves: a sentence for each check, and two or three words where a sentence has no room.
/// </summary>
internal static class Warnings
{
    private static readonly Dictionary<string, string> InBrief = new()
    {
        ["few-lengths"] = "few lengths",
        ["close-lengths"] = "lengths too close",
        ["one-length-outings"] = "one length an outing",
        ["one-piece-carries"] = "one piece decides",
        ["pieces-discounted"] = "pieces that do not fit",
        ["curve-upside-down"] = "fastest at both ends",
        ["hulls-disagree"] = "hulls disagree",
        ["order-tangled"] = "tiredness may look like length",
        ["course-tangled"] = "wind may look like length",
        ["effort-tangled"] = "effort may look like length",
        ["heart-rate-tangled"] = "pushing may look like length",
        ["calendar-tangled"] = "season may look like length",
        ["hull-tangled"] = "one length a hull",
        ["blade-tangled"] = "one length a paddle",
        ["habituated"] = "used to one length",
        ["many-excluded"] = "many pieces left out",
        ["effort-missing"] = "effort not noted",
        ["heart-rate-unused"] = "heart rates that do not count",
    };

    /// <summary>Where no check found anything.</summary>
    public static string None => $"No warnings: none of the {HealthChecks.Count} checks found anything.";

    /// <summary>The sentences of an analysis, in the checks' order.</summary>
    public static IReadOnlyList<string> Of(Analysis analysis, Voice voice = default) =>
        [.. analysis.Checks.Select(check => Of(check, analysis, voice))];

    /// <summary>As <see cref="Of(Analysis, Voice)"/>, without the one that the verdict begins with.</summary>
    public static IReadOnlyList<string> BesideTheVerdict(Analysis analysis)
    {
        // While it hurts nothing is said of how to test better.
        if (analysis.Standing == Standing.Sore)
            return [];
        HealthCheck? told = Verdict.Doubt(analysis);
        return [.. analysis.Checks.Where(check => check != told).Select(check => Of(check, analysis))];
    }

    /// <summary>What a check found, in a sentence or two: what it is and what to do.</summary>
    public static string Of(HealthCheck check, Analysis analysis, Voice voice = default)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        string which = check.Longer ? "longer" : "shorter";
        return check.Name switch
        {
            "few-lengths" when check.Count == 1 =>
                $"All {check.Of} pieces are at one length, {Say.Quarter(check.Inches, unit)}, so they cannot say how length changes " +
                $"{voice.Your} speed. Paddle a longer and a shorter one.",
            "few-lengths" => "Two lengths show which way is faster, not where the best length is. Paddle a third.",
            "close-lengths" => $"All {voice.Your} lengths are within {Say.Fraction(check.Inches, unit)}: too close to tell apart. " +
                $"Spread them by " +
                $"an inch or more, as the card says.",
            "one-length-outings" =>
                $"{voice.YourFirst} log cannot say yet: {(check.Count == check.Of ? "each" : $"{check.Count}")} of its {check.Of}" +
                    $" outings " +
                $"{(check.Count == check.Of ? "has" : "have")} one length, and days differ more (about 3%) than lengths do. Paddle two " +
                $"lengths in one outing, as the card says.",
            "one-piece-carries" => $"Without piece {check.Piece?.Order} of {PieceDay(check)} {voice.Your} best length would be " +
                $"{Say.Fraction(check.Inches, unit)} {which}. Paddle those lengths again before relying on it.",
            "pieces-discounted" when check.Count == 1 =>
                $"Piece {check.Piece?.Order} of {PieceDay(check)} does not fit the others and counts for little. If something went " +
                $"wrong, leave it out and say why; being slow is no reason.",
            "pieces-discounted" =>
                $"{check.Count} of {check.Of} pieces do not fit the others and count for little, piece {check.Piece?.Order} of " +
                $"{PieceDay(check)} least. If something went wrong, leave them out and say why; being slow is no reason.",
            "curve-upside-down" => $"{voice.YourFirst} longest and shortest lengths were faster than those between, which no best length " +
                $"explains. See " +
                "what else differed: effort, wind, a mistyped length.",
            "hulls-disagree" =>
                $"{Quoted.Visible(check.Hull)} alone points to {Say.Quarter(check.Inches, unit)}, {Quoted.Visible(check.OtherHull)} to " +
                $"{Say.Quarter(check.OtherInches, unit)}: more than their seat heights explain. Measure both seats again, and paddle " +
                $"more pieces in each before trusting either.",
            "order-tangled" => $"The {which} lengths mostly came last, so tiredness may look like length. Paddle A B B A.",
            "course-tangled" => $"The {which} lengths were mostly paddled outbound, so wind and current may look like length. Make each " +
                $"piece a round trip.",
            "effort-tangled" => $"The {which} lengths were mostly paddled harder, so effort may look like length. Hold one effort " +
                $"through the outing.",
            "heart-rate-tangled" => $"{voice.YourFirst} heart rate was higher with the {which} lengths, so pushing harder may look like " +
                $"length. Let " +
                $"a partner hide the lengths for an outing or two: blind outings would tell.",
            "calendar-tangled" => $"{voice.YourFirst} lengths mostly went {(check.Longer ? "up" : "down")} through the season, so " +
                $"fitness may look " +
                $"like length. Go back to an earlier length now and then.",
            "hull-tangled" => "Each hull has had its own length, so the hull may look like length. Paddle more than one " +
                "length in the same hull.",
            "blade-tangled" => $"In {Quoted.Visible(check.Hull)} each paddle has had its own length, so the blade may look like length. " +
                $"Paddle more than one length with the same blade.",
            "habituated" => $"{check.Count} of {check.Of} pieces are near {Say.Quarter(check.Inches, unit)}. A length {voice.YouAre}" +
                $" used to " +
                $"feels faster at first; paddle the others as often.",
            "many-excluded" => $"{check.Count} of {check.Of} pieces are left out: so many that the choice may decide the result. Leave " +
                $"out only what went wrong on the water.",
            "effort-missing" =>
                $"{(check.Count == check.Of ? "No piece has an effort" : $"{check.Count} of {check.Of} pieces have no effort")}. Note it " +
                $"each time: pushing a little harder changes {voice.Your} pace more than an inch of paddle.",
            "heart-rate-unused" =>
                $"{(check.Count == check.Of ? "No heart rate counts" : $"{check.Count} of {check.Of} heart rates do not count")}: " +
                    $"below 60 " +
                $"or above 220, in a piece under three minutes, the same in a whole outing, or alone in one. Look at the strap.",
            _ => $"The check {PlainText.Line(check.Name)} found something.",
        };
    }

    /// <summary>The words for a check's name; for one that has none, the name without hyphens.</summary>
    public static string Brief(string name) => InBrief.GetValueOrDefault(name) ?? PlainText.Line(name.Replace('-', ' '));

    /// <summary>Whether that check has words of its own.</summary>
    public static bool Knows(string name) => InBrief.ContainsKey(name);

    private static string PieceDay(HealthCheck check) => check.Piece is { } piece ? Say.DayInWords(piece.Day) : "an outing";
}
