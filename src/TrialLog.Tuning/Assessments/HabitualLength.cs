using TrialLog.Domain.Boats;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Assessments;

/// <summary>Where the paddler is now, and what the body is used to.</summary>
/// <param name="Current">The length most paddled of late in outings of one length, in this hull with this paddle, else the start length
/// carried over, as a setting of the paddle.</param>
/// <param name="Paddled">Whether it was paddled so; false where it is the start length.</param>
/// <param name="UsedToInches">Median length of late in any hull and with any paddle, carried over, inches.</param>
internal sealed record HabitualLength(Length Current, bool Paddled, double UsedToInches)
{
    /// <summary>How many outings back "of late" goes.</summary>
    private const int OutingsOfLate = 5;

    /// <summary>What the log tells.</summary>
    public static HabitualLength Of(AnalysisInput question, PieceTable table, Alignment alignment)
    {
        AllowedSettings whole = AllowedSettings.Of(question.Paddle, null);
        Length start = whole.Nearest(alignment.LengthInches(0, question.Hull, question.Paddle.Blade));
        List<double> late = [];
        for (int j = Math.Max(0, table.Outings.Count - OutingsOfLate); j < table.Outings.Count; j++)
            for (int i = table.OutingStart[j]; i < table.OutingStart[j + 1]; i++)
                late.Add(alignment.LengthInches(table.Aligned[i], question.Hull, question.Paddle.Blade));
        late.Sort();
        double usedTo = late.Count == 0 ? start.Inches : 0.5 * (late[(late.Count - 1) / 2] + late[late.Count / 2]);

        Dictionary<Length, int> counts = [];
        int outings = 0;
        for (int j = table.Outings.Count - 1; j >= 0 && outings < OutingsOfLate; j--)
        {
            if (table.Outings[j].HullId != question.Hull.Id)
                continue;
            // Lengths compared within an outing are trials, not where the paddler is.
            List<Length> lengths = [];
            for (int i = table.OutingStart[j]; i < table.OutingStart[j + 1]; i++)
                if (table.Pieces[i].PaddleId == question.Paddle.Id)
                    lengths.Add(table.Pieces[i].Length);
            if (lengths.Count == 0 || lengths.Exists(length => length != lengths[0]))
                continue;
            counts[lengths[0]] = counts.GetValueOrDefault(lengths[0]) + lengths.Count;
            outings++;
        }

        Length? most = null;
        foreach ((Length length, int count) in counts.OrderBy(pair => pair.Key))
            if (most is not { } known || count > counts[known]
                || (count == counts[known] && Math.Abs(length.Inches - usedTo) < Math.Abs(known.Inches - usedTo) - 1e-9))
                most = length;
        return new(most ?? start, most is not null, usedTo);
    }
}
