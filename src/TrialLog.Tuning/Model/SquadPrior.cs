using MathNet.Numerics.Distributions;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tuning.Model;

/// <summary>What one paddler's log, by itself, says of how far the best length lies from the start length.</summary>
/// <param name="PaddlerId">Whose log.</param>
/// <param name="Basis">What the start length rests on.</param>
/// <param name="OffsetInches">Best length less start length, as the pieces alone have it, inches.</param>
/// <param name="Variance">Its variance, inches squared.</param>
public sealed record SquadEvidence(Guid PaddlerId, StartLengthBasis Basis, double OffsetInches, double Variance)
{
    /// <summary>A log speaks for others once its pieces have taken that share of the start length's variance away. Chosen.</summary>
    private const double Settled = 0.75;

    /// <summary>The evidence of a log in the hull and with the paddle most paddled; null where it has not settled.</summary>
    /// <param name="input">The log; its own hull and paddle do not matter, and what a squad taught it is not used.</param>
    public static SquadEvidence? Of(AnalysisInput input)
    {
        Piece[] pieces = [.. input.Outings.SelectMany(outing => outing.Pieces)
            .Where(piece => piece.ExcludedBecause is null && input.PaddleWith(piece.PaddleId) is { Steering: false })];
        if (pieces.Length == 0)
            return null;
        Guid paddleId = pieces.GroupBy(piece => piece.PaddleId).OrderByDescending(group => group.Count()).ThenBy(group => group.Key)
            .First().Key;
        Guid hullId = input.Outings.Where(
            outing => input.HullWith(outing.HullId) is not null && outing.Pieces.Any(piece => piece.ExcludedBecause is null))
            .GroupBy(outing => outing.HullId).OrderByDescending(group => group.Sum(outing => outing.Pieces.Count))
                .ThenBy(group => group.Key).First().Key;
        Hull hull = input.HullWith(hullId)!;
        Paddle paddle = input.PaddleWith(paddleId)!;
        Posterior posterior = Fit.Of(input with { Hull = hull, Paddle = paddle, Squad = null }).Posterior;
        (double mean, double variance) = posterior.AtReference;
        StartLength start = StartLength.Of(input.Paddler);
        double spread = input.Settings.StartSpreadInches ?? start.SpreadInches,
            before = spread * spread * input.Settings.StartVarianceFactor;
        if (variance > (1 - Settled) * before)
            return null;
        // What the start length itself had said is taken out again, as for normals.
        double alone = 1 / (1 / variance - 1 / before);
        return new(input.Paddler.Id, start.Basis, mean / variance * alone, alone);
    }
}

/// <summary>
/// What the settled logs of a squad say of the start length of another of its paddlers: how far best lengths lie from start lengths that
/// rest on the same thing, and how much they differ. It takes the place of the start length's own spread.
/// </summary>
/// <param name="Paddlers">From how many.</param>
/// <param name="OffsetInches">By how much best lengths lie above (below zero: below) start lengths, inches.</param>
/// <param name="SdInches">Standard deviation of a further paddler's best length around start length and offset, inches.</param>
/// <param name="Basis">What those start lengths rest on.</param>
public sealed record SquadPrior(int Paddlers, double OffsetInches, double SdInches, StartLengthBasis Basis)
{
    /// <summary>One log is no squad.</summary>
    private const int Fewest = 2;

    /// <summary>
    /// Shares of the start length's spread (0.8 in for a measured reach): how far a rule may be off for everybody, and how paddlers differ
    /// about it. Their squares add up to one, so that a squad that has said nothing changes nothing. Chosen.
    /// </summary>
    private const double CommonShare = 0.6, OwnShare = 0.8, OwnLogSpread = 0.35;

    private const int Nodes = 41;

    /// <summary>What others teach about a paddler; null where fewer than two others of the same basis have settled.</summary>
    /// <param name="paddler">The paddler it is for: his or her own log is never used.</param>
    /// <param name="evidence">The logs' evidence, the paddler's own among them or not.</param>
    /// <param name="settings">The priors.</param>
    public static SquadPrior? Of(Paddler paddler, IEnumerable<SquadEvidence> evidence, TuningSettings settings)
    {
        StartLength start = StartLength.Of(paddler);
        SquadEvidence[] others = [.. evidence.Where(one => one.PaddlerId != paddler.Id && one.Basis == start.Basis)];
        if (others.Length < Fewest)
            return null;
        double spread = settings.StartSpreadInches ?? start.SpreadInches;
        (double offset, double offsetVariance, double ownSquare, _) = Pooled(others, spread);
        return new(others.Length, offset, Math.Sqrt(ownSquare + offsetVariance), start.Basis);
    }

    /// <summary>
    /// The offset common to all and the spread of paddlers around it, each offset known with its own variance: given the spread all is
    /// normal, and the logarithm of the spread goes by a grid (Gelman and others 2013, Bayesian Data Analysis, section 5.4).
    /// </summary>
    internal static (double Offset, double OffsetVariance, double OwnSquare, double LogOwn) Pooled(
        IReadOnlyList<SquadEvidence> others, double spread)
    {
        double common = CommonShare * spread, median = OwnShare * spread * Math.Exp(-OwnLogSpread * OwnLogSpread);
        double[] z = [.. Enumerable.Range(0, Nodes).Select(k => 5 * (2.0 * k / (Nodes - 1) - 1))], logWeights = new double[Nodes],
            means = new double[Nodes], variances = new double[Nodes], owns = new double[Nodes];
        for (int k = 0; k < Nodes; k++)
        {
            double own = owns[k] = median * Math.Exp(z[k] * OwnLogSpread), precision = 1 / (common * common), pull = 0,
                log = Normal.PDFLn(0, 1, z[k]);
            foreach (SquadEvidence one in others)
            {
                double total = own * own + one.Variance;
                precision += 1 / total;
                pull += one.OffsetInches / total;
                log -= 0.5 * (Math.Log(total) + one.OffsetInches * one.OffsetInches / total);
            }

            (means[k], variances[k]) = (pull / precision, 1 / precision);
            logWeights[k] = log - 0.5 * Math.Log(precision) + 0.5 * pull * pull / precision;
        }

        double most = logWeights.Max(), sum = 0, offset = 0, square = 0, ownSquare = 0, logOwn = 0;
        for (int k = 0; k < Nodes; k++)
        {
            double weight = Math.Exp(logWeights[k] - most);
            sum += weight;
            offset += weight * means[k];
            square += weight * (means[k] * means[k] + variances[k]);
            ownSquare += weight * owns[k] * owns[k];
            logOwn += weight * Math.Log(owns[k]);
        }

        offset /= sum;
        return (offset, square / sum - offset * offset, ownSquare / sum, logOwn / sum);
    }
}
