using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Setup;

/// <summary>What a trial outing may look like.</summary>
internal static class Habits
{
    /// <summary>The least and the most time on the water, minutes.</summary>
    public const int LeastMinutes = 30, MostMinutes = 300;

    /// <summary>
    /// The shortest and the longest piece, metres. Over less than the shortest half a second of a stopwatch is more than an inch of
    /// paddle is worth; four of the longest are a whole day. Chosen.
    /// </summary>
    public const int ShortestMetres = 200, LongestMetres = 20_000;

    /// <summary>The habits, if they can be.</summary>
    /// <exception cref="InvalidValueException">A number of pieces that no mirrored order has, or a distance, time or price that is not
    /// believable.</exception>
    public static TrialHabits Checked(TrialHabits habits) =>
        habits.Pieces is { } pieces && !TrialHabits.MayHave(pieces)
            ? throw new InvalidValueException(
                $"A card has an even number of pieces, {TrialHabits.FewestPieces} to {TrialHabits.MostPieces}: in the order A B B A " +
                    $"every length is " +
                $"paddled early and late.")
        : habits.Distance?.Metres is < ShortestMetres or > LongestMetres
            ? throw new InvalidValueException(
                $"A piece is {ShortestMetres} m to {LongestMetres / 1000} km long: over less, half a second of timing is worth more than " +
                    "an inch of paddle; 1 km suits most races.")
        : habits.Minutes is < LeastMinutes or > MostMinutes
            ? throw new InvalidValueException(
                $"Time on the water lies between {LeastMinutes} and {MostMinutes} minutes, warm-up and rests included: " +
                    $"four pieces of 500 m take about half an hour.")
        : habits.PricePercent is { } price && price is not (>= 0.0005 and <= 1)
            ? throw new InvalidValueException("What an outing is worth lies between 0.0005 and 1% of speed; 0.005 at first.")
        : habits;
}
