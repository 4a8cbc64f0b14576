using System.Globalization;
using System.Text;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;
using TrialLog.TestData.Recordings.Simulation;

namespace TrialLog.TestData.Recordings.Writing;

/// <summary>Writes GPX 1.1 and TCX files, for samples and tests only.</summary>
internal static class XmlWriting
{
    /// <summary>One GPX track.</summary>
    public static byte[] Gpx(IReadOnlyList<RecordedPoint> points, string name)
    {
        var text = new StringBuilder();
        text.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx version=\"1.1\" creator=\"TrialLog study\" " +
            "xmlns=\"http://www.topografix.com/GPX/1/1\" xmlns:x=\"urn:triallog:sample\">\n");
        text.Append(CultureInfo.InvariantCulture, $"<trk><name>{name}</name><trkseg>\n");
        foreach (RecordedPoint p in points)
        {
            text.Append(CultureInfo.InvariantCulture,
                $"<trkpt lat=\"{p.Latitude:0.0000000}\" lon=\"{p.Longitude:0.0000000}\"><time>{Time(p.Time)}</time>");
            text.Append(CultureInfo.InvariantCulture,
                $"<extensions><x:hr>{p.HeartRate}</x:hr><x:cad>{p.Cadence}</x:cad></extensions></trkpt>\n");
        }

        text.Append("</trkseg></trk>\n</gpx>\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>One TCX activity; a lap ends at each press.</summary>
    public static byte[] Tcx(IReadOnlyList<RecordedPoint> points, IReadOnlyList<double> presses)
    {
        var text = new StringBuilder();
        text.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<TrainingCenterDatabase " +
            "xmlns=\"http://www.garmin.com/xmlschemas/TrainingCenterDatabase/v2\">\n");
        text.Append(CultureInfo.InvariantCulture, $"<Activities><Activity Sport=\"Other\"><Id>{Time(points[0].Time)}</Id>\n");
        double from = points[0].Time;
        int at = 0;
        foreach (double press in presses.Append(double.PositiveInfinity))
        {
            double end = Math.Min(press, points[^1].Time);
            text.Append(
                CultureInfo.InvariantCulture,
                $"<Lap StartTime=\"{Time(from)}\"><TotalTimeSeconds>{end - from:0.###}" +
                    $"</TotalTimeSeconds><DistanceMeters>0</DistanceMeters><Calories>0</Calories><Intensity>Active</Intensity>" +
                    $"<TriggerMethod>{(double.IsFinite(press) ? "Manual" : "Time")}</TriggerMethod><Track>\n");
            for (; at < points.Count && points[at].Time < press; at++)
            {
                RecordedPoint p = points[at];
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"<Trackpoint><Time>{Time(p.Time)}</Time><Position><LatitudeDegrees>{p.Latitude:0.0000000}" +
                        $"</LatitudeDegrees><LongitudeDegrees>{p.Longitude:0.0000000}</LongitudeDegrees></Position><HeartRateBpm><Value>" +
                        $"{p.HeartRate}</Value></HeartRateBpm><Cadence>{p.Cadence}</Cadence></Trackpoint>\n");
            }

            text.Append("</Track></Lap>\n");
            from = end;
        }

        text.Append("</Activity></Activities>\n</TrainingCenterDatabase>\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string Time(double seconds) =>
        DateTimeOffset.UnixEpoch.AddSeconds(seconds).ToString("yyyy-MM-ddTHH:mm:ss.FFFZ", CultureInfo.InvariantCulture);
}
