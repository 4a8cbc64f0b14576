using System.Globalization;
using System.Reflection;
using TrialLog.Domain.Values;
using TrialLog.Tuning;

namespace TrialLog.Study.Seasons;

/// <summary>Settings of the model given on the command line.</summary>
internal static class SettingOverrides
{
    /// <summary>The defaults with these changed; null with the problem where one cannot be read.</summary>
    public static TuningSettings? Read(IReadOnlyList<string> texts, out string? problem)
    {
        TuningSettings settings = TuningSettings.Default with { };
        foreach (string text in texts)
        {
            string[] parts = text.Split('=');
            PropertyInfo? property = parts.Length == 2 ? typeof(TuningSettings).GetProperty(parts[0]) : null;
            if (property is null || !double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double value))
            {
                problem = $"“{text}” is not a setting; write NAME=VALUE with a name of TuningSettings, such as CurvatureMedian=0.5.";
                return null;
            }

            property.SetValue(
                settings,
                Convert.ChangeType(value, Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType,
                CultureInfo.InvariantCulture));
        }

        problem = null;
        return settings;
    }
}
