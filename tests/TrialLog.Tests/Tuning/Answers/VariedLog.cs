using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Tuning.Answers;

/// <summary>
/// Logs as paddlers keep them, from a number: each has its own mixture of outings, lengths, hulls, paddles, hearts, efforts, soreness
/// and habits, so that together they go through most of what the tuning can meet.
/// </summary>
internal static class VariedLog
{
    private static readonly int[] Counts = [0, 1, 2, 3, 4, 5, 6, 8, 12, 20, 30];

    /// <summary>The log of that number.</summary>
    public static AnalysisInput Of(int number)
    {
        var random = new Random(number);
        int outings = Counts[number % Counts.Length], shape = number % 4, metres = (number % 5) switch { 0 => 500, 1 => 2000, _ => 1000 };
        double best = 50 + random.Next(-6, 7) / 4.0, curvature = (number % 3) switch { 0 => 0.1, 1 => 0.4, _ => 0.9 };
        double noise = number % 7 == 0 ? 0.05 : 0.8;
        List<Row> rows = [];
        for (int outing = 0; outing < outings; outing++)
        {
            double level = 3 * random.NextDouble(), middle = 50 + random.Next(-3, 4) / 4.0;
            double[] lengths = shape switch
            {
                0 => [middle - 1.25, middle + 1.25, middle + 1.25, middle - 1.25],
                1 => [middle - 1, middle, middle + 1, middle + 1, middle, middle - 1],
                2 => [middle + 0.75, middle - 0.75, middle - 0.75, middle + 0.75],
                _ => [.. Enumerable.Range(0, random.Next(1, 6)).Select(_ => 50 + random.Next(-6, 7) / 4.0)],
            };
            rows.AddRange(lengths.Select(inches => new Row(
                outing, inches, level - curvature * (inches - best) * (inches - best) + noise * (random.NextDouble() - 0.5),
                number % 6 == 5 ? null : 5.5 + random.Next(3) / 2.0)
            {
                Metres = metres,
                Hull = number % 9 == 4 && outing % 2 == 1 ? 2 : 0,
                Paddle = number % 10 == 7 && outing % 3 == 1 ? 1 : 0,
                Course = number % 8 == 3 ? outing % 2 == 0 ? Course.Out : Course.Back : Course.RoundTrip,
                Excluded = random.Next(25) == 0 ? "a wake" : null,
            }));
        }

        AnalysisInput log = LogOf.Rows(rows);
        return Asked(number, log with { Outings = [.. log.Outings.Select((outing, at) => Kept(number, outing, at, random))] });
    }

    // What was noted beside the times.
    private static Outing Kept(int number, Outing outing, int at, Random random) => outing with
    {
        Blind = number % 11 == 6 && at % 2 == 0,
        Wind = number % 3 == 0 ? Beaufort.FromNumber(at % 6) : null,
        Pieces =
        [
            .. outing.Pieces.Select(piece => piece with
            {
                HeartRate = number % 4 == 1 ? HeartRate.FromBeatsPerMinute(150 + random.Next(-6, 7)) : null,
                TimedBy = number % 5 == 2 ? (TimedBy)(at % 2) : null,
                Soreness = number % 13 == 8 || number % 13 == 12
                    ? Soreness.FromPoints(piece.Length.Inches >= 50.5 && (number % 2 == 0 || at < 2) ? 5 : 1) : null,
            }),
        ],
    };

    // What is asked: of whom, in which hull, with which paddle, for what.
    private static AnalysisInput Asked(int number, AnalysisInput log)
    {
        Paddle own = log.Paddle, other = log.Paddles[1];
        own = (number % 12) switch
        {
            1 => Between(own, 49.5, 49.5),
            2 => Between(own, 48, 52) with { Step = Length.FromInches(0.5) },
            5 => Between(own, 50.25, 54),
            7 => Between(own, 46, 49.75) with { Step = Length.FromInches(1) },
            11 => Between(own, 50.75, 50.75),
            _ => own,
        };
        return log with
        {
            Paddle = own,
            Paddles = [own, other],
            Hull = number % 9 == 4 || number % 14 == 13 ? StandardHulls.All[2] : log.Hull,
            Paddler = log.Paddler with
            {
                KnownLength = number % 3 == 2 ? null : log.Paddler.KnownLength,
                SwapsOnWater = number % 10 != 9,
                WorthwhilePercent = number % 16 == 9 ? 1 : null,
                Goal = number % 5 == 0 ? new GoalEvent { HullId = log.Hull.Id, Distance = Distance.FromMetres(10_000) } : null,
            },
            ThisOuting = (number % 15) switch
            {
                3 => new TrialHabits { Pieces = 8 },
                6 => new TrialHabits { Distance = Distance.FromMetres(500), Minutes = 60 },
                10 => new TrialHabits { PricePercent = 0.05, TimedBy = TimedBy.Hand },
                13 => new TrialHabits { Minutes = 120 },
                _ => TrialHabits.Untold,
            },
            SorenessClearances = number % 26 == 12 && log.Outings.Count > 0
                ? [new() { Id = Guid.Empty, PaddlerId = log.Paddler.Id, Date = log.Outings[^1].Date.AddDays(1), By = "Ilse Maro" }] : [],
            Squad = number % 17 == 5 ? new SquadPrior(6, 0.5, 0.8, StartLength.Of(log.Paddler).Basis) : null,
        };
    }

    private static Paddle Between(Paddle paddle, double shortest, double longest) =>
        paddle with { Shortest = Length.FromInches(shortest), Longest = Length.FromInches(longest) };
}
