namespace TrialLog.Tuning.Model;

/// <summary>
/// Raw moments of best length θ (at the reference duration), duration effect κ and lopsidedness g over a part of the posterior.
/// </summary>
/// <param name="Weight">Its probability.</param>
/// <param name="Curvature">c, percent per inch squared: the same all over it.</param>
/// <param name="Best">E[θ].</param>
/// <param name="Duration">E[κ].</param>
/// <param name="Skew">E[g].</param>
/// <param name="BestSquare">E[θ²].</param>
/// <param name="DurationSquare">E[κ²].</param>
/// <param name="SkewSquare">E[g²].</param>
/// <param name="BestDuration">E[θκ].</param>
/// <param name="BestSkew">E[θg].</param>
/// <param name="DurationSkew">E[κg].</param>
internal readonly record struct CurveCell(
    double Weight, double Curvature, double Best, double Duration, double Skew, double BestSquare, double DurationSquare, double SkewSquare,
    double BestDuration, double BestSkew, double DurationSkew)
{
    private const double LeastVariance = 1e-8;

    /// <summary>
    /// The part as a normal of the best lengths at two durations (logarithms over the reference duration) and g, the best lengths with
    /// that much more variance.
    /// </summary>
    public PosteriorComponent At(double goal, double card, double more)
    {
        double best = Variance(BestSquare, Best, Best) + more, duration = Variance(DurationSquare, Duration, Duration),
            both = Variance(BestDuration, Best, Duration);
        double bestSkew = Variance(BestSkew, Best, Skew), durationSkew = Variance(DurationSkew, Duration, Skew);
        return new(Weight, Curvature,
            Best + goal * Duration, Math.Max(LeastVariance, best + goal * (2 * both + goal * duration)),
            Best + card * Duration, Math.Max(LeastVariance, best + card * (2 * both + card * duration)),
            best + (goal + card) * both + goal * card * duration,
            Skew, Math.Max(0, Variance(SkewSquare, Skew, Skew)), bestSkew + goal * durationSkew);

        static double Variance(double product, double a, double b) => product - a * b;
    }

    /// <summary>Several parts of one curvature as one.</summary>
    public static CurveCell Merged(IEnumerable<CurveCell> cells)
    {
        CurveCell sum = default;
        foreach (CurveCell cell in cells)
        {
            double weight = cell.Weight;
            sum = new(sum.Weight + weight, cell.Curvature, sum.Best + weight * cell.Best, sum.Duration + weight * cell.Duration,
                sum.Skew + weight * cell.Skew,
                sum.BestSquare + weight * cell.BestSquare, sum.DurationSquare + weight * cell.DurationSquare,
                    sum.SkewSquare + weight * cell.SkewSquare,
                sum.BestDuration + weight * cell.BestDuration, sum.BestSkew + weight * cell.BestSkew,
                    sum.DurationSkew + weight * cell.DurationSkew);
        }

        return sum.Over(sum.Weight);
    }

    /// <summary>The moments divided by a weight, which stays as it is.</summary>
    public CurveCell Over(double weight) =>
        new(Weight, Curvature, Best / weight, Duration / weight, Skew / weight, BestSquare / weight, DurationSquare / weight,
        SkewSquare / weight,
        BestDuration / weight, BestSkew / weight, DurationSkew / weight);
}
