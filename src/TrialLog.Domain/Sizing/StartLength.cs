namespace TrialLog.Domain;

/// <summary>Where a search starts, how sure that is, and what would make it surer.</summary>
/// <param name="Length">Overall length for a solo canoe with the reference blade.</param>
/// <param name="SpreadInches">Standard deviation of the best length around it, inches: the prior's width in the model.</param>
/// <param name="Basis">What it rests on.</param>
public sealed record StartLength(Length Length, double SpreadInches, StartLengthBasis Basis)
{
    /// <summary>
    /// Spread of the best length around a measured seated reach, inches. Chosen so that the rule's "within about 95 %"
    /// (common practice, no source) covers the half of the paddlers whose reach is near 50 in; no published figure.
    /// </summary>
    public const double SpreadByReachInches = 0.8;

    /// <summary>Standard deviation of seated reach once stature is known, inches: 0.94 (ANSUR II, n = 6,068; Gordon et al. 2014, NATICK/TR-15/007).</summary>
    public const double ReachByStatureSpreadInches = 0.94;

    /// <summary>Mean and standard deviation of seated reach when nothing at all is known, inches (ANSUR II, women and men weighted alike).</summary>
    private const double MeanReachInches = 49.8, ReachSpreadInches = 2.9;

    /// <summary>The start length from the best of what is known: a paddle that suits, seated reach, segments, stature, nothing.</summary>
    public static StartLength From(BodyMeasures body, Length? known)
    {
        if (known is { } suits)
            return new(suits, SpreadByReachInches, StartLengthBasis.KnownPaddle);
        if (body.SeatedReach is { } reach)
            return new(reach, SpreadByReachInches, StartLengthBasis.SeatedReach);
        if (body is { SittingShoulderHeight: { } shoulder, ShoulderElbow: { } upper, ElbowGrip: { } lower })
            return new(Length.FromInches(shoulder.Inches + upper.Inches + lower.Inches), SpreadByReachInches, StartLengthBasis.Segments);
        return body.Stature is { } stature
            ? new(Length.FromInches(0.7420 * stature.Inches + 0.4205), Both(ReachByStatureSpreadInches), StartLengthBasis.Stature)
            : new(Length.FromInches(MeanReachInches), Both(ReachSpreadInches), StartLengthBasis.Nothing);

        static double Both(double reachSpread) => Math.Sqrt(reachSpread * reachSpread + SpreadByReachInches * SpreadByReachInches);
    }

    /// <summary>The start length of that paddler.</summary>
    public static StartLength Of(Paddler paddler) => From(paddler.Body, paddler.KnownLength);
}

/// <summary>What a start length rests on.</summary>
public enum StartLengthBasis
{
    /// <summary>A paddle already known to suit.</summary>
    KnownPaddle,

    /// <summary>Seated reach, measured.</summary>
    SeatedReach,

    /// <summary>Seated reach added up from sitting shoulder height, upper arm and forearm to grip.</summary>
    Segments,

    /// <summary>Seated reach estimated from stature.</summary>
    Stature,

    /// <summary>The average adult.</summary>
    Nothing,
}
