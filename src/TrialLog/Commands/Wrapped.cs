using TrialLog.Application.Wording;
using TrialLog.Domain.Values;

namespace TrialLog.Commands;

/// <summary>Text in lines of a given width, broken between words.</summary>
internal static class Wrapped
{
    /// <summary>
    /// Writes the text, each line but the first after <paramref name="hanging"/> blanks; the first after <paramref name="first"/>.
    /// </summary>
    public static void Write(TextWriter to, string text, int width, string first = "", int hanging = 0)
    {
        // The first line's lead may differ in width from the others' blanks, so it is broken off first.
        string line = first;
        bool fresh = true;
        foreach (string word in Lines.Words(text.ReplaceLineEndings(" ")))
        {
            if (!fresh && line.Length + 1 + word.Length > width)
            {
                to.WriteLine(line);
                line = new string(' ', hanging);
                fresh = true;
            }

            line += fresh ? word : " " + word;
            fresh = false;
        }

        to.WriteLine(line.TrimEnd());
    }
}
