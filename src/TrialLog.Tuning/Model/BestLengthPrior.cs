using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// What is believed of the best aligned length in each hull before any piece: θ ~ N(0, s0) around the start length (or what a squad has
/// taught), in each hull θ + δ with δ ~ N(0, spread between hulls), and a share of paddlers whose start length is further off. Technique
/// checks count as weak evidence.
/// </summary>
internal sealed class BestLengthPrior
{
    private BestLengthPrior(int hulls, double[] logShares, double[][] precisions, double[][] pulls, double[] squares,
        double[] evidencePrecision, double[] evidencePull) =>
        (Hulls, LogShares, Precisions, Pulls, Squares, EvidencePrecision, EvidencePull) = (
            hulls, logShares, precisions, pulls, squares, evidencePrecision, evidencePull);

    /// <summary>Hulls.</summary>
    public int Hulls { get; }

    /// <summary>Number of normal components.</summary>
    public int Components => LogShares.Length;

    /// <summary>Logarithm of each component's share, less half the log determinant of its covariance.</summary>
    public double[] LogShares { get; }

    /// <summary>Each component's precision matrix, row-major.</summary>
    public double[][] Precisions { get; }

    /// <summary>Each component's precision times its mean, by hull: the offset that a squad has taught.</summary>
    public double[][] Pulls { get; }

    /// <summary>Each component's mean times that.</summary>
    public double[] Squares { get; }

    /// <summary>Precision that technique checks add in each hull.</summary>
    public double[] EvidencePrecision { get; }

    /// <summary>The same times the length they imply.</summary>
    public double[] EvidencePull { get; }

    /// <summary>The prior of a question.</summary>
    public static BestLengthPrior Of(AnalysisInput question, PieceTable table, Alignment alignment, double spread)
    {
        TuningSettings settings = question.Settings;
        (double Share, double Factor)[] components = StartBelief.Components(settings);
        int hulls = table.Hulls.Count;
        // What differs between hulls is part of the spread around the start length, not on top of it, so that each hull's best
        // length has that spread however many hulls are in the log. A hull that only others speak for has more on top.
        double own = Math.Clamp(settings.HullSpreadInches * settings.HullSpreadInches, 1e-6, 0.5 * spread * spread), sumOfPrecisions = 0;
        double[] owns = new double[hulls];
        for (int h = 0; h < hulls; h++)
        {
            bool carried = h >= table.HullsWithPieces && table.HullsWithPieces > 0;
            owns[h] = carried ? own * settings.UnpaddledHullFactor * settings.UnpaddledHullFactor : own;
            sumOfPrecisions += 1 / owns[h];
        }

        double[] logShares = new double[components.Length];
        double[][] precisions = new double[components.Length][], pulls = new double[components.Length][];
        double[] squares = new double[components.Length];
        double offset = question.Squad?.OffsetInches ?? 0;
        for (int m = 0; m < components.Length; m++)
        {
            double common = components[m].Factor * components[m].Factor * spread * spread - own, one = 1 + common * sumOfPrecisions;
            logShares[m] = Math.Log(components[m].Share) - 0.5 * Math.Log(one);
            // Covariance common·11ᵀ + diag(own), inverted by Sherman and Morrison's formula.
            double[] precision = new double[hulls * hulls];
            for (int a = 0; a < hulls; a++)
                for (int b = 0; b < hulls; b++)
                    precision[a * hulls + b] = ((a == b ? 1 : 0) - common / owns[b] / one) / owns[a];
            precisions[m] = precision;
            pulls[m] = new double[hulls];
            for (int a = 0; a < hulls; a++)
                for (int b = 0; b < hulls; b++)
                    pulls[m][a] += precision[a * hulls + b] * offset;
            squares[m] = pulls[m].Sum() * offset;
        }

        double[] evidence = new double[hulls], pull = new double[hulls];
        TechniqueEvidence.Set(question, table, alignment, evidence, pull);
        return new(hulls, logShares, precisions, pulls, squares, evidence, pull);
    }
}
