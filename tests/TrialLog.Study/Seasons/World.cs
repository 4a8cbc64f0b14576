namespace TrialLog.Study.Seasons;

/// <summary>How paddlers, water and watches behave in a simulated season. Speeds in percent, lengths in inches.</summary>
internal sealed record World
{
    /// <summary>A short name for the command line.</summary>
    public required string Name { get; init; }

    /// <summary>What is unusual about it.</summary>
    public required string Says { get; init; }

    /// <summary>Spread of the best length around the start length.</summary>
    public double StartSpread { get; init; } = 0.8;

    /// <summary>How much longer everybody's best length is than the start length.</summary>
    public double StartShift { get; init; }

    /// <summary>Median of the curvature, percent per inch squared.</summary>
    public double CurvatureMedian { get; init; } = 0.35;

    /// <summary>Spread of its logarithm.</summary>
    public double CurvatureLogSpread { get; init; } = 0.6;

    /// <summary>How much steeper the curve is on the long side.</summary>
    public double LongSideFactor { get; init; } = 1;

    /// <summary>Spread between outings.</summary>
    public double OutingSpread { get; init; } = 2.5;

    /// <summary>Spread of a piece.</summary>
    public double PieceSpread { get; init; } = 1;

    /// <summary>Change of speed from one piece to the next.</summary>
    public double FadePerPiece { get; init; } = -0.3;

    /// <summary>Change of speed per week; outings are a week apart.</summary>
    public double TrendPerWeek { get; init; }

    /// <summary>Share of pieces spoiled by an exponential slow-down.</summary>
    public double SpoiledShare { get; init; }

    /// <summary>Mean of that slow-down.</summary>
    public double SpoiledMean { get; init; } = 5;

    /// <summary>Spread of effort from piece to piece in CR10 points.</summary>
    public double EffortSpread { get; init; }

    /// <summary>Change of speed per point of effort.</summary>
    public double EffortPerPoint { get; init; } = 3;

    /// <summary>Whether the effort is told, to the nearest half; else the target is told every time.</summary>
    public bool EffortIsTold { get; init; } = true;

    /// <summary>CR10 points pulled harder for every inch of length, unknowingly; not where the length is unknown.</summary>
    public double EffortLean { get; init; }

    /// <summary>Whether a strap tells the heart rate, with an error of this many beats; null for none.</summary>
    public double? HeartRateError { get; init; }

    /// <summary>Beats a minute that an inch of length costs by itself.</summary>
    public double HeartRatePerInch { get; init; }

    /// <summary>Bend of the heart rate's drift over an outing, beats per squared piece.</summary>
    public double HeartRateBend { get; init; }

    /// <summary>Whether every second outing is blind.</summary>
    public bool EverySecondBlind { get; init; }

    /// <summary>What a length costs that the body is not used to, percent; it wears off over eight pieces near that length.</summary>
    public double UnusedCost { get; init; }

    /// <summary>Spread of how the best length moves with the logarithm of the duration, inches.</summary>
    public double DurationSpread { get; init; }

    /// <summary>Spread between hulls of the best length, inches.</summary>
    public double HullSpread { get; init; }

    /// <summary>Whether lengths can be changed on the water.</summary>
    public bool SwapsOnWater { get; init; } = true;

    /// <summary>
    /// Pieces an outing as told to the tool; null leaves them to it. Methods other than the tool's own take four where it is null.
    /// </summary>
    public int? PiecesTold { get; init; }

    /// <summary>Pieces of an outing where a method does not choose.</summary>
    public int Pieces => PiecesTold ?? 4;

