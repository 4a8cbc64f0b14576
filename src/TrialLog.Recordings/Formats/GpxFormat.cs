using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Files;

namespace TrialLog.Recordings.Formats;

/// <summary>
/// Reads track points of GPX 1.1 (and 1.0). Heart rate, cadence and speed are taken from extension elements by their
/// local names <c>hr</c>, <c>cad</c> and <c>speed</c>, whatever name space a device puts them in. GPX has no laps.
/// </summary>
internal static class GpxFormat
{
    /// <summary>Reads every track point in file order.</summary>
    /// <exception cref="RecordingException">Not sound XML, refused, or too many points.</exception>
    public static Recording Read(ArraySegment<byte> bytes) => XmlDocumentReader.Walk(bytes, Read);

    private static Recording Read(XmlDocumentReader xml)
    {
        var samples = new SampleList();
        TimeSpan? offset = null;
        RecordedSample point = SampleList.Nothing;
        bool inPoint = false, inTrack = false;
        var breaks = new List<int>();
        string? sport = null;
        while (xml.Next())
        {
            if (xml.Name == "trk")
            {
                inTrack = xml.Entered;
                if (inTrack && samples.All.Count > 0)
                    breaks.Add(samples.All.Count);
            }
            else if (xml.Name == "type" && xml.Entered && inTrack && !inPoint)
            {
                sport ??= Sports.Of(xml.Text());
            }
            else if (xml.Name == "trkpt")
            {
                if (xml.Entered)
                    point = SampleList.Nothing with { Latitude = xml.NumberAttribute("lat"), Longitude = xml.NumberAttribute("lon") };
                inPoint = xml.Entered && !xml.IsEmpty;
                if (!inPoint)
                    samples.Add(point);
            }
            else if (inPoint && xml.Entered)
            {
                switch (xml.Name)
                {
                    case "time":
                        if (IsoTime.TryRead(xml.Text(), out double time, out TimeSpan? told))
                            point = point with { Time = time };
                        offset ??= told;
                        break;
                    case "hr" or "heartrate":
                        point = point with { HeartRate = (float)xml.Number() };
                        break;
                    case "cad" or "cadence":
                        point = point with { Cadence = (float)xml.Number() };
                        break;
                    case "speed":
                        point = point with { Speed = (float)xml.Number() };
                        break;
                }
            }
        }

        return new Recording { Samples = samples.All, Offset = offset, Breaks = breaks, Sport = sport };
    }
}
