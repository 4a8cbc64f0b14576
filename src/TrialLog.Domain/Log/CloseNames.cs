using System.Globalization;
using System.Text;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>
/// Names that are known, among which a slip of the finger is told from another name. The bounds are chosen, no source: wide
/// enough to catch a typo, since whoever means another name need only say so.
/// </summary>
/// <param name="known">The names that are known.</param>
public sealed class CloseNames(IEnumerable<string> known)
{
    private const int LettersForOneSlip = 4, LettersForTwoSlips = 8;

    private readonly HashSet<string> _known = new(known, StringComparer.OrdinalIgnoreCase);
    private List<Spelling>? _spellings;

    /// <summary>
    /// The known name for which <paramref name="name"/> is likely a slip; null if none is, or if it is known itself. Names that
    /// differ only by case are one name.
    /// </summary>
    public string? To(string name)
    {
        if (_known.Contains(name))
            return null;
        _spellings ??= [.. _known.Select(Spelling.Of)];
        var asked = Spelling.Of(name);
        (string? nearest, int fewest) = (null, int.MaxValue);
        foreach (Spelling other in _spellings)
        {
            if (asked.SlipsTo(other) is { } slips && slips < fewest)
                (nearest, fewest) = (other.Name, slips);
        }

        return nearest;
    }

    /// <param name="Name">The name as it is written.</param>
    /// <param name="Plain">Its letters and digits alone, without case and accents.</param>
    /// <param name="Marks">Its numbers and initials, by which people and boats are told apart on purpose: <c>OC1</c> and <c>OC2</c>,
    /// <c>Tova L</c> and <c>Tova M</c>.</param>
    private sealed record Spelling(string Name, string Plain, string Marks)
    {
        public static Spelling Of(string name) => new(name, PlainOf(name), MarksOf(name));

        /// <summary>How many slips lie between two names; null where it is more than typing goes wrong.</summary>
        public int? SlipsTo(Spelling other)
        {
            int letters = Math.Min(Plain.Length, other.Plain.Length);
            if (letters == 0)
                return null;
            if (Plain == other.Plain)
                return 0;
            int most = letters >= LettersForTwoSlips ? 2 : letters >= LettersForOneSlip ? 1 : 0;
            if (Math.Abs(Plain.Length - other.Plain.Length) > most || Marks != other.Marks)
                return null;
            int slips = Distance(Plain, other.Plain);
            return slips <= most ? slips : null;
        }
    }

    private static string PlainOf(string name)
    {
        var plain = new StringBuilder(name.Length);
        foreach (Rune rune in Accents.Decompose(name).EnumerateRunes())
        {
            // Marks of scripts other than Latin are vowels and tones: they stay.
            if (Rune.IsLetterOrDigit(rune)
                || (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark
                && rune.Value is < 0x300 or > 0x36F))
                plain.Append(Rune.ToUpperInvariant(rune).ToString());
        }

        return plain.ToString();
    }

    private static string MarksOf(string name)
    {
        var marks = new StringBuilder();
        foreach (string word in name.Split([' ', '.', '-', '_', '\''], StringSplitOptions.RemoveEmptyEntries))
            marks.Append(word.Length == 1 ? word.ToUpperInvariant() : string.Concat(word.Where(char.IsDigit))).Append(' ');
        return marks.ToString().Trim();
    }

    /// <summary>
    /// Letters put in, left out, mistaken or swapped with the next: the optimal string alignment distance (Damerau 1964, Commun ACM
    /// 7(3):171-6).
    /// </summary>
    private static int Distance(string a, string b)
    {
        var cost = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
            cost[i, 0] = i;
        for (int j = 0; j <= b.Length; j++)
            cost[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int mistaken = a[i - 1] == b[j - 1] ? 0 : 1;
                cost[i, j] = Math.Min(cost[i - 1, j - 1] + mistaken, 1 + Math.Min(cost[i - 1, j], cost[i, j - 1]));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
            }
        }

        return cost[a.Length, b.Length];
    }
}
