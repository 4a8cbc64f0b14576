using System.Runtime.CompilerServices;

namespace TrialLog.Tuning.Model;

/// <summary>
/// The grid over the curvature c and the duration effect κ. Given both, and the two spreads, the best lengths of all hulls
/// are jointly normal, so they need no grid: each node holds a weight and the mean and variance of each hull's θ.
/// </summary>
internal sealed class CurveNodes
{
    private readonly PieceTable _table;
    private readonly BestLengthPrior _prior;
    private readonly double[] _logCurvatureDensity, _logDurationDensity;

    public CurveNodes(PieceTable table, BestLengthPrior prior, TuningSettings settings, double[] logCurvatures, double[] durationEffects)
    {
        _table = table;
        _prior = prior;
        LogCurvatures = logCurvatures;
        DurationEffects = durationEffects;
        Count = prior.Components * durationEffects.Length * logCurvatures.Length;
        LogWeights = new double[Count];
        Means = new double[Count * prior.Hulls];
        Variances = new double[Count * prior.Hulls];
        _logCurvatureDensity = [.. logCurvatures.Select(at => LogNormal(at, Math.Log(settings.CurvatureMedian), settings.CurvatureLogSpread))];
        _logDurationDensity = [.. durationEffects.Select(at => LogNormal(at, 0, settings.DurationSpreadInches))];
    }

    /// <summary>Logarithms of the curvature, evenly spaced.</summary>
    public double[] LogCurvatures { get; }

    /// <summary>Duration effects κ, evenly spaced.</summary>
    public double[] DurationEffects { get; }

    /// <summary>Nodes: by prior component, then κ, then c.</summary>
    public int Count { get; }

    /// <summary>Log weight of each node.</summary>
    public double[] LogWeights { get; }

    /// <summary>Mean of θ by node, then by hull.</summary>
    public double[] Means { get; }

    /// <summary>Variance of θ by node, then by hull.</summary>
    public double[] Variances { get; }

    /// <summary>The node's place.</summary>
    public int Node(int component, int duration, int curvature) =>
        (component * DurationEffects.Length + duration) * LogCurvatures.Length + curvature;

    /// <summary>Fills the nodes; returns the logarithm of the sum of their weights.</summary>
    /// <param name="gram">The Gram matrix, computed; or null where no piece counts.</param>
    /// <param name="logBase">What it returned, with the log density of the spreads.</param>
    /// <param name="credit">How much of what the pieces say about the curve is believed, 0 to 1; see <see cref="HeavyTails.Credit"/>.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Evaluate(ReducedGram? gram, double logBase, double credit)
    {
        int hulls = _prior.Hulls, data = _table.HullsWithPieces;
        Span<double> responsePlain = stackalloc double[data], responseSlope = stackalloc double[data];
        Span<double> plainSlope = stackalloc double[data];
        Span<double> slopes = new double[data * data];
        Span<double> precision = new double[hulls * hulls], pull = stackalloc double[hulls], column = stackalloc double[hulls];
        double most = double.NegativeInfinity;
        for (int duration = 0; duration < DurationEffects.Length; duration++)
        {
            double responses = 0, responsesPlain = 0, plains = 0;
            if (gram is not null)
                Contract(gram, DurationEffects[duration], out responses, out responsesPlain, out plains, responsePlain, responseSlope, plainSlope, slopes);
            for (int component = 0; component < _prior.Components; component++)
                for (int at = 0; at < LogCurvatures.Length; at++)
                {
                    double c = Math.Exp(LogCurvatures[at]);
                    double[] prior = _prior.Precisions[component];
                    for (int a = 0; a < hulls; a++)
                    {
                        for (int b = 0; b <= a; b++)
                            precision[a * hulls + b] = prior[a * hulls + b] + (a < data ? credit * c * c * slopes[a * data + b] : 0);
                        precision[a * hulls + a] += _prior.EvidencePrecision[a];
                        pull[a] = _prior.EvidencePull[a] - (a < data ? credit * (c * responseSlope[a] + c * c * plainSlope[a]) : 0);
                    }

                    double logDeterminant = Cholesky.Factor(precision, hulls);
                    Cholesky.Forward(precision, hulls, pull);
                    double explained = 0;
                    for (int a = 0; a < hulls; a++)
                        explained += pull[a] * pull[a];
                    Cholesky.Backward(precision, hulls, pull);
                    double square = responses + credit * (2 * c * responsesPlain + c * c * plains);
                    int node = Node(component, duration, at);
                    double weight = logBase + _prior.LogShares[component] + _logCurvatureDensity[at] + _logDurationDensity[duration]
                        - 0.5 * (square - explained + logDeterminant);
                    LogWeights[node] = weight;
                    most = Math.Max(most, weight);
                    for (int a = 0; a < hulls; a++)
                    {
                        column.Clear();
                        column[a] = 1;
                        Cholesky.Forward(precision, hulls, column);
                        double variance = 0;
                        for (int b = a; b < hulls; b++)
                            variance += column[b] * column[b];
                        Means[node * hulls + a] = pull[a];
                        Variances[node * hulls + a] = variance;
                    }
                }
        }

        double sum = 0;
        for (int node = 0; node < Count; node++)
            sum += Math.Exp(LogWeights[node] - most);
        return most + Math.Log(sum);
    }

