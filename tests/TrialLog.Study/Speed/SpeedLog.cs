using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.Tuning;

namespace TrialLog.Study.Speed;

/// <summary>Invented logs of any size for measuring speed.</summary>
internal static class SpeedLog
{
    /// <summary>A question with so many outings of four pieces.</summary>
    public static AnalysisInput Of(int outings, int seed)
    {
        Random random = new(seed);
        Hull canoe = StandardHulls.All[0];
        Paddle paddle = new()
        {
            Id = Id(2, seed),
            Name = "adjustable",
            Blade = ExposedShaftRule.ReferenceBlade,
            Shortest = Length.FromInches(44),
            Longest = Length.FromInches(56),
            Step = Length.FromInches(0.25),
        };
        Paddler paddler = new()
        {
            Id = Id(1, seed), Name = "Tova Lind", KnownLength = Length.FromInches(50),
            Goal = new() { HullId = canoe.Id, Distance = Distance.FromMetres(12_000) }
        };
        DateOnly first = new(2026, 1, 5);
        List<Outing> log = [];
        for (int j = 0; j < outings; j++)
        {
            double centre = 50 + random.Next(-2, 3) / 4.0, half = random.Next(2, 6) / 4.0, level = 2.5 * Noise(random);
            List<Piece> pieces = [];
            for (int i = 0; i < 4; i++)
            {
                double inches = i is 0 or 3 ? centre - half : centre + half, effort = random.Next(11, 14) / 2.0;
                double percent = level - 0.3 * i + 3 * (effort - 6) - 0.35 * (inches - 50.4) * (inches - 50.4) + Noise(random);
                pieces.Add(new()
                {
                    Id = Id(100 + j, i + 1),
                    Order = i + 1,
                    PaddleId = paddle.Id,
                    Length = Length.FromInches(inches),
                    Distance = Distance.FromMetres(1000),
                    Time = PieceTime.FromSeconds(1000 / (3 * Math.Exp(percent / 100))),
                    Effort = Effort.FromPoints(effort),
                });
            }

            log.Add(new() { Id = Id(100 + j, 0), PaddlerId = paddler.Id, HullId = canoe.Id, Date = first.AddDays(2 * j), Pieces = pieces });
        }

        return new()
        {
            Paddler = paddler, Hull = canoe, Paddle = paddle, Hulls = [canoe], Paddles = [paddle], Outings = log,
            Today = first.AddDays(2 * outings)
        };
    }

    private static double Noise(Random random) => MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);

    private static Guid Id(int kind, int number) => new(kind, 0, 0, BitConverter.GetBytes((long)number));
}
