using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning;

/// <summary>
/// The first analysis of a process takes several times as long as the next: its types are loaded and its code is made ready as it goes.
/// Done with an invented outing while the logbook is still being opened, the paddler does not wait for that.
/// </summary>
public static class FirstAnalysis
{
    /// <summary>Begins to make analyses ready, beside whatever the caller does next.</summary>
    public static void MakeReady() => ThreadPool.UnsafeQueueUserWorkItem(static _ => Tuner.Analyse(Invented()), null);

    /// <summary>One outing of one paddler: short, long, long, short.</summary>
    internal static AnalysisInput Invented()
    {
        Hull hull = StandardHulls.All[0];
        var paddler = new Paddler { Id = Guid.Empty, Name = "" };
        var paddle = new Paddle
        {
            Id = Guid.Empty,
            Name = "",
            Blade = Length.FromInches(18),
            Shortest = Length.FromInches(47),
            Longest = Length.FromInches(53),
            Step = Length.FromInches(0.25),
        };
        var day = new DateOnly(2000, 1, 1);
        return new()
        {
            Paddler = paddler,
            Hull = hull,
            Paddle = paddle,
            Hulls = [hull],
            Paddles = [paddle],
            Today = day,
            Outings =
            [
                new()
                {
                    Id = Guid.Empty,
                    PaddlerId = paddler.Id,
                    HullId = hull.Id,
                    Date = day,
                    Pieces = [Piece(1, 49), Piece(2, 51), Piece(3, 51), Piece(4, 49)],
                },
            ],
        };

        Piece Piece(int order, double inches) => new()
        {
            Id = new Guid(order, 0, 0, [0, 0, 0, 0, 0, 0, 0, 0]),
            Order = order,
            PaddleId = paddle.Id,
            Length = Length.FromInches(inches),
            Distance = Distance.FromMetres(1000),
            Time = PieceTime.FromSeconds(330 + order),
        };
    }
}
