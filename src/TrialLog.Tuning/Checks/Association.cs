using TrialLog.Domain.Log;

namespace TrialLog.Tuning.Checks;

/// <summary>How closely length goes with something else.</summary>
internal static class Association
{
    /// <summary>From this correlation on, half of the one follows from the other (0.7² ≈ ½). Chosen.</summary>
    public const double Tangled = 0.7;

    /// <summary>Pearson's correlation; 0 where either does not vary.</summary>
    public static double Correlation(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        if (first.Count < 2)
            return 0;
        double firstMean = first.Average(), secondMean = second.Average();
        double both = first.Zip(second, (a, b) => (a - firstMean) * (b - secondMean)).Sum();
        double size = Math.Sqrt(first.Sum(a => (a - firstMean) * (a - firstMean)) * second.Sum(b => (b - secondMean) * (b - secondMean)));
        return size < 1e-12 ? 0 : both / size;
    }

    /// <summary>
    /// The correlation between length and something else once the mean of each outing is taken from both: what differs
    /// between outings is the outing's own effect already.
    /// </summary>
    public static double WithinOutings(IEnumerable<CheckedPiece> pieces, Func<CheckedPiece, double> other)
    {
        List<double> lengths = [], others = [];
        foreach (IGrouping<Guid, CheckedPiece> outing in pieces.GroupBy(piece => piece.Outing.Id))
        {
            double meanLength = outing.Average(piece => piece.LengthInches), meanOther = outing.Average(other);
            lengths.AddRange(outing.Select(piece => piece.LengthInches - meanLength));
            others.AddRange(outing.Select(piece => other(piece) - meanOther));
        }

        return Correlation(lengths, others);
    }

    /// <summary>The share of the variation of length that lies between the groups, 0 to 1 (correlation ratio η²; Fisher 1925).</summary>
    public static double BetweenShare(IReadOnlyList<CheckedPiece> pieces, Func<CheckedPiece, Guid> group)
    {
        double mean = pieces.Average(piece => piece.Aligned);
        double all = pieces.Sum(piece => (piece.Aligned - mean) * (piece.Aligned - mean));
        double between = pieces.GroupBy(group).Sum(some => some.Count() * Math.Pow(some.Average(piece => piece.Aligned) - mean, 2));
        return all < 1e-12 ? 0 : between / all;
    }
}
