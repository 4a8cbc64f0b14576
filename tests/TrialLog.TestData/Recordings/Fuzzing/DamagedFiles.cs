using System.Buffers.Binary;
using System.Diagnostics;
using System.IO.Compression;
using System.Text;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
using TrialLog.Plots;
using TrialLog.Recordings;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Pieces;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Coach;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.TestData.Recordings.Fuzzing;

/// <summary>What became of a damaged file.</summary>
/// <param name="WasRead">Whether it gave an outing.</param>
/// <param name="Seconds">How long it took.</param>
/// <param name="Failure">What should not have happened; null if all is well.</param>
internal sealed record FuzzResult(bool WasRead, double Seconds, string? Failure);

/// <summary>Damages sound recordings in every way a file can be damaged, and tries the reader on them.</summary>
internal static class DamagedFiles
{
    private const double MostSeconds = 5;

    private static readonly string[] Oddities =
    [
        "NaN", "-Infinity", "1e308", "-1e-320", "", "180", "-180.0000001", "90", "-90", "0", "9999-12-31T23:59:59Z", "0001-01-01T00:00:00Z",
        "2026-02-30T00:00:00Z", "2026-05-01T00:00:60+14:59", "<trkpt>", "</trkpt>", "<Lap StartTime=\"x\">", "<![CDATA[", "]]>", "<!--",
            "&amp;", "&x;", "<!DOCTYPE gpx>",
        "\0", "\uFFFF", "12:00", "-5", "2147483648", "255", "é",
    ];

    /// <summary>Sound files to start from: each format, with and without laps, either byte order.</summary>
    public static IReadOnlyList<byte[]> SoundFiles()
    {
        var plan = new OutingPlan { Speeds = [3.1, 3.2], Leg = 150, Rest = 40, WarmUp = 60, Laps = true, Current = 0.2 };
        SimulatedOuting outing = Simulator.Run(plan, 1);
        SimulatedOuting atThePole = Simulator.Run(plan with { Latitude = 89.999, Longitude = 179.999 }, 2);
        byte[] fit = FitWriter.Activity(outing.Recorded, outing.Presses, outing.Offset);
        return
        [
            XmlWriting.Gpx(outing.Recorded, "sound"),
            XmlWriting.Tcx(outing.Recorded, outing.Presses),
            fit,
            FitWriter.Activity(atThePole.Recorded, [], null, bigEndian: true),
            FitWriter.Activity(outing.Recorded, outing.Presses, outing.Offset, compressed: true),
            [.. fit, .. FitWriter.Activity(atThePole.Recorded, [], null)],
            Gzip(XmlWriting.Gpx(atThePole.Recorded, "gzipped")),
        ];
    }

    /// <summary>The damaged file of that seed.</summary>
    public static byte[] Make(IReadOnlyList<byte[]> soundFiles, int seed)
    {
        var random = new Random(seed);
        byte[] file = [.. soundFiles[random.Next(soundFiles.Count)]];
        for (int times = random.Next(1, 4); times > 0; times--)
            file = Damage(file, random);
        // Damage behind a good checksum reaches further into the reader.
        return random.Next(4) != 0 && file.AsSpan().IndexOf(".FIT"u8) == 8 ? WithChecksums(file) : file;
    }

    /// <summary>Reads the file, corrects its pieces at random, and says what went wrong beyond a refusal in one sentence.</summary>
    public static FuzzResult Try(byte[] file, int seed)
    {
        var clock = Stopwatch.StartNew();
        bool read = false;
        string? failure = null;
        try
        {
            RecordedOuting outing = RecordingReader.Read(new MemoryStream(file), "damaged");
            read = true;
            Use(outing, new Random(seed));
        }
        catch (RecordingException e)
        {
            failure = e.Message.Length is > 20 and < 300 && !e.Message.Contains('\n') ? null : $"no clear sentence: {e.Message}";
        }
        catch (Exception e)
        {
            failure = e.ToString();
        }

        double seconds = clock.Elapsed.TotalSeconds;
        return new FuzzResult(read, seconds, failure ?? (seconds > MostSeconds ? $"took {seconds:0.0} s" : null));
    }

