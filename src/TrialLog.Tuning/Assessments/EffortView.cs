using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Assessments;

/// <summary>What effort, heart rate and hidden lengths did for an answer.</summary>
/// <param name="ToldSd">How far true effort strays from what was told, CR10 points, one standard deviation; null without heart rate, since
/// nothing else shows it.</param>
/// <param name="HeartRateUsed">Whether heart rate counted.</param>
/// <param name="BlindOutings">Outings that count in which the paddler did not know the lengths.</param>
/// <param name="Slope">How heart rate went with length in the other outings; null where nothing tells. Clear, it means that blind outings
/// would tell pushing from cost.</param>
/// <param name="BlindAlone">The best length by the blind outings alone; null unless some were blind and some not.</param>
public sealed record EffortView(double? ToldSd, bool HeartRateUsed, int BlindOutings, HeartRateSlope? Slope, BestLength? BlindAlone)
{
    /// <summary>The view of a fit.</summary>
    internal static EffortView Of(AssessedFit assessed)
    {
        AnalysisInput input = assessed.Input;
        IReadOnlyList<Outing> counted = assessed.Fit.Table.Outings;
        int blind = counted.Count(outing => outing.Blind);
        BestLength? alone = null;
        if (blind > 0 && blind < counted.Count)
        {
            AnalysisInput hidden = input with { Outings = [.. counted.Where(outing => outing.Blind)] };
            alone = BestSetting.Of(hidden, Fit.Of(hidden), assessed.Allowed);
        }

        EffortModel? effort = assessed.Fit.Effort;
        return new(effort?.UntoldSd, effort?.HeartRate is not null, blind, effort?.HeartRate?.Slope, alone);
    }
}
