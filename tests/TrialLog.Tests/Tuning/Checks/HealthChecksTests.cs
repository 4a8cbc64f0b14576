using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Checks;
using TrialLog.Tuning.Classical;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Tuning.Checks;

public class HealthChecksTests
{
    [Fact]
    public void A_mirrored_log_at_several_lengths_is_healthy() => Assert.Empty(Names(LogOf.Healthy()));

    [Fact]
    public void An_empty_log_has_nothing_wrong_with_it() => Assert.Empty(Names([]));

    [Theory]
    [MemberData(nameof(Faults))]
    public void Each_fault_is_found_and_nothing_else(string name)
    {
        HealthCheck found = Assert.Single(Look(ByName[name]));
        Assert.Equal(name, found.Name);
    }

    public static TheoryData<string> Faults => [.. ByName.Keys];

    private static readonly Dictionary<string, IEnumerable<Row>> ByName = new()
    {
        ["few-lengths"] = LogOf.Healthy(4).Select(row => row with { Inches = row.Inches > 50 ? 51 : 49 }),
        ["close-lengths"] = LogOf.Healthy().Select(row => row with { Inches = 50 + (row.Inches - 50) / 4 }),
        ["order-tangled"] = Enumerable.Range(0, 16).Select(at => new Row(at / 4, 49 + 0.75 * (at % 4), at)),
        ["course-tangled"] = LogOf.Healthy()
            .Select((row, at) =>
            row with
            {
                Course = (at % 4 is 0 or 3) ? Course.Out : Course.Back,
                Effort = 6,
                Inches = 50 + (at % 4 is 0 or 3 ? 1 : -0.5) + at / 12 * 0.25
            }),
        ["effort-tangled"] = LogOf.Healthy().Select(row => row with { Effort = row.Inches > 50.1 ? 7 : 6 })
            .Where(row => row.Outing % 3 == 0).Concat([new Row(9, 52)]),
        ["hull-tangled"] = LogOf.Healthy()
            .Select((row, at) => row with { Hull = row.Outing % 2, Inches = (row.Outing % 2 == 0 ? 50 : 46) + at % 3 * 0.25 }),
        ["blade-tangled"] = Enumerable.Range(0, 16)
            .Select(at => new Row(at / 4, at % 4 is 0 or 3 ? 49 + at / 8 * 0.25 : 54, at) { Paddle = at % 4 is 0 or 3 ? 0 : 1 }),
        ["calendar-tangled"] = Enumerable.Range(0, 16)
            .Select(at => new Row(at / 4, 49 + 0.5 * (at / 4) + (at % 4 is 1 or 2 ? 0.25 : 0), at)),
        ["one-length-outings"] = Enumerable.Range(0, 24)
            .Select(at => new Row(at / 3, at / 3 % 4 is 0 or 3 ? 49 + at / 12 * 0.25 : 51 - at / 12 * 0.25, at)),
        ["habituated"] = LogOf.Healthy(8).Select((row, at) => row with { Inches = at % 16 == 5 ? 51 : at % 16 == 6 ? 49 : 50 }),
        ["many-excluded"] = LogOf.Healthy().Select((row, at) => row with { Excluded = row.Outing == 1 || at % 12 == 11 ? "wake" : null })
            .Append(new Row(8, 50.25) { Excluded = "rudder" }),
        ["effort-missing"] = LogOf.Healthy().Select((row, at) => row with { Effort = at % 4 == 2 ? null : 6 }),
    };

    [Fact]
    public void A_piece_that_hardly_counts_is_named()
    {
        AnalysisInput question = LogOf.Rows(LogOf.Healthy());
        IReadOnlyList<AdjustedPiece> pieces = Adjusted(question);
        AdjustedPiece far = pieces[6];
        HealthCheck check = Assert.Single(
            HealthChecks.Of(question, [.. pieces.Select(piece => piece == far ? piece with { Weight = 0.1 } : piece)], 50));
        Assert.Equal("pieces-discounted", check.Name);
        Assert.Equal((new DateOnly(2026, 3, 8), 3), check.Piece);
    }

