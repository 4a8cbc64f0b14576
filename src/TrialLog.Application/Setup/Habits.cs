using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Setup;

/// <summary>What a trial outing may look like.</summary>
internal static class Habits
{
    /// <summary>The least and the most time on the water, minutes.</summary>
    public const int LeastMinutes = 30, MostMinutes = 300;

    /// <summary>The habits, if they can be.</summary>
    /// <exception cref="InvalidValueException">A number of pieces that no mirrored order has, or time or price that is not
    /// believable.</exception>
    public static TrialHabits Checked(TrialHabits habits) =>
        habits.Pieces is { } pieces && !TrialHabits.MayHave(pieces)
            ? throw new InvalidValueException(
                $"A card has an even number of pieces, {TrialHabits.FewestPieces} to {TrialHabits.MostPieces}: in the order A B B A " +
                    $"every length is " +
                $"paddled early and late.")
        : habits.Minutes is < LeastMinutes or > MostMinutes
            ? throw new InvalidValueException(
                $"Time on the water lies between {LeastMinutes} and {MostMinutes} minutes, warm-up and rests included: " +
                    $"four pieces of 500 m take about half an hour.")
        : habits.PricePercent is { } price && price is not (>= 0.0005 and <= 1)
            ? throw new InvalidValueException("What an outing is worth lies between 0.0005 and 1% of speed; 0.005 at first.")
        : habits;
}
