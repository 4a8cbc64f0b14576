using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

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
/// <param name="Stop">Whether it says that testing on is not worth it; null where it never says.</param>
/// <param name="Low">Lower end of its 90 % range, NaN where it gives none.</param>
/// <param name="High">Upper end.</param>
internal readonly record struct Recommendation(double Inches, bool? Stop = null, double Low = double.NaN, double High = double.NaN);
