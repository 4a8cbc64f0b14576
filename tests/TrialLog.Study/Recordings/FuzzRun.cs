using System.Diagnostics;
using TrialLog.TestData.Recordings.Fuzzing;

namespace TrialLog.Study.Recordings;

/// <summary>Fuzzes the readers for a set time.</summary>
internal static class FuzzRun
{
    /// <summary>Runs; 0 if every file was read or refused as it should be, else 1, with the seed of each that was not.</summary>
    public static int Run(TextWriter output, TimeSpan time, int firstSeed)
    {
        IReadOnlyList<byte[]> soundFiles = DamagedFiles.SoundFiles();
        var clock = Stopwatch.StartNew();
        int seed = firstSeed, read = 0, failures = 0;
        double slowest = 0;
        for (; clock.Elapsed < time; seed++)
        {
            FuzzResult result = DamagedFiles.Try(DamagedFiles.Make(soundFiles, seed), seed);
            slowest = Math.Max(slowest, result.Seconds);
            read += result.WasRead ? 1 : 0;
            if (result.Failure is not null)
            {
                failures++;
                output.WriteLine($"seed {seed}: {result.Failure}");
            }
        }

        output.WriteLine($"{seed - firstSeed} files (seeds {firstSeed} to {seed - 1}): {read} read, {seed - firstSeed - read - failures} " +
            $"refused, {failures} failed; slowest {slowest:0.00} s.");
        return failures == 0 ? 0 : 1;
    }
}
