namespace TrialLog.Logbook;

/// <summary>One thing the user did to a logbook.</summary>
/// <param name="Number">The change's number, rising from 1; with it the log can be put back to how it was.</param>
/// <param name="At">When (UTC).</param>
/// <param name="What">What was done, in a sentence.</param>
/// <param name="TakenBack">Whether it has been undone.</param>
public sealed record ChangeSummary(long Number, DateTimeOffset At, string What, bool TakenBack);
