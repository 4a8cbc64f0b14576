using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Files;

namespace TrialLog.Recordings.Formats;

/// <summary>Reads track points and laps of a Training Center XML file, from activities as from courses.</summary>
internal static class TcxFormat
{
    /// <summary>Reads every track point and lap in file order.</summary>
    /// <exception cref="RecordingException">Not sound XML, refused, or too many points.</exception>
    public static Recording Read(ArraySegment<byte> bytes) => XmlDocumentReader.Walk(bytes, Read);

    private static Recording Read(XmlDocumentReader xml)
    {
        var samples = new SampleList();
        var laps = new List<LapMark>();
        TimeSpan? offset = null;
        var breaks = new List<int>();
        string? sport = null;
        RecordedSample point = SampleList.Nothing;
        var lap = new LapMark(double.NaN, double.NaN, false);
        double lapSeconds = double.NaN;
        bool inPoint = false, inHeartRate = false;
        while (xml.Next())
        {
            switch (xml.Name)
            {
                case "Activity" or "Course" when xml.Entered:
                    sport ??= Sports.Of(xml.Attribute("Sport"));
                    if (samples.All.Count > 0)
                        breaks.Add(samples.All.Count);
                    break;
                case "Lap" when xml.Entered:
                    IsoTime.TryRead(xml.Attribute("StartTime"), out double start, out _);
                    lap = new LapMark(start, double.NaN, false);
                    lapSeconds = double.NaN;
                    break;
                case "Lap" when laps.Count < Recording.MostSamples:
                    // The timer stands still in a pause, so a lap ends where the next begins; the last, with its last point.
                    if (laps.Count > 0 && laps[^1].End < lap.Start)
                        laps[^1] = laps[^1] with { End = lap.Start };
                    laps.Add(
                        lap with
                        {
                            End = Math.Max(lap.Start + lapSeconds,
                        point.Time >= lap.Start ? point.Time : double.NegativeInfinity)
                        });
                    break;
                case "TotalTimeSeconds" when xml.Entered:
                    lapSeconds = xml.Number();
                    break;
                case "Intensity" when xml.Entered:
                    lap = lap
                        with
                    { Kind = xml.Text() switch { "Active" => LapKind.Active, "Resting" => LapKind.Rest, _ => LapKind.Untold } };
                    break;
                case "TriggerMethod" when xml.Entered:
                    lap = lap with { Pressed = xml.Text() is "Manual" };
                    break;
                case "Trackpoint":
                    if (xml.Entered)
                        point = SampleList.Nothing;
                    inPoint = xml.Entered && !xml.IsEmpty;
                    if (!inPoint)
                        samples.Add(point);
                    break;
                case "HeartRateBpm":
                    inHeartRate = xml.Entered;
                    break;
                case "Time" when inPoint && xml.Entered:
                    if (IsoTime.TryRead(xml.Text(), out double time, out TimeSpan? told))
                        point = point with { Time = time };
                    offset ??= told;
                    break;
                case "LatitudeDegrees" when inPoint && xml.Entered:
                    point = point with { Latitude = xml.Number() };
                    break;
                case "LongitudeDegrees" when inPoint && xml.Entered:
                    point = point with { Longitude = xml.Number() };
                    break;
                case "Value" when inPoint && inHeartRate && xml.Entered:
                    point = point with { HeartRate = (float)xml.Number() };
                    break;
                case "Cadence" or "RunCadence" when inPoint && xml.Entered:
                    point = point with { Cadence = (float)xml.Number() };
                    break;
                case "Speed" when inPoint && xml.Entered:
                    point = point with { Speed = (float)xml.Number() };
                    break;
            }
        }

        return new Recording { Samples = samples.All, Laps = laps, Offset = offset, Breaks = breaks, Sport = sport };
    }
}
