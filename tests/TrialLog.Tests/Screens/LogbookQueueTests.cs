using TrialLog.Reports.Documents;
using TrialLog.Screens.Base;

namespace TrialLog.Tests.Screens;

/// <summary>The thread that writes what is typed.</summary>
public sealed class LogbookQueueTests
{
    /// <summary>The last thing typed is written, however the writing of the one before falls against it.</summary>
    [Fact]
    public void Of_many_writes_under_one_name_the_last_is_done()
    {
        const int runs = 2_000, writes = 20;
        for (int run = 0; run < runs; run++)
        {
            int written = 0;
            using (var queue = new LogbookQueue(action => action()))
            {
                for (int write = 1; write <= writes; write++)
                {
                    int latest = write;
                    queue.PutLatest("draft", () => written = latest);
                    Thread.SpinWait(run % 97);
                }
            }

            Assert.Equal(writes, written);
        }
    }
}
