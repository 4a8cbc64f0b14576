using System.Globalization;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning;

namespace TrialLog.Tests.Tuning.References;

/// <summary>A sample logbook of tests/reference as a question: one paddler, one paddle with the reference blade.</summary>
internal static class ReferenceLogbook
{
    public static AnalysisInput Read(string name, string hullName, Length start)
    {
        string[][] lines = [.. File.ReadLines(ReferenceFile.PathOf($"logbooks/{name}.csv")).Select(line => line.Split(','))];
        string[] header = lines[0];
        var paddle = new Paddle
        {
            Id = Identity(9000), Name = "Long river", Blade = ExposedShaftRule.ReferenceBlade,
            Shortest = Length.FromInches(44), Longest = Length.FromInches(56), Step = Length.FromInches(0.25),
        };
        var paddler = new Paddler { Id = Identity(9001), Name = lines[1][0], KnownLength = start };
        List<Outing> outings =
        [
            .. lines.Skip(1).GroupBy(row => (Date: Cell(row, "date"), Label: Cell(row, "outing"))).Select((rows, index) => new Outing
            {
                Id = Identity(1000 + index),
                PaddlerId = paddler.Id,
                HullId = StandardHulls.All.Single(hull => hull.Name == Cell(rows.First(), "hull")).Id,
                Label = rows.Key.Label,
                Date = DateOnly.ParseExact(rows.Key.Date, "yyyy-MM-dd", CultureInfo.InvariantCulture),
                Blind = header.Contains("blind") && Cell(rows.First(), "blind") == "yes",
                Pieces = [.. rows.Select((row, at) => new Piece
                {
                    Id = Identity(100 * (index + 1) + at),
                    Order = int.Parse(Cell(row, "piece"), CultureInfo.InvariantCulture),
                    PaddleId = paddle.Id,
                    Length = Length.FromInches(Number(row, "length_in")),
                    Distance = Distance.FromMetres(Number(row, "distance_m")),
                    Time = PieceTime.FromSeconds(Number(row, "time_s")),
                    Effort = Effort.FromPoints(Number(row, "effort")),
                    HeartRate = header.Contains("heart_rate") && Cell(row, "heart_rate").Length > 0
                        ? HeartRate.FromBeatsPerMinute((int)Number(row, "heart_rate")) : null,
                })],
            }),
        ];
        return new()
        {
            Paddler = paddler,
            Hull = StandardHulls.All.Single(hull => hull.Name == hullName),
            Paddle = paddle,
            Hulls = StandardHulls.All,
            Paddles = [paddle],
            Outings = outings,
            Today = outings.Max(outing => outing.Date).AddDays(1),
        };

        string Cell(string[] row, string column) => row[Array.IndexOf(header, column)];
        double Number(string[] row, string column) => double.Parse(Cell(row, column), CultureInfo.InvariantCulture);
    }

    private static Guid Identity(int number) => new(number, 0, 0, [0, 0, 0, 0, 0, 0, 0, 0]);
}
