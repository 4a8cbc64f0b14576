using MathNet.Numerics.LinearAlgebra;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Classical;

/// <summary>The pieces of one hull laid out for a regression: speed, columns that explain it, and the outing of each.</summary>
internal sealed class PieceDesign
{
    private readonly List<(string Name, double[] Values)> _columns = [];
    private readonly GramSchmidt _kept = new();
    private readonly List<OmittedTerm> _omitted = [];

    private PieceDesign(IReadOnlyList<CountedPiece> pieces)
    {
        Pieces = pieces;
        Lengths = [.. pieces.Select(piece => piece.LengthInches)];
        CentreInches = Lengths.Average();
        Speeds = [.. pieces.Select(piece => piece.LogSpeedPercent)];
        Dictionary<Guid, int> outings = pieces.Select(piece => piece.Outing.Id).Distinct().Select((id, index) => (id, index))
            .ToDictionary();
        OutingCount = outings.Count;
        Groups = [.. pieces.Select(piece => outings[piece.Outing.Id])];
    }

    /// <summary>The pieces, by outing and order.</summary>
    public IReadOnlyList<CountedPiece> Pieces { get; }

    /// <summary>Overall length of each piece, carried over to the blade asked for, inches.</summary>
    public double[] Lengths { get; }

    /// <summary>Their mean, which stands at zero in the columns.</summary>
    public double CentreInches { get; }

    /// <summary>100·ln(speed in m/s) of each piece.</summary>
    public double[] Speeds { get; }

    /// <summary>The outing of each piece, from 0.</summary>
    public int[] Groups { get; }

    /// <summary>How many outings.</summary>
    public int OutingCount { get; }

    /// <summary>Names of the columns kept: level, length, length squared, then what else could be told apart.</summary>
    public IReadOnlyList<string> Names => [.. _columns.Select(column => column.Name)];

    /// <summary>What the fit does without, and why.</summary>
    public IReadOnlyList<OmittedTerm> Omitted => _omitted;

    /// <summary>The columns kept, one row a piece.</summary>
    public Matrix<double> Columns => Matrix<double>.Build.DenseOfColumnArrays(_columns.Select(column => column.Values));

    /// <summary>
    /// Denominator degrees of freedom for the length terms: pieces less outings less the columns that vary inside an
    /// outing; where length itself does not, outings less the columns that do not vary. Source: Pinheiro and Bates 2000,
    /// Mixed-Effects Models in S and S-PLUS, section 2.4.2.
    /// </summary>
    public int DegreesOfFreedom
    {
        get
        {
            int inner = _columns.Count(column => VariesInsideAnOuting(column.Values));
            return VariesInsideAnOuting(Lengths) ? Pieces.Count - OutingCount - inner : OutingCount - (_columns.Count - inner);
        }
    }

    /// <summary>Lays out the pieces that count, in the hull asked for.</summary>
    public static PieceDesign Of(IReadOnlyList<CountedPiece> pieces)
    {
        var design = new PieceDesign(pieces);
        double[] fromCentre = [.. design.Lengths.Select(length => length - design.CentreInches)];
        design.Add("level", [.. pieces.Select(_ => 1.0)]);
        design.Add("length", fromCentre);
        design.Add("length squared", [.. fromCentre.Select(inches => inches * inches)]);
        design.Add("order", [.. pieces.Select(piece => piece.Piece.Order - 1.0)]);
        design.AddEffort();
        design.Add("ln distance", Centred([.. pieces.Select(piece => Math.Log(piece.Piece.Distance.Metres))]));
        return design;
    }

    private void AddEffort()
    {
        double?[] told = [.. Pieces.Select(piece => piece.Piece.Effort?.Points)];
        int missing = told.Count(points => points is null);
        if (missing == told.Length)
        {
            _omitted.Add(new("effort", Classical.Omitted.NotTold));
            return;
        }

        double mean = told.Average()!.Value;
        if (missing > 0)
            _omitted.Add(new("effort", Classical.Omitted.PartlyTold, missing, told.Length));
        Add("effort", [.. told.Select(points => (points ?? mean) - mean)]);
    }

    /// <summary>Keeps the column if it says something that the earlier ones do not.</summary>
    private void Add(string name, double[] values)
    {
        if (_kept.TryAdd(values))
            _columns.Add((name, values));
        else
            _omitted.Add(new(name, Varies(values) ? Classical.Omitted.Inseparable : Classical.Omitted.NeverVaried));
    }

    /// <summary>
    /// What least squares with a level for every outing leaves over: root mean square, percent of speed. Where it is
    /// zero, REML has no minimum.
    /// </summary>
    public double ResidualInsideOutings()
    {
        var inside = new GramSchmidt();
        foreach ((_, double[] values) in _columns.Skip(1))
            if (GramSchmidt.Norm(LessOutingMean(values)) > 1e-9)
                inside.TryAdd(LessOutingMean(values));
        return GramSchmidt.Norm(inside.Rest(LessOutingMean(Speeds))) / Math.Sqrt(Speeds.Length);
    }

    private double[] LessOutingMean(double[] values)
    {
        ILookup<int, double> byOuting = values.Zip(Groups).ToLookup(pair => pair.Second, pair => pair.First);
        double[] means = [.. Enumerable.Range(0, OutingCount).Select(outing => byOuting[outing].Average())];
        return [.. values.Select((value, row) => value - means[Groups[row]])];
    }

    private bool VariesInsideAnOuting(double[] values) => LessOutingMean(values).Any(value => Math.Abs(value) > 1e-9);

    private static bool Varies(double[] values) => values.Any(value => Math.Abs(value - values[0]) > 1e-9);

    private static double[] Centred(double[] values)
    {
        double mean = values.Average();
        return [.. values.Select(value => value - mean)];
    }
}
