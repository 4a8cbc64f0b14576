using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tests.Domain.Sizing;

/// <summary>Random bodies.</summary>
internal static class Bodies
{
    public static readonly BodyMeasure[] Measures = Enum.GetValues<BodyMeasure>();

    /// <summary>
    /// Everything measured, as one body of random size with its own proportions; what the measures say of the reach agrees with it.
    /// </summary>
    public static readonly Gen<BodyMeasures> All =
        from stature in Gen.Double[58, 78]
        from share in Gen.Double[0.72, 0.75]
        from shoulder in Gen.Double[0.33, 0.35]
        from upper in Gen.Double[0.20, 0.21]
        from lower in Gen.Double[0.195, 0.205]
        from eye in Gen.Double[0.445, 0.47]
        from breadth in Gen.Double[0.20, 0.26]
        from span in Gen.Double[1.0, 1.06]
        from hand in Gen.Double[0.10, 0.115]
        from palm in Gen.Double[0.58, 0.63]
        let reach = stature * share
        select new BodyMeasures
        {
            Stature = Length.FromInches(stature),
            SeatedReach = Length.FromInches(reach),
            SittingShoulderHeight = Length.FromInches(stature * shoulder),
            ShoulderElbow = Length.FromInches(stature * upper),
            ElbowGrip = Length.FromInches(stature * lower),
            EyeHeight = Length.FromInches(stature * eye),
            ShoulderBreadth = Length.FromInches(stature * breadth),
            ArmSpan = Length.FromInches(stature * span),
            HandLength = Length.FromInches(stature * hand),
            PalmLength = Length.FromInches(stature * hand * palm),
            OverheadReach = Length.FromInches(reach + stature * hand * (1 - palm / 2)),
        };

    /// <summary>A measure in the middle of the shares above.</summary>
    public static Length Usual(BodyMeasure measure, Length stature) => Length.FromInches(stature.Inches * measure switch
    {
        BodyMeasure.SittingShoulderHeight => 0.34,
        BodyMeasure.ShoulderElbow => 0.205,
        BodyMeasure.ElbowGrip => 0.2,
        BodyMeasure.EyeHeight => 0.457,
        BodyMeasure.ShoulderBreadth => 0.23,
        BodyMeasure.ArmSpan => 1.03,
        BodyMeasure.HandLength => 0.107,
        BodyMeasure.PalmLength => 0.065,
        BodyMeasure.OverheadReach => 0.81,
        _ => throw new ArgumentOutOfRangeException(nameof(measure)),
    });

    /// <summary>The same with any of the measures unknown.</summary>
    public static readonly Gen<BodyMeasures> Some =
        from all in All
        from known in Gen.Bool.Array[Measures.Length]
        select Measures.Where(measure => !known[(int)measure]).Aggregate(all, (body, measure) => body.With(measure, null));
}
