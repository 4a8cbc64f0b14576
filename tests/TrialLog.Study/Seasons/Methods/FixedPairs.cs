using MathNet.Numerics.LinearAlgebra;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Study.Seasons.Methods;

/// <summary>
/// Mirrored pairs planned beforehand, turn about around the start length, and least squares with a level for each outing.
/// Where lengths cannot be changed on the water the pair is spread over two outings.
/// </summary>
internal sealed class FixedPairs(World world) : ISearchMethod
{
    private const double Farthest = 1.5;
    private static readonly (double A, double B)[] Pairs = [(-1, 1), (0, 1.5), (-1.5, 0), (-0.5, 1.5), (-1.5, 0.5)];
    private readonly List<Outing> _outings = [];
    private double _top;

    public IReadOnlyList<Length> Plan()
    {
        int turn = world.SwapsOnWater ? _outings.Count : _outings.Count / 2;
        (double a, double b) = Pairs[turn % Pairs.Length];
        if (!world.SwapsOnWater)
            (a, b) = _outings.Count % 2 == 0 ? (a, a) : (b, b);
        List<Length> lengths = [];
        for (int i = 0; i < world.Pieces; i++)
            lengths.Add(SimulatedPaddler.Start.PlusInches(i % 4 is 0 or 3 ? a : b));
        return lengths;
    }

    public void Learn(Outing outing)
    {
        _outings.Add(outing);
        if (_outings.Count < 3)
            return;
        // One level for each outing where lengths differ within it, one for all where they do not.
        int levels = world.SwapsOnWater ? _outings.Count : 1;
        List<(int Outing, Piece Piece)> rows = [.. _outings.SelectMany((one, at) => one.Pieces.Select(piece => (at, piece)))];
        Matrix<double> design = Matrix<double>.Build.Dense(rows.Count, levels + 2, (row, column) =>
        {
            double away = rows[row].Piece.Length.InchesMoreThan(SimulatedPaddler.Start);
            return column == levels ? away : column == levels + 1 ? away * away : column == rows[row].Outing % levels ? 1 : 0;
        });
        Vector<double> fitted = design.QR()
            .Solve(Vector<double>.Build.Dense(rows.Count, row => 100 * Math.Log(rows[row].Piece.MetresPerSecond)));
        _top = Parabola.Top(Vector<double>.Build.Dense([0, fitted[levels], fitted[levels + 1]]), Farthest) ?? _top;
    }

    public Recommendation Recommend() => new(SimulatedPaddler.Start.Inches + Math.Round(4 * _top) / 4);
}
