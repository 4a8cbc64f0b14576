using System.Text;

namespace TrialLog.Domain.Values;

/// <summary>Text from outside, made safe and short enough to be quoted in a message or shown in a terminal.</summary>
public static class Quoted
{
    /// <summary>At most <paramref name="most"/> characters of the text, control characters (and so terminal escapes) replaced.</summary>
    public static string Brief(string? text, int most = 40)
    {
        string visible = Visible(text);
        return visible.Length <= most ? visible : visible[..(char.IsHighSurrogate(visible[most - 1]) ? most - 1 : most)] + "…";
    }

    /// <summary>
    /// The whole text in one line: a line break is shown as <c> / </c>, other control and direction-changing characters as <c>�</c>, so
    /// that it cannot drive a terminal.
    /// </summary>
    public static string Visible(string? text)
    {
        if (string.IsNullOrEmpty(text))
            return "";
        var visible = new StringBuilder(text.Length);
        foreach (char c in text.ReplaceLineEndings(" / "))
            visible.Append(char.IsControl(c) || c is >= '\u202A' and <= '\u202E' or >= '\u2066' and <= '\u2069' ? '\uFFFD' : c);
        return visible.ToString();
    }
}
