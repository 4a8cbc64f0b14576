using CsCheck;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Tuning.Assessments;

/// <summary>While it hurts, what is proposed lies below every length that hurt.</summary>
public class CeilingLaws
{
    [Fact]
    public void The_ceiling_lies_below_every_length_that_hurt_and_nothing_above_it_is_proposed() =>
        Gen.Select(Gen.Int[1, 4], Gen.Int[0, 16].Array[40]).Sample((outings, halves) =>
        {
            AnalysisInput input = LogOf.Rows(LogOf.Healthy(outings));
            int at = 0;
            input = input with
            {
                Outings = [.. input.Outings.Select(outing => outing with
                {
                    Pieces = [
                        .. outing.Pieces.Select(
                        piece => piece with { Soreness = Soreness.FromPoints(halves[at++ % halves.Length] / 2.0) })],
                })],
            };
            Analysis analysis = Tuner.Analyse(input);
            if (analysis.SorenessLimit is not { } ceiling)
                return;
            Assert.Equal(Standing.Sore, analysis.Standing);
            Assert.False(analysis.DiminishingReturns);
            Assert.All(analysis.Card.Lengths, length => Assert.True(length <= ceiling || length == input.Paddle.Shortest));
            Assert.All(
                input.Outings.Where(outing => outing.Date >= analysis.Soreness!.Since).SelectMany(outing => outing.Pieces)
                    .Where(piece => piece.Soreness!.Value.Points >= input.Settings.SorenessLimit),
                piece => Assert.True(piece.Length > ceiling));
        }, iter: 12);
}
