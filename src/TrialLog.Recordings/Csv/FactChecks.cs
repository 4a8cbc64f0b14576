using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>Whether what a row states about a paddler, hull or paddle can be believed and goes together.</summary>
internal static class FactChecks
{
    private static readonly Length LeastStep = Length.FromMillimetres(0.5);

    /// <summary>Notes what is wrong in the cells' problems.</summary>
    public static void Check(CsvFacts facts, CsvCells cells)
    {
        if (facts == CsvFacts.None)
            return;
        CheckPaddle(facts, cells);
        Check(CsvColumn.SeatHeightIn, Plausible.ProblemWithSeatHeight);
        Check(CsvColumn.KnownLengthIn, Plausible.ProblemWithPaddleLength);
        foreach ((CsvColumn column, BodyMeasure measure) in CsvColumns.OfBody)
            Check(column, length => BodyChecks.ProblemWith(measure, length));
        if ((facts[CsvColumn.GoalDistanceM] ?? facts[CsvColumn.GoalTime]) is not null && facts[CsvColumn.GoalHull] is null)
            cells.Refuse(CsvColumn.GoalHull, "The goal has a distance or time but no hull; name the hull that it is raced in.");

        void Check(CsvColumn column, Func<Length, string?> problemWith)
        {
            if (facts.Value<Length>(column) is { } length && problemWith(length) is { } problem)
                cells.Refuse(column, problem);
        }
    }

    private static void CheckPaddle(CsvFacts facts, CsvCells cells)
    {
        Length? shortest = facts.Value<Length>(CsvColumn.PaddleShortestIn), longest = facts.Value<Length>(CsvColumn.PaddleLongestIn);
        if (shortest is { } least && Plausible.ProblemWithPaddleLength(least) is { } wrongShortest)
            cells.Refuse(CsvColumn.PaddleShortestIn, wrongShortest);
        if (longest is { } most && Plausible.ProblemWithPaddleLength(most) is { } wrongLongest)
            cells.Refuse(CsvColumn.PaddleLongestIn, wrongLongest);
        if (shortest > longest)
            cells.Refuse(CsvColumn.PaddleShortestIn, $"{shortest} is longer than the longest length, {longest}; exchange them.");
        if (facts.Value<Length>(CsvColumn.BladeLengthIn) is { } blade
            && Plausible.ProblemWithBlade(blade, shortest ?? Plausible.LongestPaddle) is { } wrongBlade)
            cells.Refuse(CsvColumn.BladeLengthIn, wrongBlade);
        if (facts.Value<Length>(CsvColumn.PaddleStepIn) is { } step && step < LeastStep && (shortest is null || shortest != longest))
            cells.Refuse(CsvColumn.PaddleStepIn, $"A step of {step} is finer than any shaft's; give it in inches, like 0.25.");
    }
}