    /// <summary>
    /// The residual is y + Σ s c (x² − 2κ xt + κ² t²) + Σ θ s c (−2x + 2κ t), summed over hulls; these are its inner products,
    /// with the share s inside and the curvature c left outside.
    /// </summary>
    private void Contract(ReducedGram gram, double kappa, out double responses, out double responsesPlain, out double plains,
        Span<double> responsePlain, Span<double> responseSlope, Span<double> plainSlope, Span<double> slopes)
    {
        int data = _table.HullsWithPieces, size = gram.Size;
        double[] matrix = gram.Matrix;
        responses = matrix[0];
        responsesPlain = 0;
        plains = 0;
        for (int a = 0; a < data; a++)
        {
            double share = _table.Share[a];
            int at = 5 * a;
            responsePlain[a] = share * (matrix[at + 1] - 2 * kappa * matrix[at + 3] + kappa * kappa * matrix[at + 4]);
            responseSlope[a] = share * (-2 * matrix[at + 2] + 2 * kappa * matrix[at + 5]);
            responsesPlain += responsePlain[a];
            double withPlain = 0;
            for (int b = 0; b < data; b++)
            {
                double shares = share * _table.Share[b];
                int other = 5 * b;
                double plainX = PlainWith(matrix, size, other, at + 2, kappa), plainT = PlainWith(matrix, size, other, at + 5, kappa);
                withPlain += shares * (-2 * plainX + 2 * kappa * plainT);
                plains += shares * (PlainWith(matrix, size, other, at + 1, kappa) - 2 * kappa * PlainWith(matrix, size, other, at + 3, kappa)
                    + kappa * kappa * PlainWith(matrix, size, other, at + 4, kappa));
                slopes[a * data + b] = shares * 4 * (matrix[(at + 2) * size + other + 2] - kappa * matrix[(at + 2) * size + other + 5]
                    - kappa * matrix[(at + 5) * size + other + 2] + kappa * kappa * matrix[(at + 5) * size + other + 5]);
            }

            plainSlope[a] = withPlain;
        }
    }

    private static double PlainWith(double[] matrix, int size, int hull, int column, double kappa) =>
        matrix[(hull + 1) * size + column] - 2 * kappa * matrix[(hull + 3) * size + column] + kappa * kappa * matrix[(hull + 4) * size + column];

    private static double LogNormal(double at, double mean, double spread) => -0.5 * (at - mean) * (at - mean) / (spread * spread);
}
