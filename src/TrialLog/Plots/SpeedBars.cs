using TrialLog.Domain.Values;
using TrialLog.Recordings.Pieces;

namespace TrialLog.Plots;

/// <summary>Speed through a recording in a single line, as a picture of it among others.</summary>
internal static class SpeedBars
{
    private const string Fine = " ▁▂▃▄▅▆▇█", Ascii = " .:-=+*%#";

    /// <summary>Draws it, from the start to the end.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="columns">Width in cells, 2 or more.</param>
    /// <param name="strokes">The glyphs that the terminal has.</param>
    /// <returns>The line, and the speed of its highest bar, m/s.</returns>
    public static (string Line, double Fastest) Draw(RecordedOuting recording, int columns, Strokes strokes)
    {
        string bars = strokes == Strokes.Ascii ? Ascii : Fine;
        IReadOnlyList<SpeedPoint> speeds = recording.SpeedSeries(Math.Max(2, columns));
        double fastest = Math.Max(0.1, speeds.Max(point => point.MetresPerSecond ?? 0));
        return (string.Concat(speeds.Select(point => bars[(int)Math.Round((point.MetresPerSecond ?? 0) / fastest * (bars.Length - 1))])),
            fastest);
    }

    /// <summary>Where the lap button was pressed, under that line; empty where it never was.</summary>
    public static string Presses(RecordedOuting recording, int columns)
    {
        if (recording.Presses.Count == 0)
            return "";
        char[] line = [.. Enumerable.Repeat(' ', columns)];
        foreach (TimeSpan press in recording.Presses)
            line[Math.Min(columns - 1, (int)(press.TotalSeconds / (recording.Duration.TotalSeconds + 1) * columns))] = '▲';
        return new string(line).TrimEnd();
    }
}
