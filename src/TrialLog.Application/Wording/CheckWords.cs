namespace TrialLog.Application.Wording;

/// <summary>Health checks in two or three words, where a sentence has no room.</summary>
internal static class CheckWords
{
    private static readonly Dictionary<string, string> Words = new()
    {
        ["few-lengths"] = "few lengths",
        ["close-lengths"] = "lengths too close",
        ["one-length-outings"] = "one length an outing",
        ["one-piece-carries"] = "one piece decides",
        ["pieces-discounted"] = "pieces far off the rest",
        ["curve-upside-down"] = "fastest at both ends",
        ["hulls-disagree"] = "hulls disagree",
        ["order-tangled"] = "tiring looks like length",
        ["course-tangled"] = "wind looks like length",
        ["effort-tangled"] = "effort looks like length",
        ["calendar-tangled"] = "season looks like length",
        ["hull-tangled"] = "one length a hull",
        ["blade-tangled"] = "one length a paddle",
        ["habituated"] = "used to one length",
        ["many-excluded"] = "many pieces left out",
        ["effort-missing"] = "effort not noted",
    };

    /// <summary>The words for a check's name; for one that has none, the name without hyphens.</summary>
    public static string Of(string name) => Words.GetValueOrDefault(name) ?? PlainText.Line(name.Replace('-', ' '));

    /// <summary>Whether that check has words of its own.</summary>
    public static bool Knows(string name) => Words.ContainsKey(name);
}
