using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;

namespace TrialLog.Tests.Commands;

/// <summary>A squad whose pieces follow a parabola with noise, the same each time it is made.</summary>
internal static class LargeSquad
{
    public static void Fill(LogbookFile logbook, int paddlers, int outings)
    {
        var random = new Random(20260601);
        Paddle paddle = logbook.Paddles()[0];
        Hull hull = StandardHulls.All[0];
        logbook.Change("Added a squad", writer =>
        {
            for (int number = 1; number <= paddlers; number++)
            {
                var paddler = new Paddler
                {
                    Id = NewId(), Name = $"Paddler {number}",
                    Body = new BodyMeasures { SeatedReach = Length.FromInches(50) }
                };
                writer.Put(paddler);
                double best = 49.5 + random.NextDouble();
                for (int at = 0; at < outings; at++)
                {
                    double conditions = 5 * random.NextDouble();
                    writer.Put(new Outing
                    {
                        Id = NewId(),
                        PaddlerId = paddler.Id,
                        HullId = hull.Id,
                        Date = new DateOnly(2026, 1, 5).AddDays(7 * at),
                        Pieces = [.. Enumerable.Range(1, 4).Select(order => PieceOf(order, best, conditions))],
                    });
                }
            }
        });

        Piece PieceOf(int order, double best, double conditions)
        {
            double inches = 49 + 0.25 * random.Next(9);
            double percent = conditions - 0.35 * Math.Pow(inches - best, 2) - 0.3 * order + 3 * (random.NextDouble() - 0.5);
            return new Piece
            {
                Id = NewId(),
                Order = order,
                PaddleId = paddle.Id,
                Length = Length.FromInches(inches),
                Distance = Distance.FromMetres(1000),
                Time = PieceTime.FromSeconds(330 * Math.Exp(-percent / 100)),
                Effort = Effort.FromPoints(6),
            };
        }

        Guid NewId()
        {
            byte[] bytes = new byte[16];
            random.NextBytes(bytes);
            return new Guid(bytes);
        }
    }
}
