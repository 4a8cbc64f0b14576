using BenchmarkDotNet.Attributes;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Study.Speed;

/// <summary>How long an analysis takes: fit, card, forecast, curve and checks.</summary>
public class AnalysisBenchmarks
{
    private readonly Dictionary<int, AnalysisInput> _questions = [];
    private AnalysisInput[] _squad = [];

    /// <summary>Makes the logs.</summary>
    [GlobalSetup]
    public void Setup()
    {
        foreach (int outings in (int[])[0, 5, 20, 60, 500, 1000, 2000])
            _questions[outings] = SpeedLog.Of(outings, seed: outings + 1);
        _squad = [.. Enumerable.Range(1, 100).Select(seed => SpeedLog.Of(20, seed))];
    }

    /// <summary>Nothing logged.</summary>
    [Benchmark(Description = "empty log")]
    public Analysis Empty() => Tuner.Analyse(_questions[0]);

    /// <summary>A month.</summary>
    [Benchmark(Description = "5 outings of 4 pieces")]
    public Analysis Five() => Tuner.Analyse(_questions[5]);

    /// <summary>A season.</summary>
    [Benchmark(Description = "60 outings of 4 pieces")]
    public Analysis Sixty() => Tuner.Analyse(_questions[60]);

    /// <summary>Some years.</summary>
    [Benchmark(Description = "500 outings of 4 pieces")]
    public Analysis FiveHundred() => Tuner.Analyse(_questions[500]);

    /// <summary>Twice as many.</summary>
    [Benchmark(Description = "1,000 outings of 4 pieces")]
    public Analysis Thousand() => Tuner.Analyse(_questions[1000]);

    /// <summary>Twice as many again.</summary>
    [Benchmark(Description = "2,000 outings of 4 pieces")]
    public Analysis TwoThousand() => Tuner.Analyse(_questions[2000]);

    /// <summary>The whole course of a season.</summary>
    [Benchmark(Description = "progress over 60 outings")]
    public IReadOnlyList<ProgressPoint> Progress() => Tuner.Progress(_questions[60]);

    /// <summary>A squad, on all cores.</summary>
    [Benchmark(Description = "squad of 100, 20 outings of 4 pieces each, all cores")]
    public Analysis[] Squad()
    {
        Analysis[] analyses = new Analysis[_squad.Length];
        Parallel.For(0, _squad.Length, at => analyses[at] = Tuner.Analyse(_squad[at]));
        return analyses;
    }
}
