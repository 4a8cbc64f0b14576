using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;

namespace TrialLog.Study.Screens;

/// <summary>A logbook of invented outings, four pieces each, the same every time.</summary>
internal static class InventedLog
{
    public static void Write(string path, int outings)
    {
        var random = new Random(20261125);
        var paddle = new Paddle
        {
            Id = Guid.NewGuid(),
            Name = "Reed 44",
            Blade = Length.FromInches(18.5),
            Shortest = Length.FromInches(47),
            Longest = Length.FromInches(53),
            Step = Length.FromInches(0.25),
        };
        var paddler = new Paddler
        {
            Id = Guid.NewGuid(), Name = "Ilse Maro",
            Body = new BodyMeasures { SeatedReach = Length.FromInches(50.5) }
        };
        using LogbookFile logbook = LogbookFile.Open(path);
        logbook.Change("Invented a log", log =>
        {
            log.Put(paddle);
            log.Put(paddler);
            for (int outing = 0; outing < outings; outing++)
                log.Put(Outing(random, paddler, paddle, outing));
        });
    }

    private static Outing Outing(Random random, Paddler paddler, Paddle paddle, int number)
    {
        double conditions = random.NextDouble() * 8;
        double[] lengths = number % 2 == 0 ? [49.25, 50.75, 50.75, 49.25] : [50, 51.25, 51.25, 50];
        return new Outing
        {
            Id = Guid.NewGuid(),
            PaddlerId = paddler.Id,
            HullId = StandardHulls.All[number % 5 == 4 ? 2 : 0].Id,
            Date = new DateOnly(2026, 11, 20).AddDays(-2 * number),
            Pieces =
            [
                .. lengths.Select((length, index) => new Piece
                {
                    Id = Guid.NewGuid(),
                    Order = index + 1,
                    PaddleId = paddle.Id,
                    Length = Length.FromInches(length),
                    Distance = Distance.FromMetres(1000),
                    Time = PieceTime.FromSeconds(
                        Math.Round(330 + conditions + index + random.NextDouble() * 6 + (length - 49.75) * (length - 49.75) * 1.4, 1)),
                    Effort = Effort.FromPoints(6),
                    Soreness = Soreness.FromPoints(number % 3),
                }),
            ],
        };
    }
}
