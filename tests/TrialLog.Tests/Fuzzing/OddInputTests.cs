using TrialLog.TestData.Fuzzing;

namespace TrialLog.Tests.Fuzzing;

/// <summary>A short run of what the study's <c>fuzz</c> does for hours: nothing that is read brings the program down.</summary>
public class OddInputTests
{
    [Theory]
    [InlineData("text", 3000)]
    [InlineData("csv", 300)]
    [InlineData("record", 60)]
    [InlineData("command", 40)]
    [InlineData("logbook", 15)]
    public void What_is_nearly_right_is_taken_or_refused_in_a_sentence(string reader, int inputs)
    {
        using var odd = new OddInputs(Repository.File("sample-sessions"));
        int taken = 0;
        for (int seed = 1; seed <= inputs; seed++)
        {
            OddResult result = odd.Readers[reader](seed);
            Assert.True(result.Failure is null, $"seed {seed}: {result.Failure}");
            taken += result.WasTaken ? 1 : 0;
        }

        // Neither all nonsense nor all sound.
        Assert.InRange(taken, 1, inputs - 1);
    }
}
