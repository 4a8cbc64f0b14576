using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace TrialLog.Domain.Values;

/// <summary>Stroke rate, 5 to 150 strokes a minute, held in tenths.</summary>
public readonly record struct StrokeRate
{
    private const int LowestTenths = 50;

    // Counted from the lowest, so that one that was never set is not impossible.
    private readonly int _aboveLowest;

    private StrokeRate(int tenths) => _aboveLowest = tenths - LowestTenths;

    /// <summary>Strokes a minute in tenths, 50 to 1500.</summary>
    public int Tenths => _aboveLowest + LowestTenths;

    /// <summary>Strokes a minute.</summary>
    public double StrokesPerMinute => Tenths / 10.0;

    /// <summary>The nearest tenth of a stroke a minute.</summary>
    /// <exception cref="InvalidValueException">Not between 5 and 150.</exception>
    public static StrokeRate FromStrokesPerMinute(double strokes) =>
        strokes is >= 5 and <= 150 ? new StrokeRate((int)Math.Round(strokes * 10))
            : throw new InvalidValueException("A stroke rate lies between 5 and 150 a minute.");

    /// <summary>Reads <c>58</c>, <c>58.5</c> or <c>58 spm</c>, rounded to a tenth.</summary>
    public static bool TryParse(string? text, out StrokeRate rate, [NotNullWhen(false)] out string? problem)
    {
        bool read = RateText.TryRead(text, out decimal strokes, "spm", "/min") && strokes is >= 5 and <= 150;
        rate = read ? new StrokeRate((int)Math.Round(strokes * 10)) : default;
        problem = read ? null : $"“{Quoted.Brief(text)}” is not a stroke rate between 5 and 150 a minute.";
        return read;
    }

    /// <summary>Strokes a minute, with a tenth where there is one.</summary>
    public override string ToString() => StrokesPerMinute.ToString("0.#", CultureInfo.InvariantCulture);
}
