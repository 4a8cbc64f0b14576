namespace TrialLog.Screens.Base;

/// <summary>Something with lines in which a text can be found.</summary>
internal interface ISearched
{
    /// <summary>Goes to the line that holds the text: this one or the next, around the end; false where none does.</summary>
    /// <param name="text">What to find, without regard to case.</param>
    /// <param name="next">Whether to leave the line that one is on.</param>
    bool Find(string text, bool next);
}

/// <summary>Finds a line by what it holds.</summary>
internal static class Searching
{
    /// <summary>The line that holds the text, from one line on, around the end; −1 where none does.</summary>
    public static int Line(int count, int from, string text, bool next, Func<int, string> lineAt) =>
        Enumerable.Range(next ? 1 : 0, Math.Max(0, count)).Select(step => (from + step) % count)
            .FirstOrDefault(line => lineAt(line).Contains(text, StringComparison.CurrentCultureIgnoreCase), -1);
}
