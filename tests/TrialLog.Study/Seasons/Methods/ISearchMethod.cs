using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Study.Seasons.Methods;

/// <summary>A way of searching for the best length, through one season of one paddler.</summary>
internal interface ISearchMethod
{
    /// <summary>What to paddle next, one length a piece.</summary>
    IReadOnlyList<Length> Plan();

    /// <summary>Takes in what was paddled.</summary>
    void Learn(Outing outing);

    /// <summary>What it would race with now.</summary>
    Recommendation Recommend();
}

/// <summary>What a method would race with.</summary>
/// <param name="Inches">The length.</param>
/// <param name="Low">Lower end of its 90 % range, NaN where it gives none.</param>
/// <param name="High">Upper end.</param>
/// <param name="Claims">What else it says; null where it says nothing else.</param>
internal readonly record struct Recommendation(double Inches, double Low = double.NaN, double High = double.NaN, Claims? Claims = null);

/// <summary>What the tool says beside the length.</summary>
/// <param name="Standing">Where the search stands.</param>
/// <param name="WorthwhileLeft">Chance of a worthwhile gain.</param>
/// <param name="WithinQuarterInch">Chance that the length is within a quarter inch of the best.</param>
/// <param name="GainLeftPercent">Gain left.</param>
/// <param name="ToGo">Outings to go.</param>
/// <param name="CardWidthInches">Longest less shortest length of the next card.</param>
/// <param name="OtherHull">The range in another hull, inches; null where it was not asked for.</param>
/// <param name="Goal">The range over a goal event of an hour; null where it was not asked for.</param>
internal sealed record Claims(
    Standing Standing, double WorthwhileLeft, double WithinQuarterInch, double GainLeftPercent, OutingsToGo ToGo, double CardWidthInches,
    (double Low, double High)? OtherHull, (double Low, double High)? Goal)
{
    public bool Stop => Standing is Standing.Settled or Standing.Flat;
}
