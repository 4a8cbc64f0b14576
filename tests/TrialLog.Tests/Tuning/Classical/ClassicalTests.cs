using CsCheck;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Classical;

namespace TrialLog.Tests.Tuning.Classical;

public class ClassicalTests
{
    [Fact]
    public void Longer_paddles_throughout_move_the_vertex_as_far()
    {
        Gen.Select(Gen.Int[1, 10_000], Gen.Int[-16, 16]).Sample((seed, quarters) =>
        {
            IReadOnlyList<Row> rows = LogOf.Healthy(seed: seed);
            double shift = quarters / 4.0;
            ClassicalFit before = Fit(rows), after = Fit(rows.Select(row => row with { Inches = row.Inches + shift }));
            Assert.Equal(before.VertexInches is null, after.VertexInches is null);
            if (before.VertexInches is { } vertex)
                Assert.Equal(vertex + shift, after.VertexInches!.Value, 1e-6 * Math.Max(1, Math.Abs(vertex)));
            Assert.Equal(before.Vertex!.Shape, after.Vertex!.Shape);
        }, iter: 60);
    }

    [Fact]
    public void A_blade_and_a_paddle_both_two_inches_longer_change_nothing()
    {
        IReadOnlyList<Row> rows = LogOf.Healthy();
        ClassicalFit before = Fit(rows), after = Fit(rows.Select(row => row with { Inches = row.Inches + 2, Paddle = 1 }));
        Assert.Equal(before.VertexInches!.Value, after.VertexInches!.Value, 1e-9);
    }

    [Fact]
    public void The_order_of_outings_in_the_log_does_not_matter()
    {
        AnalysisInput question = LogOf.Rows(LogOf.Healthy());
        AnalysisInput turned = question with { Outings = [.. question.Outings.Reverse()] };
        Assert.Equal(ClassicalAnalysis.Fit(question).VertexInches, ClassicalAnalysis.Fit(turned).VertexInches);
    }

    [Fact]
    public void The_true_vertex_lies_inside_nine_intervals_in_ten()
    {
        const int Logs = 400;
        int held = Enumerable.Range(0, Logs).Count(seed =>
        {
            FiellerInterval interval = Fit(LogOf.Healthy(seed: 100 + seed)).Vertex!;
            return interval.Shape switch
            {
                FiellerShape.Bounded => interval.Low <= 50.25 && 50.25 <= interval.High,
                FiellerShape.Outside => interval.Low >= 50.25 || 50.25 >= interval.High,
                _ => true,
            };
        });
        // Binomial(400, 0.9) lies within these bounds but for one time in a thousand; the noise here is uniform, not normal.
        Assert.InRange(held, 340, 380);
    }

    [Fact]
    public void Poor_logs_give_a_sentence_and_no_numbers()
    {
        (string Log, IEnumerable<Row> Rows, string Says)[] poor =
        [
            ("nothing", [], "No piece"),
            ("all excluded", LogOf.Healthy().Select(row => row with { Excluded = "wake" }), "No piece"),
            ("another hull", LogOf.Healthy().Select(row => row with { Hull = 1 }), "No piece"),
            ("one piece", [new(0, 50)], "three lengths"),
            ("two lengths", [new(0, 50, 1), new(0, 51, 2), new(1, 50), new(1, 51, 3)], "there are two"),
            ("one outing", [new(0, 49, 1), new(0, 50, 2.1), new(0, 51), new(0, 50, 2.3), new(0, 49, 0.8)], "two outings"),
            ("too few", [new(0, 49), new(0, 50, 1), new(1, 51), new(1, 50, 3)], "too few"),
            ("one length an outing", [new(0, 49), new(1, 50, 1), new(2, 51), new(3, 50, 3)], "too few"),
            ("identical times", LogOf.Healthy().Select(row => row with { Percent = 0 }), "no error to judge by"),
        ];
        foreach ((string log, IEnumerable<Row> rows, string says) in poor)
        {
            ClassicalFit fit = Fit(rows);
            Assert.True(Words(fit).Contains(says, StringComparison.Ordinal), $"{log}: {Words(fit)}");
            Assert.Empty(fit.Coefficients);
            Assert.Null(fit.Vertex);
            Assert.Null(fit.VertexInches);
        }
    }

    [Fact]
    public void Any_log_gives_finite_numbers_and_a_sentence()
    {
        Gen<Row> row = Gen.Select(Gen.Int[0, 5], Gen.Int[-8, 8], Gen.Double[-20, 20], Gen.Int[0, 20], Gen.Int[0, 3],
            (outing, quarters, percent, halves, kind) =>
                new Row(outing, 50 + quarters / 4.0, kind == 0 ? 0 : percent, kind == 1 ? null : halves / 2.0)
                {
                    Metres = kind == 2 ? 30_000 : 1000,
                });
        row.Array[0, 40].Sample(rows =>
        {
            ClassicalFit fit = Fit(rows);
            Assert.NotEmpty(Words(fit));
            Assert.DoesNotContain("NaN", Words(fit), StringComparison.Ordinal);
            Assert.All(
                fit.Coefficients, one => Assert.True(double.IsFinite(one.Estimate) && double.IsFinite(one.StandardError), one.ToString()));
            Assert.True(double.IsFinite(fit.OutingSd) && double.IsFinite(fit.PieceSd) && double.IsFinite(fit.VertexInches ?? 0));
            Assert.True(fit.Vertex is null or { Shape: FiellerShape.Everything }
                || (double.IsFinite(fit.Vertex.Low) && fit.Vertex.Low <= fit.Vertex.High));
        }, iter: 1000);
    }

    [Fact]
    public void Columns_that_cannot_be_told_apart_are_left_out_and_named()
    {
        // Effort rises by half a point from piece to piece, exactly as the order does.
        IEnumerable<Row> rows = LogOf.Healthy().Select((row, at) => row with { Effort = 5 + at % 4 * 0.5 });
        ClassicalFit fit = Fit(rows);
        Assert.Equal(["level", "length", "length squared", "order"], fit.Coefficients.Select(one => one.Name));
        Assert.Contains("effort, which cannot be told apart", Words(fit), StringComparison.Ordinal);
        Assert.Contains("distance, which never varied", Words(fit), StringComparison.Ordinal);
    }

    private static string Words(ClassicalFit fit) => ClassicalWords.Of(fit, StandardHulls.All[0], LengthUnit.Inches);

    private static ClassicalFit Fit(IEnumerable<Row> rows) => ClassicalAnalysis.Fit(LogOf.Rows(rows));
}
