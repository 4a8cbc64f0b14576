using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;

namespace TrialLog.Study.Speed;

/// <summary>A logbook far larger than a club ever fills: as many paddlers as asked, each with outings of four pieces.</summary>
internal static class LargeLog
{
    public const int PiecesEach = 4;

    /// <summary>Makes it, a change for each paddler. Every paddler has a paddle of their own.</summary>
    public static void Make(string path, int paddlers, int outings)
    {
        using LogbookFile logbook = LogbookFile.Open(path);
        for (int i = 0; i < paddlers; i++)
        {
            AnalysisInput log = SpeedLog.Of(outings, i + 1);
            // Measured, so that those who have settled teach those who have not.
            Paddler paddler = log.Paddler with
            {
                Name = $"Paddler {i + 1}",
                KnownLength = null,
                Body = new BodyMeasures { SeatedReach = Length.FromInches(50) },
            };
            logbook.Change($"Added {paddler.Name}", writer =>
            {
                writer.Put(paddler);
                writer.Put(log.Paddle with { Name = $"Paddle {i + 1}", OwnerId = paddler.Id });
                foreach (Outing outing in log.Outings)
                {
                    writer.Put(outing with
                    {
                        Id = Guid.NewGuid(),
                        Date = outing.Date.AddYears(-(outings / 182) - 1),
                        Pieces = [.. outing.Pieces.Select(piece => piece with { Id = Guid.NewGuid() })],
                    });
                }
            });
        }
    }
}