    private static void Use(RecordedOuting outing, Random random)
    {
        _ = outing.SpeedSeries(60);
        _ = $"{outing.Date} {outing.Time} {outing.Mended} {outing.ClockNote}";
        for (int i = 0; i < 8; i++)
        {
            try
            {
                int piece = outing.Proposals.Count > 0 ? random.Next(outing.Proposals.Count) : -1;
                TimeSpan at = random.NextDouble() * 1.1 * outing.Duration;
                outing = random.Next(7) switch
                {
                    0 when piece >= 0 => outing.MoveEdge(piece, 0, LegEdge.Start, at),
                    1 when piece >= 0 => outing.MoveEdge(piece, outing.Proposals[piece].Legs.Count - 1, LegEdge.End, at),
                    2 when piece >= 0 => outing.Merge(piece),
                    3 when piece >= 0 => outing.Split(piece, at),
                    4 when piece >= 0 => outing.Drop(piece),
                    5 when piece >= 0 => outing.Keep(piece),
                    _ => outing.Add(at, at + TimeSpan.FromSeconds(random.Next(200))),
                };
                _ = outing.For(new PieceCard(4, Distance.FromMetres(1000))).Questions;
            }
            catch (InvalidValueException)
            {
                // A correction may be refused; the outing is then as it was.
            }
        }
    }

    private static byte[] Damage(byte[] file, Random random)
    {
        if (file.Length == 0)
            return [(byte)random.Next(256)];
        int at = random.Next(file.Length), length = Math.Min(file.Length - at, 1 + random.Next(random.Next(2) == 0 ? 4 : 400));
        switch (random.Next(8))
        {
            case 0:
                return file[..at];
            case 1:
                for (int i = random.Next(1, 20); i > 0; i--)
                    file[random.Next(file.Length)] ^= (byte)(1 << random.Next(8));
                return file;
            case 2:
                random.NextBytes(file.AsSpan(at, length));
                return file;
            case 3:
                return [.. file[..at], .. file[(at + length)..]];
            case 4:
                return [.. file[..(at + length)], .. file[at..]];
            case 5:
                file.AsSpan(at, length).Fill((byte)(random.Next(3) * 127.5));
                return file;
            case 6:
                return [.. file[..at], .. Encoding.UTF8.GetBytes(Oddities[random.Next(Oddities.Length)]), .. file[at..]];
            default:
                return Swap(file, random);
        }
    }

    // An oddity in place of a number or a time between angle brackets or quotes.
    private static byte[] Swap(byte[] file, Random random)
    {
        int start = file.AsSpan(random.Next(file.Length)).IndexOfAny((byte)'>', (byte)'"') + 1;
        int end = start > 0 ? file.AsSpan(start).IndexOfAny((byte)'<', (byte)'"') : -1;
        return end < 0 ? file
            : [.. file[..start], .. Encoding.UTF8.GetBytes(Oddities[random.Next(Oddities.Length)]), .. file[(start + end)..]];
    }

    private static byte[] WithChecksums(byte[] file)
    {
        if (file.Length < 18 || file[0] is not (12 or 14))
            return file;
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(4), file.Length - file[0] - 2);
        if (file[0] == 14)
            BinaryPrimitives.WriteUInt16LittleEndian(file.AsSpan(12), FitWriter.Checksum(file.AsSpan(0, 12)));
        BinaryPrimitives.WriteUInt16LittleEndian(file.AsSpan(file.Length - 2), FitWriter.Checksum(file.AsSpan(0, file.Length - 2)));
        return file;
    }

    /// <summary>The bytes gzipped.</summary>
    public static byte[] Gzip(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.SmallestSize))
            gzip.Write(bytes);
        return packed.ToArray();
    }
}
