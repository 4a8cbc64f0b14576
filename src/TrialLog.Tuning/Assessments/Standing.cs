using TrialLog.Domain.Values;
using TrialLog.Tuning.Checks;

namespace TrialLog.Tuning.Assessments;

/// <summary>Where a search for one paddler, hull and paddle stands: decided once, said alike on every surface.</summary>
public enum Standing
{
    /// <summary>More testing is worth its price.</summary>
    Testing,

    /// <summary>A length is found, and more testing would win less than it costs.</summary>
    Settled,

    /// <summary>Length hardly matters here within an inch either way.</summary>
    Flat,

    /// <summary>This log cannot tell lengths apart; other trials would.</summary>
    CannotTell,

    /// <summary>It hurts, and rest comes first.</summary>
    Sore,
}

/// <summary>Why a search stands where it stands, and with that what would move it on.</summary>
public enum StandingReason
{
    /// <summary>Soreness that was told has not gone; rest, and a later outing or a clearance says that it has.</summary>
    StillSore,

    /// <summary>Nothing is logged yet; everything follows from the start length.</summary>
    NothingLogged,

    /// <summary>
    /// Each of four outings or more has one length, though lengths could be changed on the water; two lengths within one outing would tell.
    /// </summary>
    OneLengthAnOuting,

    /// <summary>
    /// Every piece was paddled in a crew of three or more, where one paddle hardly moves the hull; a few pieces in a one- or two-seat hull
    /// would tell.
    /// </summary>
    LargeCrewsOnly,

    /// <summary>Length and order are tangled within outings; a mirrored order would part them.</summary>
    OrderTangled,

    /// <summary>Length and told effort are tangled within outings; one effort throughout would part them.</summary>
    EffortTangled,

    /// <summary>Both ends were faster than the middle, which no best length explains; look for what else differed.</summary>
    CurveUpsideDown,

    /// <summary>Two hulls, each by itself, point further apart than seats explain; measure the seats and paddle more in each.</summary>
    HullsDisagree,

    /// <summary>
    /// Pieces like these say too little of a race that is much longer: with any number of them the chance of a worthwhile gain would not be
    /// low enough to stop on, and more of them should win less than they cost. Longer pieces would tell.
    /// </summary>
    PiecesTooShort,

    /// <summary>No piece was paddled in this hull yet.</summary>
    NotPaddledHere,

    /// <summary>All outings are of one day: one tide, one wind, one day's form. An outing on another day is wanted.</summary>
    OneDayOnly,

    /// <summary>No length half an inch or more shorter than the best, or as short as the paddle goes, was paddled.</summary>
    NothingShorterTried,

    /// <summary>No length half an inch or more longer than the best, or as long as the paddle goes, was paddled.</summary>
    NothingLongerTried,

    /// <summary>The chance that another length is faster by a worthwhile change is not low enough to stop on.</summary>
    ChanceTooHigh,

    /// <summary>More testing should win more than it costs.</summary>
    TestingPays,

    /// <summary>
    /// More testing would win less than it costs, though the chance of a worthwhile gain is not low enough to call it settled.
    /// </summary>
    CostsMoreThanItWins,

    /// <summary>An inch either way very probably costs less than a worthwhile change.</summary>
    HardlyMatters,

    /// <summary>The chance of a worthwhile gain is low, and more testing would win less than it costs.</summary>
    NothingWorthwhileLeft,
}
