using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning;

namespace TrialLog.Tests.Tuning;

/// <summary>One row of a log made for a test.</summary>
internal sealed record Row(int Outing, double Inches, double Percent = 0, double? Effort = 6)
{
    public string? Excluded { get; init; }

    public Course Course { get; init; }

    public int Hull { get; init; }

    public int Paddle { get; init; }

    public double Metres { get; init; } = 1000;
}

/// <summary>Makes a question from rows: speed is 3 m/s times exp(Percent/100); outings are five days apart; pieces in order.</summary>
internal static class LogOf
{
    public static readonly DateOnly FirstDay = new(2026, 3, 3);

    private static readonly Paddle[] Paddles = [Paddle(0, 18.5), Paddle(1, 20.5)];

    public static AnalysisInput Rows(params IEnumerable<Row> rows)
    {
        int number = 0;
        var paddler = new Paddler { Id = Identity(1), Name = "Ilse Maro", KnownLength = Length.FromInches(50) };
        return new()
        {
            Paddler = paddler,
            Hull = StandardHulls.All[0],
            Paddle = Paddles[0],
            Hulls = StandardHulls.All,
            Paddles = Paddles,
            Today = FirstDay.AddDays(400),
            Outings =
            [
                .. rows.GroupBy(row => row.Outing).Select(outing => new Outing
                {
                    Id = Identity(1000 + outing.Key),
                    PaddlerId = paddler.Id,
                    HullId = StandardHulls.All[outing.First().Hull].Id,
                    Date = FirstDay.AddDays(5 * outing.Key),
                    Pieces = [.. outing.Select((row, order) => new Piece
                    {
                        Id = Identity(100_000 + number++),
                        Order = order + 1,
                        PaddleId = Paddles[row.Paddle].Id,
                        Length = Length.FromInches(row.Inches),
                        Distance = Distance.FromMetres(row.Metres),
                        Time = PieceTime.FromSeconds(row.Metres / (3 * Math.Exp(row.Percent / 100))),
                        Effort = row.Effort is { } points ? Effort.FromPoints(points) : null,
                        ExcludedBecause = row.Excluded,
                        Course = row.Course,
                    })],
                }),
            ],
        };
    }

    /// <summary>Mirrored outings at three lengths, with noise that any seed repeats.</summary>
    public static IReadOnlyList<Row> Healthy(int outings = 6, int seed = 1)
    {
        var random = new Random(seed);
        return
        [
            .. from outing in Enumerable.Range(0, outings)
               let shift = (outing % 3) switch { 0 => 0.0, 1 => 0.5, _ => -0.5 }
               let level = 4 * random.NextDouble()
               from step in (double[])[-0.75, 0.75, 0.75, -0.75]
               let inches = 50 + shift + step
               select new Row(outing, inches, level - 0.5 * (inches - 50.25) * (inches - 50.25) + random.NextDouble() - 0.5,
                   outing % 2 == 0 ? 6 : 6.5),
        ];
    }

    private static Paddle Paddle(int number, double blade) => new()
    {
        Id = Identity(10 + number), Name = $"Paddle {number}", Blade = Length.FromInches(blade),
        Shortest = Length.FromInches(44), Longest = Length.FromInches(56), Step = Length.FromInches(0.25),
    };

    private static Guid Identity(int number) => new(number, 0, 0, [0, 0, 0, 0, 0, 0, 0, 0]);
}
