using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>The columns that TrialLog reads and writes; their spelling in a file is in <see cref="CsvColumns"/>.</summary>
internal enum CsvColumn
{
    Paddler, Date, StartTime, Outing, Piece, Hull, Paddle,
    LengthIn, LengthCm, DistanceM, DistanceKm, Time, TimeS,
    Effort, HeartRate, StrokeRate, Wind, Course, Soreness, Notes,
    ExcludedBecause, FadePct, Timed, SpeedErrorPct, Origin, Place, Water, OutingNotes, Blind,
    HullCrew, SeatHeightIn,
    BladeLengthIn, BladeAreaIn2, Steering, PaddleShortestIn, PaddleLongestIn, PaddleStepIn, Owner,
    PaddlerUnit, SwapsOnWater, WorthwhilePct, KnownLengthIn, GoalHull, GoalDistanceM, GoalTime,
    TrialPieces, TrialDistanceM, TrialMinutes, TrialTimed, TrialPricePct,
    SeatedReachIn, StatureIn, SittingShoulderHeightIn, ShoulderElbowIn, ElbowGripIn, EyeHeightIn, ShoulderBreadthIn,
    ArmSpanIn, OverheadReachIn, HandLengthIn, PalmLengthIn,
}
