using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tests.Domain.Sizing;

/// <summary>Random bodies.</summary>
internal static class Bodies
{
    /// <summary>Everything measured, as one body of random size with its own proportions.</summary>
    public static readonly Gen<BodyMeasures> All =
        from stature in Gen.Double[58, 78]
        from reach in Gen.Double[0.71, 0.79]
        from shoulder in Gen.Double[0.30, 0.38]
        from upper in Gen.Double[0.19, 0.22]
        from lower in Gen.Double[0.18, 0.22]
        from eye in Gen.Double[0.42, 0.49]
        from breadth in Gen.Double[0.20, 0.26]
        select new BodyMeasures
        {
            Stature = Length.FromInches(stature),
            SeatedReach = Length.FromInches(stature * reach),
            SittingShoulderHeight = Length.FromInches(stature * shoulder),
            ShoulderElbow = Length.FromInches(stature * upper),
            ElbowGrip = Length.FromInches(stature * lower),
            EyeHeight = Length.FromInches(stature * eye),
            ShoulderBreadth = Length.FromInches(stature * breadth),
        };

    /// <summary>The same with any of the measures unknown.</summary>
    public static readonly Gen<BodyMeasures> Some =
        from all in All
        from known in Gen.Bool.Array[7]
        select Enumerable.Range(0, 7).Where(i => !known[i]).Aggregate(all, (body, i) => body.With((BodyMeasure)i, null));
}
