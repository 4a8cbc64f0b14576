using TrialLog.Application.Logging;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Base;

namespace TrialLog.Screens.Log;

/// <summary>A filter in words.</summary>
internal static class SelectionText
{
    public static string Of(OutingSelection selection, LogState state)
    {
        var parts = new List<string>();
        if (selection.HullId is { } hull)
            parts.Add("in " + (state.Hulls.FirstOrDefault(known => known.Id == hull)?.Name ?? "?"));
        if (selection.PaddleId is { } paddle)
            parts.Add("with " + (state.Paddles.FirstOrDefault(known => known.Id == paddle)?.Name ?? "?"));
        if (selection.From is { } from)
            parts.Add($"from {from:yyyy-MM-dd}");
        if (selection.To is { } to)
            parts.Add($"to {to:yyyy-MM-dd}");
        return Quoted.Visible(string.Join(" ", parts));
    }
}
