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

    /// <summary>Spread of effort from piece to piece in CR10 points, told to the nearest half.</summary>
    public double EffortSpread { get; init; }

    /// <summary>Change of speed per point of effort.</summary>
    public double EffortPerPoint { get; init; } = 3;

    /// <summary>Whether lengths can be changed on the water.</summary>
    public bool SwapsOnWater { get; init; } = true;

    /// <summary>Pieces an outing.</summary>
    public int Pieces { get; init; } = 4;

    /// <summary>The worlds of the study.</summary>
    public static readonly IReadOnlyList<World> All =
    [
        new() { Name = "main", Says = "published noise, start length from a measured reach" },
        new() { Name = "start-off", Says = "start length off: best length spread by 1.5 in around it", StartSpread = 1.5 },
        new() { Name = "flat", Says = "flat curve: median curvature 0.12", CurvatureMedian = 0.12 },
        new() { Name = "sharp", Says = "sharp curve: median curvature 1.0", CurvatureMedian = 1.0 },
        new() { Name = "windy", Says = "windy: spread 4 % between outings, 1.5 % between pieces", OutingSpread = 4, PieceSpread = 1.5 },
        new() { Name = "spoiled", Says = "one piece in ten spoiled by an exponential slow-down of mean 5 %", SpoiledShare = 0.1 },
        new() { Name = "asymmetric", Says = "curve twice as steep on the long side", LongSideFactor = 2 },
        new() { Name = "no-swap", Says = "one length an outing: lengths cannot be changed on the water", SwapsOnWater = false },
        new() { Name = "trend", Says = "fitness rises by 0.5 % a week, one outing a week", TrendPerWeek = 0.5 },
        new() { Name = "effort", Says = "effort held only to ±1 CR10 point, told to the half point", EffortSpread = 1 },
    ];
}
