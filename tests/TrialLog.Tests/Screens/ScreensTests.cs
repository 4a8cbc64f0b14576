namespace TrialLog.Tests.Screens;

/// <summary>Tests of the screens run one after the other: the library keeps some settings for the whole process.</summary>
[CollectionDefinition(nameof(ScreensTests), DisableParallelization = true)]
public sealed class ScreensTests;
