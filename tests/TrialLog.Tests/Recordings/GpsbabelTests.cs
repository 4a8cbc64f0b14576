using System.Diagnostics;
using System.Globalization;
using TrialLog.Logbook.Rows;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Formats.Fit;
using TrialLog.Reports.Documents;
using TrialLog.Screens.Entry;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.Tests.Recordings;

/// <summary>Reading compared with GPSBabel's; see tests/reference/recordings/make.sh.</summary>
public class GpsbabelTests
{
    private const string Samples = "sample-sessions/recordings/", Stored = "tests/reference/recordings/";

    [Theory]
    [InlineData(Samples + "ilse-round-trips-laps.fit", "read-fit.csv.gz", true)]
    [InlineData(Samples + "tova-one-way-laps.tcx.gz", "read-tcx.csv.gz", true)]
    [InlineData(Samples + "bram-round-trips.gpx.gz", "read-gpx.csv.gz", false)]
    [InlineData(Stored + "written.fit", "written.csv.gz", false)]
    [InlineData(Stored + "written.tcx.gz", "written.csv.gz", true)]
    [InlineData(Stored + "written.gpx.gz", "written.csv.gz", true)]
    public void Every_point_is_read_as_GPSBabel_reads_it(string file, string table, bool heart) =>
        Compare(Table(System.Text.Encoding.UTF8.GetString(Repository.Bytes(Stored + table))), Decode(Repository.Bytes(file)), heart);

    [Theory]
    [InlineData("garmin_fit", "garmin_fit")]
    [InlineData("gtrnctr", "gtrnctr,course=0")]
    [InlineData("gpx", "gpx,gpxver=1.1,garminextensions=1")]
    public void What_we_write_GPSBabel_reads_and_what_it_writes_we_read(string reads, string writes)
    {
        if (!Installed())
            Assert.Skip("GPSBabel is not installed (Debian: gpsbabel), so reading was only compared with its stored outputs.");
        SimulatedOuting outing = Simulator.Run(
            new OutingPlan { Speeds = [3, 3.1], Leg = 200, Watch = new WatchFaults { Glitches = 0 } }, 77);
        byte[] ours = reads switch
        {
            "garmin_fit" => FitWriter.Activity(outing.Recorded, [], null),
            "gtrnctr" => XmlWriting.Tcx(outing.Recorded, []),
            _ => XmlWriting.Gpx(outing.Recorded, "live"),
        };
        DirectoryInfo folder = Directory.CreateTempSubdirectory("triallog-gpsbabel");
        try
        {
            string from = Path.Combine(folder.FullName, "ours"), table = Path.Combine(folder.FullName, "table"),
                to = Path.Combine(folder.FullName, "theirs");
            File.WriteAllBytes(from, ours);
            Convert(reads, from, "unicsv,utc=0", table);
            List<RecordedSample> expected = Table(File.ReadAllText(table));
            Assert.Equal(outing.Recorded.Count, expected.Count);
            Compare(expected, Decode(ours), heart: reads != "gpx");
            Convert(reads, from, writes, to);
            Compare(expected, Decode(File.ReadAllBytes(to)), heart: reads == "gtrnctr");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static IReadOnlyList<RecordedSample> Decode(byte[] bytes) => FormatSniffer.Sniff(bytes) switch
    {
        RecordingFormat.Gpx => GpxFormat.Read(bytes).Samples,
        RecordingFormat.Tcx => TcxFormat.Read(bytes).Samples,
        _ => FitFormat.Read(bytes).Samples,
    };

    private static void Compare(List<RecordedSample> expected, IReadOnlyList<RecordedSample> read, bool heart)
    {
        Assert.True(expected.Count > 100);
        Assert.Equal(expected.Count, read.Count);
        for (int i = 0; i < read.Count; i++)
        {
            Assert.Equal(expected[i].Time, read[i].Time);
            // The table has six decimals.
            Assert.InRange(read[i].Latitude - expected[i].Latitude, -0.51e-6, 0.51e-6);
            Assert.InRange(read[i].Longitude - expected[i].Longitude, -0.51e-6, 0.51e-6);
            if (!heart)
                continue;
            Assert.Equal(expected[i].HeartRate, read[i].HeartRate);
            // GPSBabel leaves a cadence of nothing empty.
            Assert.Equal(float.IsNaN(expected[i].Cadence) ? 0 : expected[i].Cadence, float.IsNaN(read[i].Cadence) ? 0 : read[i].Cadence);
        }
    }

    private static List<RecordedSample> Table(string text)
    {
        string[][] rows = [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.TrimEnd('\r').Split(','))];
        int Column(string name) => Array.IndexOf(rows[0], name);
        return [.. rows.Skip(1).Select(row => new RecordedSample(
            new DateTimeOffset(
                DateTime.ParseExact(row[Column("Date")] + row[Column("Time")], "yyyy/MM/ddHH:mm:ss", CultureInfo.InvariantCulture),
                TimeSpan.Zero).ToUnixTimeSeconds(),
            double.Parse(row[Column("Latitude")], CultureInfo.InvariantCulture),
            double.Parse(row[Column("Longitude")], CultureInfo.InvariantCulture),
            Cell(row, "Heartrate"),
            Cell(row, "Cadence"),
            float.NaN))];

        float Cell(string[] row, string name) =>
            Column(name) >= 0 && row[Column(name)].Length > 0 ? float.Parse(row[Column(name)], CultureInfo.InvariantCulture) : float.NaN;
    }

    private static bool Installed()
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo("gpsbabel", "-V") { RedirectStandardOutput = true })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    private static void Convert(string fromFormat, string from, string toFormat, string to)
    {
        using var process = Process.Start(
            new ProcessStartInfo(
            "gpsbabel", ["-t", "-i", fromFormat, "-f", from, "-o", toFormat, "-F", to])
            { RedirectStandardError = true })!;
        string errors = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, errors);
    }
}
