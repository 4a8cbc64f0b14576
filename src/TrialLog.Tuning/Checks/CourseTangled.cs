using TrialLog.Domain.Log;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tuning.Checks;

/// <summary>One length outbound and another homebound: wind and current look like length.</summary>
internal sealed class CourseTangled : ILogCheck
{
    private const int EnoughPieces = 4;

    public HealthCheck? Look(CheckedLog log)
    {
        List<CheckedPiece> oneWay = [.. log.InHull.Where(piece => piece.Piece.Course is Course.Out or Course.Back)];
        if (oneWay.Count < EnoughPieces)
            return null;
        double correlation = Association.WithinOutings(oneWay, piece => piece.Piece.Course == Course.Out ? 1 : 0);
        return Math.Abs(correlation) >= Association.Tangled
            ? new("course-tangled") { Longer = correlation > 0 }
            : null;
    }
}
