using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Information;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Assessments;

/// <summary>
/// Pieces that cannot settle a search, however many are paddled, since the race is so much longer that the best length may differ there.
/// </summary>
/// <param name="Distance">Of a piece as the log has them.</param>
/// <param name="ChanceBeyond">Chance of a worthwhile gain that no number of them takes away.</param>
/// <param name="LongEnough">The round distance that should settle it in the least time; null where none up to the race's own could.</param>
/// <param name="Minutes">What an outing of four such pieces takes, minutes; null where there is no such distance.</param>
public sealed record ShortPieces(Distance Distance, double ChanceBeyond, Distance? LongEnough, int? Minutes)
{
    /// <summary>Half of what two lengths of such an outing lie apart, inches. Chosen: about what cards of that stage have.</summary>
    private const double HalfWidthInches = 1;

    /// <summary>
    /// From this share on of the chance a search may end on, what pieces leave open is worth naming longer ones for. Chosen.
    /// </summary>
    private const double Room = 0.25;

    private const int FewestChanges = 2, WholeMinutes = 5;

    /// <summary>Longer pieces are proposed only where four of them fit into so many minutes on the water. Chosen.</summary>
    private const int LongOuting = 120;

    /// <summary>Null where pieces like these can settle it.</summary>
    internal static ShortPieces? Of(AnalysisInput input, Fit fit, double worthwhile)
    {
        if (fit.Table.Count == 0 || Durations.GoalSeconds(input, fit.Table) is not { } goal)
            return null;
        TrialForm form = TrialForm.Of(input, fit.Table, Comparisons.Of(fit.Table).Count);
        double beyond = Beyond(form);
        if (beyond < input.Settings.StopBelow || form.PieceSeconds >= goal)
            return null;
        TrialForm? longer = TrialForm.RoundDistances.Where(metres => metres > form.Distance.Metres)
            .Select(metres => form.Over(Domain.Values.Distance.FromMetres(metres)).With(Domain.Log.TrialHabits.FewestPieces))
            .TakeWhile(longer => longer.PieceSeconds <= goal)
            .Select(longer => (Form: longer, Minutes: longer.Minutes(FewestChanges) * Outings(longer)))
            .Where(static longer => double.IsFinite(longer.Minutes)).OrderBy(static longer => longer.Minutes)
            .Select(static longer => longer.Form).FirstOrDefault();
        return new(form.Distance, beyond, longer?.Distance,
            longer is null ? null : (int)Math.Ceiling(longer.Minutes(FewestChanges) / WholeMinutes) * WholeMinutes);

        // Two lengths a width 2w apart differ by 4 s c w for each inch that the best length is off their middle.
        double Outings(TrialForm pieces)
        {
            double perOuting = 4 * fit.Posterior.Share * fit.Posterior.Share * HalfWidthInches * HalfWidthInches * pieces.Pieces
                / TrialValue.PieceVariance(fit.Posterior, input.Settings, pieces);
            for (int outings = 1; outings <= OutingsToGo.Most; outings++)
                if (fit.Posterior.ChanceBeyond(pieces.LogDuration(input.Settings), worthwhile, outings * perOuting)
                    < input.Settings.StopBelow)
                    return outings;
            return double.PositiveInfinity;
        }

        double Beyond(TrialForm pieces) => fit.Posterior.ChanceBeyond(pieces.LogDuration(input.Settings), worthwhile);
    }

    /// <summary>
    /// Four longer pieces, the longest that fit a long outing, where the race is so much longer than a piece that such pieces alone would
    /// leave open how the best length moves with duration; null where they would not, or where nothing longer fits.
    /// </summary>
    internal static TrialForm? Longer(AssessedFit assessed, TrialForm form)
    {
        TuningSettings settings = assessed.Input.Settings;
        if (Durations.GoalSeconds(assessed.Input, assessed.Fit.Table) is not { } goal || form.PieceSeconds >= goal
            || assessed.Fit.Posterior.ChanceBeyond(form.LogDuration(settings), assessed.Says.WorthwhilePercent) < Room * settings.StopBelow)
            return null;
        return TrialForm.RoundDistances.Where(metres => metres > form.Distance.Metres)
            .Select(metres => form.Over(Domain.Values.Distance.FromMetres(metres)).With(TrialHabits.FewestPieces))
            .LastOrDefault(longer => longer.PieceSeconds <= goal && longer.Minutes(FewestChanges) <= LongOuting);
    }
}