    /// <summary>The worlds of the study.</summary>
    public static readonly IReadOnlyList<World> All =
    [
        new() { Name = "main", Says = "published noise, start length from a measured reach" },
        new() { Name = "four", Says = "main with four pieces an outing, never more", PiecesTold = 4 },
        new() { Name = "eight", Says = "main with eight pieces an outing", PiecesTold = 8 },
        new() { Name = "start-off", Says = "start length off: best length spread by 1.5 in around it", StartSpread = 1.5 },
        new() { Name = "start-1.6", Says = "best length spread by 1.6 in around the start length", StartSpread = 1.6 },
        new() { Name = "shifted", Says = "everybody's best length 1.2 in above the start length", StartShift = 1.2 },
        new() { Name = "flat", Says = "flat curve: median curvature 0.12", CurvatureMedian = 0.12 },
        new() { Name = "sharp", Says = "sharp curve: median curvature 1.0", CurvatureMedian = 1.0 },
        new() { Name = "windy", Says = "windy: spread 4 % between outings, 1.5 % between pieces", OutingSpread = 4, PieceSpread = 1.5 },
        new() { Name = "windy-eight", Says = "windy with eight pieces an outing", OutingSpread = 4, PieceSpread = 1.5, PiecesTold = 8 },
        new() { Name = "chop", Says = "chop: spread 2 % between pieces", PieceSpread = 2 },
        new() { Name = "spoiled", Says = "one piece in ten spoiled by an exponential slow-down of mean 5 %", SpoiledShare = 0.1 },
        new() { Name = "asymmetric", Says = "curve twice as steep on the long side", LongSideFactor = 2 },
        new() { Name = "no-swap", Says = "one length an outing: lengths cannot be changed on the water", SwapsOnWater = false },
        new() { Name = "trend", Says = "fitness rises by 0.5 % a week, one outing a week", TrendPerWeek = 0.5 },
        new() { Name = "unused", Says = "a length not used before costs 0.5 % at first; it wears off over eight pieces", UnusedCost = 0.5 },
        new() { Name = "effort", Says = "effort held only to ±1 CR10 point, told to the half point", EffortSpread = 1 },
        new() { Name = "held-heart", Says = "effort held, heart rate to 3 beats", HeartRateError = 3 },
        new() { Name = "untold", Says = "effort strays by ±1 point, the target told every time", EffortSpread = 1, EffortIsTold = false },
        new() { Name = "untold-heart", Says = "the same with heart rate to 3 beats", EffortSpread = 1, EffortIsTold = false,
            HeartRateError = 3 },
        new() { Name = "untold-blind", Says = "effort strays by ±1 point untold, every second outing blind", EffortSpread = 1,
            EffortIsTold = false, EverySecondBlind = true },
        new() { Name = "lean", Says = "0.2 points harder an inch and ±0.5 besides, the target told every time", EffortSpread = 0.5,
            EffortIsTold = false, EffortLean = 0.2 },
        new() { Name = "lean-heart", Says = "the same with heart rate to 3 beats", EffortSpread = 0.5, EffortIsTold = false,
            EffortLean = 0.2, HeartRateError = 3 },
        new() { Name = "lean-blind", Says = "the same with every second outing blind", EffortSpread = 0.5, EffortIsTold = false,
            EffortLean = 0.2, EverySecondBlind = true },
        new() { Name = "lean-both", Says = "the same with heart rate and every second outing blind", EffortSpread = 0.5,
            EffortIsTold = false, EffortLean = 0.2, HeartRateError = 3, EverySecondBlind = true },
        new() { Name = "heart-0.3", Says = "±1 point untold, heart rate; an inch costs 0.3 beats by itself", EffortSpread = 1,
            EffortIsTold = false, HeartRateError = 3, HeartRatePerInch = 0.3 },
        new() { Name = "heart-0.7", Says = "the same, 0.7 beats an inch", EffortSpread = 1, EffortIsTold = false, HeartRateError = 3,
            HeartRatePerInch = 0.7 },
        new() { Name = "heart-1.5", Says = "the same, 1.5 beats an inch", EffortSpread = 1, EffortIsTold = false, HeartRateError = 3,
            HeartRatePerInch = 1.5 },
        new() { Name = "heart-bent", Says = "±1 point untold, heart rate whose drift bends by 1.5 beats", EffortSpread = 1,
            EffortIsTold = false, HeartRateError = 3, HeartRateBend = -1.5 },
        new() { Name = "carried", Says = "best length differs by 0.7 in between hulls and moves by 0.3 in with the " +
            "logarithm of the duration", HullSpread = 0.7, DurationSpread = 0.3 },
    ];
}
