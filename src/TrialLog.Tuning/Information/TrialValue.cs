using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Information;

/// <summary>Two lengths compared within an outing, and what that is worth.</summary>
/// <param name="Short">Index of the shorter length among the candidates.</param>
/// <param name="Long">Index of the longer.</param>
/// <param name="Worth">What one outing of them is worth.</param>
internal readonly record struct Pair(int Short, int Long, CardWorth Worth);

/// <summary>What outings to come are worth: every pair of lengths that may be compared, tried on what is believed.</summary>
internal sealed class TrialValue
{
    /// <summary>No two lengths of a card stand closer than this, inches: a finer difference cannot be told in an outing.</summary>
    private const double Finest = 0.2;

    /// <summary>Length points for each curvature in the cloud that cards are tried on.</summary>
    private const int CloudLengths = 15;

    private readonly SkewGivenCurve _skew;
    private readonly ExpectedValueOfInformation _value;
    private readonly double _widest;
    private List<Pair>? _pairs;

    private TrialValue(IReadOnlyList<Length> candidates, double[] aligned, SkewGivenCurve skew, PlanningCloud cloud, double variance,
        double pieceVariance, double widest)
    {
        (Candidates, Aligned, _skew, Variance, PieceNoise, _widest) = (candidates, aligned, skew, variance, pieceVariance, widest);
        _value = new(cloud, skew);
    }

    /// <summary>The settings near enough to what the body is used to, by length.</summary>
    public IReadOnlyList<Length> Candidates { get; }

    /// <summary>The same on the common scale.</summary>
    public double[] Aligned { get; }

    /// <summary>Variance of one outing's contrast between two lengths, percent squared.</summary>
    public double Variance { get; }

    /// <summary>Variance of one piece, percent squared.</summary>
    public double PieceNoise { get; }

    /// <summary>Every pair that is not too wide, with its worth.</summary>
    public IReadOnlyList<Pair> Pairs => _pairs ??= TryPairs();

    /// <summary>What is believed and what may be paddled.</summary>
    /// <param name="input">What was asked.</param>
    /// <param name="fit">What is believed.</param>
    /// <param name="settings">The settings that may be paddled, by length.</param>
    /// <param name="usedToInches">What the body is used to: candidates lie within the step limit of it.</param>
    /// <param name="form">What the outing looks like.</param>
    public static TrialValue Of(AnalysisInput input, Fit fit, IReadOnlyList<Length> settings, double usedToInches, TrialForm form)
    {
        List<Length> candidates = Near(settings, usedToInches, input.Settings.StepLimitInches);
        double[] aligned = [.. candidates.Select(length => fit.Alignment.Align(length, input.Hull, input.Paddle.Blade))];
        double piece = PieceVariance(fit.Posterior, input.Settings, form);
        // Without swaps on the water it takes two outings to make one contrast, and what differs between them comes in.
        double variance = input.Paddler.SwapsOnWater ? 4 * piece / form.Pieces
            : 4 * (fit.Posterior.LogOuting.Mean(static log => Math.Exp(2 * log)) + piece / form.Pieces);
        return new(candidates, aligned, fit.Skew, PlanningCloud.Of(fit.Posterior, form.LogDuration(input.Settings), CloudLengths), variance,
            piece, input.Settings.CardWidthInches);
    }

    /// <summary>
    /// What a piece's noise amounts to for a contrast, percent squared: heavy tails lose (ν + 3)/(ν + 1) of the information
    /// (Fisher information of Student's t about its centre).
    /// </summary>
    public static double PieceVariance(Posterior posterior, TuningSettings settings, TrialForm form)
    {
        double nu = settings.DegreesOfFreedom, tails = double.IsPositiveInfinity(nu) ? 1 : (nu + 3) / (nu + 1);
        return tails * (posterior.LogPiece.Mean(static log => Math.Exp(2 * log)) + form.KnownVariance(settings));
    }

    /// <summary>What so many outings of the pair that tells most should win, percent of speed.</summary>
    public double Of(int outings)
    {
        if (Pairs.Count == 0)
            return 0;
        Pair best = Pairs.MaxBy(static pair => pair.Worth.Score);
        return Contrast(Aligned[best.Short], Aligned[best.Long], Variance / outings).Value;
    }

    /// <summary>The same at the least, quickly.</summary>
    public double AtLeast(int outings)
    {
        double most = 0;
        for (int a = 0; a < Aligned.Length; a++)
            for (int b = a + 1; b < Aligned.Length && Aligned[b] - Aligned[a] <= _widest + 1e-6; b++)
                most = Math.Max(
                    most, _value.AtLeast(Squares(Aligned[a], Aligned[b]), Aligned[a] - Aligned[b], Lopsided(Aligned[a], Aligned[b]),
                    Variance / outings));
        return most;
    }

    /// <summary>What a contrast of two lengths is worth.</summary>
    public CardWorth Contrast(double first, double second, double variance) =>
        _value.Of(Squares(first, second), first - second, Lopsided(first, second), variance);

    /// <summary>What a contrast of a length with the mean of others is worth.</summary>
    public CardWorth Contrast(double length, double mean, double meanSquare, double meanSkew, double variance) =>
        _value.Of(length * length - meanSquare, length - mean, _skew.Column(length) - meanSkew, variance);

    /// <summary>
    /// What an outing is worth that paddles these lengths in this order, by the one contrast of its pieces that tells most.
    /// </summary>
    public CardWorth Worth(ReadOnlySpan<double> aligned)
    {
        BestContrast best = _value.Best(aligned, PieceNoise);
        return _value.Of(best.Squares, best.Lengths, best.Lopsided, best.Variance);
    }

    private List<Pair> TryPairs()
    {
        List<Pair> pairs = [];
        for (int a = 0; a < Aligned.Length; a++)
            for (int b = a + 1; b < Aligned.Length && Aligned[b] - Aligned[a] <= _widest + 1e-6; b++)
                pairs.Add(new(a, b, Contrast(Aligned[a], Aligned[b], Variance)));
        return pairs;
    }

    private static double Squares(double first, double second) => first * first - second * second;

    private double Lopsided(double first, double second) => _skew.Column(first) - _skew.Column(second);

    private static List<Length> Near(IReadOnlyList<Length> settings, double usedToInches, double limit)
    {
        List<Length> near = [];
        foreach (Length setting in settings)
            if (Math.Abs(setting.Inches - usedToInches) <= limit + 1e-6 && (near.Count == 0 || setting.InchesMoreThan(near[^1]) >= Finest))
                near.Add(setting);
        if (near.Count == 0)
            near.Add(settings.MinBy(setting => Math.Abs(setting.Inches - usedToInches)));
        return near;
    }
}
