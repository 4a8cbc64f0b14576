using TrialLog.Tuning.Checks;

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
public sealed record ClassicalFit(
    int Pieces, int Outings, IReadOnlyList<Coefficient> Coefficients, double CentreInches,
    double OutingSd, double PieceSd, double? VertexInches, FiellerInterval? Vertex)
{
    /// <summary>Why there is no fit; null where there is one.</summary>
    public NoFit? NoFit { get; init; }

    /// <summary>How many different lengths were paddled.</summary>
    public int Lengths { get; init; }

    /// <summary>How many effects there were to fit.</summary>
    public int Effects { get; init; }

    /// <summary>Terms that the fit does without, wholly or in part.</summary>
    public IReadOnlyList<OmittedTerm> Omitted { get; init; } = [];
}

/// <summary>Why no number of a fit could be trusted.</summary>
public enum NoFit
{
    /// <summary>No piece in that hull counts.</summary>
    NoPiece,

    /// <summary>Fewer than the three lengths that a parabola needs.</summary>
    FewLengths,

    /// <summary>One outing, so that outings cannot be told apart from pieces.</summary>
    OneOuting,

    /// <summary>The lengths lie too close together.</summary>
    CloseLengths,

    /// <summary>Nothing is left over to judge the error by.</summary>
    FewPieces,

    /// <summary>The effects explain all, to the last digit.</summary>
    NoError,
}

/// <summary>A term that a fit does without.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Why">Why.</param>
/// <param name="Missing">Pieces that it was not told for, where it was told for some.</param>
/// <param name="Of">Of how many.</param>
public sealed record OmittedTerm(string Name, Omitted Why, int Missing = 0, int Of = 0);

/// <summary>Why a fit does without a term.</summary>
public enum Omitted
{
    /// <summary>It was told for no piece.</summary>
    NotTold,

    /// <summary>It was told for some pieces; the others have the mean.</summary>
    PartlyTold,

    /// <summary>It was the same throughout.</summary>
    NeverVaried,

    /// <summary>It went with the others.</summary>
    Inseparable,
}

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
