using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace TrialLog.Domain.Values;

/// <summary>Heart rate, 25 to 250 beats a minute, as a piece's mean.</summary>
public readonly record struct HeartRate
{
    private const int Lowest = 25, Highest = 250;

    // Counted from the lowest, so that one that was never set is not impossible.
    private readonly int _aboveLowest;

    private HeartRate(int beats) => _aboveLowest = beats - Lowest;

    /// <summary>Beats a minute, 25 to 250.</summary>
    public int BeatsPerMinute => _aboveLowest + Lowest;

    /// <summary>A heart rate of so many beats a minute.</summary>
    /// <exception cref="InvalidValueException">Not between 25 and 250.</exception>
    public static HeartRate FromBeatsPerMinute(int beats) =>
        beats is >= Lowest and <= Highest ? new HeartRate(beats)
            : throw new InvalidValueException("A heart rate lies between 25 and 250 a minute.");

    /// <summary>Reads <c>142</c> or <c>142 bpm</c>; decimals are rounded.</summary>
    public static bool TryParse(string? text, out HeartRate rate, [NotNullWhen(false)] out string? problem)
    {
        bool read = RateText.TryRead(text, out decimal beats, "bpm", "/min") && beats is >= Lowest and <= Highest;
        rate = read ? new HeartRate((int)Math.Round(beats)) : default;
        problem = read ? null : $"“{Quoted.Brief(text)}” is not a heart rate between 25 and 250 a minute.";
        return read;
    }

    /// <summary>The number of beats a minute.</summary>
    public override string ToString() => BeatsPerMinute.ToString(CultureInfo.InvariantCulture);
}
