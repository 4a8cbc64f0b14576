using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;

namespace TrialLog.Tests.Logbook;

/// <summary>A few records that belong together.</summary>
internal static class SampleLog
{
    /// <summary>What the change that <see cref="Begin"/> makes is called.</summary>
    public const string Beginning = "Added Ilse Maro";

    public static readonly Hull Hull = StandardHulls.All[0];
    public static readonly Paddler Ilse = new() { Id = Guid.Parse("11111111-0000-4000-8000-000000000001"), Name = "Ilse Maro" };

    public static readonly Paddle Paddle = new()
    {
        Id = Guid.Parse("22222222-0000-4000-8000-000000000001"),
        Name = "Training paddle",
        Blade = Length.Parse("18in"),
        Shortest = Length.Parse("48in"),
        Longest = Length.Parse("53in"),
        Step = Length.Parse("1/4"),
    };

    public static Outing Outing(int number, int pieces = 4, Guid? paddler = null) => new()
    {
        Id = new Guid(0x33333333, 0, 0x4000, 0x80, 0, 0, 0, (byte)(number >> 24), (byte)(number >> 16), (byte)(number >> 8), (byte)number),
        PaddlerId = paddler ?? Ilse.Id,
        HullId = Hull.Id,
        Date = new DateOnly(2020, 1, 1).AddDays(number % 2000),
        Label = $"{number}",
        Pieces = [.. Enumerable.Range(1, pieces).Select(order => new Piece
        {
            Id = Guid.NewGuid(),
            Order = order,
            PaddleId = Paddle.Id,
            Length = Length.FromInches(49 + order % 4 / 2.0),
            Distance = Distance.FromMetres(1000),
            Time = PieceTime.FromSeconds(330 + order),
            Effort = Effort.FromPoints(6),
            Notes = "steady",
        })],
    };

    public static void Begin(LogbookFile log) => log.Change(Beginning, writer =>
    {
        writer.Put(Ilse);
        writer.Put(Paddle);
    });
}
