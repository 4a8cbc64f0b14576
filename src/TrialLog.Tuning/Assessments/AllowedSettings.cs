using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Assessments;

/// <summary>The settings of the paddle that may be proposed: its range, cut off where soreness says so.</summary>
/// <param name="Settings">The settings, by length; at least one.</param>
/// <param name="Ceiling">The longest length that may be proposed, null where soreness sets no limit.</param>
internal sealed record AllowedSettings(IReadOnlyList<Length> Settings, Length? Ceiling)
{
    /// <summary>Whether the ceiling leaves any setting; if not, the shortest stands in <see cref="Settings"/> all the same.</summary>
    public bool IsOpen => Ceiling is not { } limit || Settings[0] <= limit;

    /// <summary>The shortest setting.</summary>
    public Length Shortest => Settings[0];

    /// <summary>The longest setting.</summary>
    public Length Longest => Settings[^1];

    /// <summary>The settings of a paddle under a ceiling; where the ceiling leaves none, the shortest alone.</summary>
    public static AllowedSettings Of(Paddle paddle, Length? ceiling)
    {
        List<Length> settings = [.. paddle.Settings()];
        if (ceiling is { } limit)
            settings.RemoveAll(setting => setting > limit);
        if (settings.Count == 0)
            settings.Add(paddle.Shortest);
        return new(settings, ceiling);
    }

    /// <summary>The setting nearest to a length in inches; half way goes to the shorter.</summary>
    public Length Nearest(double inches)
    {
        Length nearest = Settings[0];
        foreach (Length setting in Settings)
            if (Math.Abs(setting.Inches - inches) < Math.Abs(nearest.Inches - inches) - 1e-9)
                nearest = setting;
        return nearest;
    }
}
