using TrialLog.Application.Wording;
using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary>What stands in place of a page while soreness stands.</summary>
internal static class RestText
{
    /// <summary>Writes it, and says so; writes nothing where nothing hurts.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="title">The page's own title.</param>
    /// <param name="page">What is said (<see cref="RestFirst"/>); null where nothing hurts.</param>
    /// <param name="width">Columns to write into.</param>
    public static bool Instead(TextWriter to, string title, IReadOnlyList<string>? page, int width)
    {
        if (page is null)
            return false;
        to.WriteLine(title);
        to.WriteLine();
        for (int i = 0; i < page.Count; i++)
        {
            bool caution = i > 0 && i < page.Count - 1;
            Wrapped.Write(to, page[i], width, caution ? "Caution: " : "", caution ? 9 : 0);
        }

        return true;
    }
}
