namespace TrialLog.Tuning.Classical;

/// <summary>
/// The classical view: a random-intercept mixed model by REML with a quadratic in length, no prior. For one hull.
/// </summary>
/// <param name="Pieces">Pieces used.</param>
/// <param name="Outings">Outings used.</param>
/// <param name="Coefficients">Fixed effects in order, lengths in inches from <paramref name="CentreInches"/>.</param>
/// <param name="CentreInches">The length that stands at zero in the quadratic, inches.</param>
/// <param name="OutingSd">Standard deviation between outings, percent.</param>
/// <param name="PieceSd">Standard deviation of pieces within an outing, percent.</param>
/// <param name="VertexInches">The vertex of the parabola as an overall length in inches; null where it opens upwards or nothing
/// bends.</param>
/// <param name="Vertex">Fieller's interval for the vertex.</param>
/// <param name="Says">The result in a plain sentence, or why there is none.</param>
public sealed record ClassicalFit(
    int Pieces, int Outings, IReadOnlyList<Coefficient> Coefficients, double CentreInches,
    double OutingSd, double PieceSd, double? VertexInches, FiellerInterval? Vertex, string Says);

/// <summary>A fixed effect with its standard error.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Estimate">The estimate, in percent of speed per unit.</param>
/// <param name="StandardError">Its standard error.</param>
public sealed record Coefficient(string Name, double Estimate, double StandardError);

/// <summary>Fieller's interval for a ratio. Source: Fieller 1954, J R Stat Soc B 16(2):175-85.</summary>
/// <param name="Shape">Whether it is an interval, the outside of one, or everything.</param>
/// <param name="Low">The lower root, inches of overall length; NaN where <see cref="FiellerShape.Everything"/>.</param>
/// <param name="High">The upper root.</param>
/// <param name="Level">Confidence, 0.9.</param>
public sealed record FiellerInterval(FiellerShape Shape, double Low, double High, double Level);

/// <summary>The three shapes that Fieller's set takes.</summary>
public enum FiellerShape
{
    /// <summary>All between the roots.</summary>
    Bounded,

    /// <summary>All outside the roots: open-ended on both sides.</summary>
    Outside,

    /// <summary>The whole line: the data say nothing about the vertex.</summary>
    Everything,
}
