using TrialLog.Tuning.Classical;

namespace TrialLog.Tuning.Model;

/// <summary>The lopsidedness g given curvature and best length: normal. The members are inner products of its column.</summary>
/// <param name="Top">Around which aligned length the lopsided part stands.</param>
/// <param name="PriorPrecision">1 / prior variance of g.</param>
/// <param name="Response">With log speed.</param>
/// <param name="Plain">With the squared lengths.</param>
/// <param name="Slope">With what multiplies c θ.</param>
/// <param name="Square">With itself.</param>
internal readonly record struct SkewGivenCurve(
    double Top, double PriorPrecision, double Response, double Plain, double Slope, double Square)
{
    /// <summary>What is believed before any piece.</summary>
    public static SkewGivenCurve Before(TuningSettings settings)
    {
        double spread = Math.Max(settings.SkewSpread, 1e-6);
        return new(0, 1 / (spread * spread), 0, 0, 0, 0);
    }

    /// <summary>What is known in the hull asked for, from a Gram matrix computed at the mode.</summary>
    public static SkewGivenCurve Of(PieceTable table, TuningSettings settings, ReducedGram gram, double credit)
    {
        int hull = table.AskedHull;
        if (hull >= table.HullsWithPieces)
            return Before(settings);
        int size = gram.Size, last = size - 1, at = PieceTable.HullColumns * hull;
        double share = table.Share[hull];
        double[] matrix = gram.Matrix;
        return Before(settings) with
        {
            Top = table.Tops[hull],
            Response = credit * matrix[last],
            Plain = credit * share * matrix[(at + 1) * size + last],
            Slope = -2 * credit * share * matrix[(at + 2) * size + last],
            Square = credit * matrix[last * size + last],
        };
    }

    /// <summary>Mean of c g.</summary>
    public double Coefficient(double c, double best) =>
        -c * c * (Response + c * (Plain + best * Slope)) / (PriorPrecision + c * c * Square);

    /// <summary>Variance of c g.</summary>
    public double Variance(double c) => c * c / (PriorPrecision + c * c * Square);

    /// <summary>What the lopsided part makes of a length: (x − top) |x − top|.</summary>
    public double Column(double aligned) => (aligned - Top) * Math.Abs(aligned - Top);
}
