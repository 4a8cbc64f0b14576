namespace TrialLog.Tuning.Checks;

/// <summary>So many pieces left out that the choice of them may be the result.</summary>
internal sealed class ManyExcluded : ILogCheck
{
    private const int Few = 3;

    /// <summary>Share of the pieces from which leaving out may be choosing. Chosen.</summary>
    private const double Many = 0.25;

    public HealthCheck? Look(CheckedLog log)
    {
        int all = log.Question.Outings.Sum(outing => outing.Pieces.Count);
        int excluded = log.Question.Outings.Sum(outing => outing.Pieces.Count(piece => piece.ExcludedBecause is not null));
        return excluded >= Few && excluded >= Many * all
            ? new("many-excluded") { Count = excluded, Of = all }
            : null;
    }
}
