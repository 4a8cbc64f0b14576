using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Information;

/// <summary>The outings that compare lengths, one within the other: what is told apart from wind and water.</summary>
/// <param name="Outings">Which outings of the table, by the calendar.</param>
internal sealed record Comparisons(IReadOnlyList<int> Outings)
{
    /// <summary>Lengths nearer than this are one length, inches.</summary>
    private const double DifferentInches = 0.2;

    /// <summary>How many.</summary>
    public int Count => Outings.Count;

    /// <summary>Those of a log.</summary>
    public static Comparisons Of(PieceTable table)
    {
        List<int> comparing = [];
        for (int j = 0; j < table.Outings.Count; j++)
            if (Width(table, j) > DifferentInches)
                comparing.Add(j);
        return new(comparing);
    }

    /// <summary>The latest in that hull; null where there is none.</summary>
    public int? LatestIn(PieceTable table, Guid hull)
    {
        for (int k = Outings.Count - 1; k >= 0; k--)
            if (table.Outings[Outings[k]].HullId == hull)
                return Outings[k];
        return null;
    }

    /// <summary>Longest less shortest of an outing, inches.</summary>
    public static double Width(PieceTable table, int outing)
    {
        double least = double.MaxValue, most = double.MinValue;
        for (int i = table.OutingStart[outing]; i < table.OutingStart[outing + 1]; i++)
            (least, most) = (Math.Min(least, table.Aligned[i]), Math.Max(most, table.Aligned[i]));
        return most - least;
    }
}
