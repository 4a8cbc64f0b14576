namespace TrialLog.Recordings.Pieces;

/// <summary>One point of the speed plot.</summary>
/// <param name="At">Since the recording's start.</param>
/// <param name="MetresPerSecond">Mean speed over ground around it; null in a gap of the recording.</param>
public readonly record struct SpeedPoint(TimeSpan At, double? MetresPerSecond);
