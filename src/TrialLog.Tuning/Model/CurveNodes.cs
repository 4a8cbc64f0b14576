using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// The grid over the curvature c and the duration effect κ. Given both, and the two spreads, the best lengths of all hulls
/// and the lopsidedness g are jointly normal but for g's two ends, so they need no grid: each node holds a weight, and the mean and
/// variance of each hull's θ and, last, of g.
/// </summary>
internal sealed class CurveNodes
{
    private const double Negligible = 45;
    private readonly PieceTable _table;

    /// <param name="table">The pieces.</param>
    /// <param name="prior">What is believed of the best lengths.</param>
    /// <param name="settings">The other priors.</param>
    /// <param name="axes">Where the nodes stand.</param>
    /// <param name="gram">The Gram matrix; null where no piece counts.</param>
    /// <param name="logBase">Log density of the spreads with all that is free of the curve.</param>
    /// <param name="credit">How much of what the pieces say about the curve is believed, 0 to 1; see
    /// <see cref="HeavyTails.Credit"/>.</param>
    /// <param name="moments">Whether means and variances are wanted, too, or the weights alone.</param>
    public CurveNodes(PieceTable table, BestLengthPrior prior, TuningSettings settings, CurveAxes axes, ReducedGram? gram, double logBase,
        double credit, bool moments)
    {
        _table = table;
        LogCurvatures = axes.LogCurvatures;
        DurationEffects = axes.DurationEffects;
        Count = prior.Components * DurationEffects.Length * LogCurvatures.Length;
        LogWeights = new double[Count];
        Unknowns = prior.Hulls + 1;
        int places = moments ? Count * Unknowns : 0;
        Means = new double[places];
        Variances = new double[places];
        WithSkew = new double[places];
        LogSum = Fill(prior, settings, axes, gram, logBase, credit, moments);
    }

    /// <summary>Logarithms of the curvature, evenly spaced.</summary>
    public double[] LogCurvatures { get; }

    /// <summary>Duration effects κ, evenly spaced.</summary>
    public double[] DurationEffects { get; }

    /// <summary>Nodes: by prior component, then κ, then c.</summary>
    public int Count { get; }

    /// <summary>Log weight of each node.</summary>
    public double[] LogWeights { get; }

    /// <summary>How many unknowns each node holds: one θ a hull, and g.</summary>
    public int Unknowns { get; }

    /// <summary>Mean by node, then by unknown.</summary>
    public double[] Means { get; }

    /// <summary>Variance by node, then by unknown.</summary>
    public double[] Variances { get; }

    /// <summary>Covariance with g by node, then by unknown.</summary>
    public double[] WithSkew { get; }

    /// <summary>Logarithm of the sum of the weights.</summary>
    public double LogSum { get; }

    /// <summary>The node's place.</summary>
    public int Node(int component, int duration, int curvature) =>
        (component * DurationEffects.Length + duration) * LogCurvatures.Length + curvature;

