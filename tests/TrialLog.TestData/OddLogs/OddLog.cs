using MathNet.Numerics.Distributions;
using TrialLog.Application.Logging;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Model;

namespace TrialLog.TestData.OddLogs;

/// <summary>
/// Logs that no paddler would keep, from a number: curves upside down, times without any noise or nothing but noise, lengths a foot
/// apart or all alike, spoiled pieces, pieces of 100 m beside hours, blades and hulls mixed, heart rates of nonsense. Whatever the log,
/// the model must say something finite that hangs together.
/// </summary>
internal static class OddLog
{
    private static readonly Paddle[] Paddles = [.. Enumerable.Range(0, 3).Select(k => new Paddle
    {
        Id = Id(20 + k), Name = $"Paddle {k}", Blade = Length.FromInches(16.5 + 2 * k),
        Shortest = Length.FromInches(40), Longest = Length.FromInches(60), Step = Length.FromInches(0.25),
    })];

    /// <summary>The log of that number.</summary>
    public static AnalysisInput Of(int number)
    {
        var random = new Random(number);
        Hull[] hulls = [.. StandardHulls.All.Take(random.Next(3) == 0 ? 3 : 1)];
        var paddler = new Paddler { Id = Id(1), Name = "Ilse Maro", KnownLength = random.Next(2) == 0 ? Length.FromInches(50) : null };
        int outings = random.Next(4) switch { 0 => random.Next(3), 1 => random.Next(4, 40), _ => random.Next(1, 9) };
        double[] noises = [0, 0.01, 0.3, 1, 3, 10], spreads = [0, 0.05, 0.5, 1.5, 4, 10], bends = [-3, -0.3, 0, 0.3, 1, 5, 40];
        double noise = noises[random.Next(noises.Length)], spread = spreads[random.Next(spreads.Length)],
            bend = bends[random.Next(bends.Length)];
        double level = noises[random.Next(noises.Length)], lopsided = random.Next(3) == 0 ? 4 * random.NextDouble() - 2 : 0,
            best = 50 + 3 * Normal.Sample(random, 0, 1);
        double spoiled = random.Next(3) == 0 ? 0.3 : 0, rate = random.Next(3) == 0 ? 140 : 0;
        bool distances = random.Next(3) == 0, oneWay = random.Next(3) == 0, efforts = random.Next(2) == 0, blades = random.Next(3) == 0,
            blind = random.Next(3) == 0;
        int identity = 1000;
        return new()
        {
            Paddler = paddler,
            Hull = hulls[random.Next(hulls.Length)],
            Paddle = Paddles[blades ? random.Next(3) : 1],
            Hulls = hulls,
            Paddles = Paddles,
            Today = new(2026, 12, 1),
            Outings = [.. Enumerable.Range(0, outings).Select(Outing)],
        };

        Outing Outing(int at)
        {
            double of = level * Normal.Sample(random, 0, 1);
            return new()
            {
                Id = Id(identity++),
                PaddlerId = paddler.Id,
                HullId = hulls[random.Next(hulls.Length)].Id,
                Date = new DateOnly(2026, 1, 5).AddDays(random.Next(4) == 0 ? 0 : 3 * at),
                Blind = blind && at % 2 == 0,
                Pieces = [.. Enumerable.Range(1, random.Next(1, 10)).Select(order => Piece(order, of))],
            };
        }

        Piece Piece(int order, double of)
        {
            double inches = Math.Round(4 * (50 + spread * (random.NextDouble() - 0.5) * 2)) / 4, away = inches - best;
            double metres = distances ? 100 * Math.Exp(5 * random.NextDouble()) : 1000;
            double percent = of + noise * Normal.Sample(random, 0, 1) - bend * (away * away + lopsided * away * Math.Abs(away))
                - (random.NextDouble() < spoiled ? 40 * random.NextDouble() : 0);
            double speed = Math.Clamp(3 * Math.Exp(percent / 100), TrialLog.Domain.Log.Piece.SlowestMetresPerSecond,
                TrialLog.Domain.Log.Piece.FastestMetresPerSecond);
            return new()
            {
                Id = Id(identity++),
                Order = order,
                PaddleId = Paddles[blades ? random.Next(3) : 1].Id,
                Length = Length.FromInches(inches),
                Distance = Distance.FromMetres(metres),
                Time = PieceTime.FromSeconds(metres / speed),
                Effort = efforts && random.Next(5) > 0 ? Effort.FromPoints(random.Next(0, 21) / 2.0) : null,
                Course = oneWay ? (Course)random.Next(4) : Course.RoundTrip,
                HeartRate = rate > 0 && random.Next(8) > 0
                    ? HeartRate.FromBeatsPerMinute(Math.Clamp((int)rate + random.Next(-3, 4) * random.Next(1, 20), 30, 230)) : null,
            };
        }
    }

    /// <summary>What does not hang together in what the model says of a log; null where all does.</summary>
    public static string? Problem(AnalysisInput log)
    {
        Posterior posterior;
        try
        {
            posterior = Fit.Of(log).Posterior;
        }
        catch (UnweighableLogException refused)
        {
            return refused.Message;
        }

        double low = posterior.Quantile(0.05), high = posterior.Quantile(0.95), least = posterior.LeastLoss,
            left = posterior.WorthwhileLeft(least, double.NegativeInfinity, double.PositiveInfinity, 0.3);
        double[] all = [low, high, least, posterior.Mean, posterior.ExpectedLoss(least), left, posterior.LogCurvature.Quantile(0.5),
            posterior.LogPiece.Quantile(0.5), posterior.LogOuting.Quantile(0.5)];
        if (!Array.TrueForAll(all, double.IsFinite))
            return "not finite: " + string.Join(", ", all);
        double tails = Math.Abs(posterior.Below(low) - 0.05) + Math.Abs(posterior.Below(high) - 0.95);
        if (!(low < high) || tails > 1e-6)
            return $"the range from {low} to {high} does not hold what it should";
        if (left is < 0 or > 1 || posterior.ExpectedLoss(least) > posterior.ExpectedLoss(least + 0.1) + 1e-12
            || posterior.ExpectedLoss(least) > posterior.ExpectedLoss(least - 0.1) + 1e-12)
            return $"{least} is not the length of least loss";
        double most = posterior.ByCurvature().Max(part => Math.Abs(part.Skew));
        return most > log.Settings.SkewLimit + 1e-9 ? $"a lopsidedness of {most}" : null;
    }

    private static Guid Id(int number) => new(number, 0, 0, new byte[8]);
}
