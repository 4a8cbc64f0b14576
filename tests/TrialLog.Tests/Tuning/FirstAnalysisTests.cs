using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Tuning;

public class FirstAnalysisTests
{
    /// <summary>What fails on a thread of its own would take the program with it.</summary>
    [Fact]
    public void The_invented_outing_can_be_analysed()
    {
        Analysis analysis = Tuner.Analyse(FirstAnalysis.Invented());
        Assert.Equal(1, analysis.Outings);
    }
}