    [Fact]
    public void One_piece_carries_only_if_the_best_length_moves_by_more_than_a_quarter_inch_without_it()
    {
        AnalysisInput question = LogOf.Rows(LogOf.Healthy());
        IReadOnlyList<AdjustedPiece> pieces = [.. Adjusted(question).Select((piece, at) => at == 4 ? piece with { Percent = 30 } : piece)];
        Guid odd = pieces[4].PieceId;

        Assert.Empty(HealthChecks.Of(question, pieces, 50, without => without == odd ? 50.25 : 50));
        Assert.Empty(HealthChecks.Of(question, pieces, 50, _ => null));
        HealthCheck check = Assert.Single(HealthChecks.Of(question, pieces, 50, without => without == odd ? 49.4 : 50));
        Assert.Equal("one-piece-carries", check.Name);
        Assert.Equal((new DateOnly(2026, 3, 8), 1), check.Piece);
        Assert.False(check.Longer);
        Assert.Equal(0.6, check.Inches, 3);
    }

    [Fact]
    public void Any_log_can_be_checked()
    {
        Gen<Row> row = Gen.Select(Gen.Int[0, 5], Gen.Int[-8, 8], Gen.Int[0, 20], Gen.Int[0, 7],
            (outing, quarters, halves, kind) => new Row(outing, 50 + quarters / 4.0, quarters, kind % 2 == 1 ? null : halves / 2.0)
            {
                Excluded = kind == 2 ? "wake" : null,
                Course = (Course)(kind % 4),
                Hull = outing % 3,
                Paddle = kind % 2,
            });
        row.Array[0, 40].Sample(rows =>
        {
            AnalysisInput question = LogOf.Rows(rows);
            IReadOnlyList<HealthCheck> checks = HealthChecks.Of(question, Adjusted(question), 50, _ => 51);
            Assert.Equal(checks.Select(check => check.Name).Distinct(), checks.Select(check => check.Name));
        }, iter: 500);
    }

    [Theory]
    [InlineData(1.5, 0.5, true)]
    [InlineData(-1.5, 0.5, true)]
    [InlineData(0.9, 0.5, false)]
    public void Heart_rate_that_clearly_goes_with_length_is_found(double beats, double error, bool found)
    {
        AnalysisInput question = LogOf.Rows(LogOf.Healthy());
        HealthCheck? check = HealthChecks.Of(question, Adjusted(question), 50, heartRate: new HeartRateSlope(beats, error))
            .SingleOrDefault(check => check.Name == "heart-rate-tangled");
        Assert.Equal(found, check is not null);
        if (check is not null)
            Assert.Equal(beats > 0, check.Longer);
    }

    [Theory]
    [InlineData(40, 1, true)]
    [InlineData(230, 1, true)]
    [InlineData(150, 0, true)]
    [InlineData(150, 1, false)]
    public void Heart_rates_that_do_not_count_are_named(int beats, int more, bool found)
    {
        AnalysisInput log = LogOf.Rows(LogOf.Healthy());
        AnalysisInput question = log with
        {
            Outings = [.. log.Outings.Select(outing => outing with
            {
                Pieces = [.. outing.Pieces.Select(piece => piece with
                {
                    HeartRate = HeartRate.FromBeatsPerMinute(beats + more * piece.Order),
                })],
            })],
        };
        HealthCheck? check = HealthChecks.Of(question, Adjusted(question), 50).SingleOrDefault(check => check.Name == "heart-rate-unused");
        Assert.Equal(found, check is not null);
        if (check is not null)
            Assert.Equal((24, 24), (check.Count, check.Of));
    }

    private static IEnumerable<string> Names(IEnumerable<Row> rows) => Look(rows).Select(check => check.Name);

    private static IReadOnlyList<HealthCheck> Look(IEnumerable<Row> rows)
    {
        AnalysisInput question = LogOf.Rows(rows);
        return HealthChecks.Of(question, Adjusted(question), 50);
    }

    private static IReadOnlyList<AdjustedPiece> Adjusted(AnalysisInput question) =>
    [
        .. CountedPiece.InHull(question).Select(piece => new AdjustedPiece(
            piece.Piece.Id, piece.Outing.Id, Length.FromInches(piece.LengthInches), piece.LogSpeedPercent, 1)),
    ];
}