    private double Fill(BestLengthPrior prior, TuningSettings settings, CurveAxes axes, ReducedGram? gram, double logBase, double credit,
        bool moments)
    {
        int hulls = prior.Hulls, skew = hulls, unknowns = Unknowns, data = _table.HullsWithPieces;
        double skewPriorSd = Math.Max(settings.SkewSpread, 1e-6), skewPrecision = 1 / (skewPriorSd * skewPriorSd),
            skewLimit = settings.SkewLimit;
        Span<double> responsePlain = stackalloc double[data], responseSlope = stackalloc double[data];
        Span<double> plainSlope = stackalloc double[data], slopeSkew = stackalloc double[data];
        Span<double> slopes = new double[data * data];
        Span<double> precision = new double[unknowns * unknowns], pull = stackalloc double[unknowns];
        Span<double> column = stackalloc double[unknowns];
        Span<double> curvatures = stackalloc double[LogCurvatures.Length];
        for (int at = 0; at < curvatures.Length; at++)
            curvatures[at] = Math.Exp(LogCurvatures[at]);
        double most = double.NegativeInfinity;
        for (int duration = 0; duration < DurationEffects.Length; duration++)
        {
            double responses = 0, responsesPlain = 0, plains = 0, responseSkew = 0, plainSkew = 0, skews = 0;
            if (gram is not null)
            {
                Contract(gram, DurationEffects[duration], out responses, out responsesPlain, out plains, responsePlain, responseSlope,
                    plainSlope, slopes);
                ContractSkew(gram, DurationEffects[duration], out responseSkew, out plainSkew, out skews, slopeSkew);
            }

            for (int component = 0; component < prior.Components; component++)
                for (int at = 0; at < LogCurvatures.Length; at++)
                {
                    double c = curvatures[at], credited = credit * c * c;
                    double[] priorPrecision = prior.Precisions[component];
                    for (int a = 0; a < hulls; a++)
                    {
                        for (int b = 0; b <= a; b++)
                            precision[a * unknowns + b] = priorPrecision[a * hulls + b] + (a < data ? credited * slopes[a * data + b] : 0);
                        precision[a * unknowns + a] += prior.EvidencePrecision[a];
                        precision[skew * unknowns + a] = a < data ? credited * slopeSkew[a] : 0;
                        pull[a] = prior.Pulls[component][a] + prior.EvidencePull[a]
                            - (a < data ? credit * c * responseSlope[a] + credited * plainSlope[a] : 0);
                    }

                    precision[skew * unknowns + skew] = skewPrecision + credited * skews;
                    pull[skew] = -(credit * c * responseSkew + credited * plainSkew);
                    double logDeterminant = Cholesky.Factor(precision, unknowns);
                    Cholesky.Forward(precision, unknowns, pull);
                    double explained = 0;
                    for (int a = 0; a < unknowns; a++)
                        explained += pull[a] * pull[a];
                    Cholesky.Backward(precision, unknowns, pull);
                    double square = prior.Squares[component] + responses + credit * 2 * c * responsesPlain + credited * plains;
                    int node = Node(component, duration, at);
                    // Of the inverse factor's columns g's has but its last entry.
                    double skewSpread = 1 / precision[skew * unknowns + skew];
                    double least = (-skewLimit - pull[skew]) / skewSpread, largest = (skewLimit - pull[skew]) / skewSpread;
                    double free = logBase + prior.LogShares[component] + axes.LogCurvatureDensity[at] + axes.LogDurationDensity[duration]
                        - 0.5 * (square - explained + logDeterminant);
                    // So far below the others no node counts, whatever the ends of g leave of it.
                    if (free < most - Negligible)
                    {
                        LogWeights[node] = double.NegativeInfinity;
                        continue;
                    }

                    if (!moments)
                    {
                        LogWeights[node] = free + TruncatedNormal.LogMassBetween(least, largest);
                        most = Math.Max(most, LogWeights[node]);
                        continue;
                    }

                    TruncatedNormal held = TruncatedNormal.Between(least, largest);
                    LogWeights[node] = free + held.LogMass;
                    most = Math.Max(most, LogWeights[node]);
                    for (int a = 0; a < unknowns; a++)
                    {
                        column.Clear();
                        column[a] = 1;
                        Cholesky.Forward(precision, unknowns, column);
                        double variance = 0;
                        for (int b = a; b < unknowns; b++)
                            variance += column[b] * column[b];
                        // What holding g between its ends does to θ goes by θ's regression on g, so mean and variance are exact.
                        double perSpread = column[skew];
                        Means[node * unknowns + a] = pull[a] + perSpread * held.Mean;
                        Variances[node * unknowns + a] = variance - perSpread * perSpread * (1 - held.Variance);
                        WithSkew[node * unknowns + a] = perSpread * skewSpread * held.Variance;
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
                plains += shares * (
                    PlainWith(matrix, size, other, at + 1, kappa) - 2 * kappa * PlainWith(matrix, size, other, at + 3, kappa)
                    + kappa * kappa * PlainWith(matrix, size, other, at + 4, kappa));
                slopes[a * data + b] = shares * 4 * (matrix[(at + 2) * size + other + 2] - kappa * matrix[(at + 2) * size + other + 5]
                    - kappa * matrix[(at + 5) * size + other + 2] + kappa * kappa * matrix[(at + 5) * size + other + 5]);
            }

            plainSlope[a] = withPlain;
        }
    }

    /// <summary>The same for the lopsided part g s c (x − top) |x − top|; its column has the share inside already.</summary>
    private void ContractSkew(ReducedGram gram, double kappa, out double responseSkew, out double plainSkew, out double skews,
        Span<double> slopeSkew)
    {
        int size = gram.Size, last = size - 1;
        double[] matrix = gram.Matrix;
        responseSkew = matrix[last];
        skews = matrix[last * size + last];
        plainSkew = 0;
        for (int a = 0; a < _table.HullsWithPieces; a++)
        {
            int at = PieceTable.HullColumns * a;
            plainSkew += _table.Share[a] * PlainWith(matrix, size, at, last, kappa);
            slopeSkew[a] = 2 * _table.Share[a] * (kappa * matrix[(at + 5) * size + last] - matrix[(at + 2) * size + last]);
        }
    }

    private static double PlainWith(double[] matrix, int size, int hull, int column, double kappa) =>
        matrix[(hull + 1) * size + column] - 2 * kappa * matrix[(hull + 3) * size + column]
            + kappa * kappa * matrix[(hull + 4) * size + column];
}
