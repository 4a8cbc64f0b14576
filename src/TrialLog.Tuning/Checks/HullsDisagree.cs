using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Checks;

/// <summary>
/// Two hulls that, each by itself, point to lengths further apart than hulls are believed to be: joined they would seem surer than they
/// are.
/// </summary>
internal sealed class HullsDisagree : ILogCheck
{
    private const int EnoughPieces = 8;

    /// <summary>Ranges of that probability must not overlap. Chosen.</summary>
    private const double Level = 0.98;

    public HealthCheck? Look(CheckedLog log)
    {
        List<(Hull Hull, double Low, double Middle, double High)> alone = [];
        foreach (IGrouping<Guid, CheckedPiece> pieces in log.Counted.GroupBy(piece => piece.Outing.HullId))
            if (pieces.Count() >= EnoughPieces && log.Counted.Count > pieces.Count() && log.Question.HullWith(pieces.Key) is { } hull)
            {
                // The start length would draw the hulls together that are to be told apart, so no technique check and no other hull counts.
                Posterior posterior = Fit.Of(log.Question with
                {
                    Hull = hull,
                    Outings = [.. log.Question.Outings.Where(outing => outing.HullId == hull.Id)],
                    TechniqueChecks = [],
                }).Posterior;
                alone.Add((hull, posterior.Quantile((1 - Level) / 2), posterior.Mean, posterior.Quantile((1 + Level) / 2)));
            }

        if (alone.Count < 2)
            return null;
        (Hull shorter, _, double least, double upTo) = alone.MinBy(one => one.High);
        (Hull longer, double from, double most, _) = alone.MaxBy(one => one.Low);
        if (from <= upTo)
            return null;
        var alignment = new Alignment(StartLength.Of(log.Question.Paddler).Length, [shorter, longer]);
        return new("hulls-disagree")
        {
            Hull = shorter.Name, Inches = In(shorter, least), OtherHull = longer.Name,
            OtherInches = In(longer, most)
        };

        double In(Hull hull, double aligned) => alignment.LengthInches(aligned, hull, log.Question.Paddle.Blade);
    }
}
