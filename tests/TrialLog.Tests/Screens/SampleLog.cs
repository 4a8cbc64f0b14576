using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Screens.Base;
using TrialLog.Tests.Plots;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Screens;

/// <summary>An invented club's logbook: three paddlers of Tarrow Sound, and answers that are known beforehand.</summary>
internal static class SampleLog
{
    /// <summary>The paddle of all.</summary>
    public static readonly Paddle Reed = new()
    {
        Id = new Guid(0x44, 0, 0, new byte[8]),
        Name = "Reed 44",
        Blade = Length.FromInches(18.5),
        Shortest = Length.FromInches(47),
        Longest = Length.FromInches(53),
        Step = Length.FromInches(0.25),
    };

    /// <summary>Known answers: the same parabola for everybody, moved by the hull's seat height.</summary>
    public static readonly Analyses Known = new(question =>
            DrawnSample.Of(question.Paddler.Unit) with { Paddler = question.Paddler, Hull = question.Hull, Paddle = question.Paddle },
        _ => DrawnSample.Progress(6),
        (question, paddles) =>
        [
            .. paddles.SelectMany(paddle => question.Hulls.Select(hull =>
            {
                Length best = Length.FromInches(49.75 + SeatHeightRule.ByCrewInches(hull.Crew));
                return DrawnSample.Then(best, best.PlusInches(-0.5), best.PlusInches(0.75), 0.05, 0.12, false, hull, paddle,
                    hull.Name == "OC1" ? 22 : 0);
            })),
        ]);

    /// <summary>A known answer while it hurts.</summary>
    public static Analysis Sore(Analysis analysis, StandingSoreness soreness) => analysis with
    {
        Standing = Standing.Sore,
        Why = [StandingReason.StillSore],
        Soreness = soreness,
        SorenessLimit = Length.FromInches(49.25),
        Best = analysis.Best with { Length = Length.FromInches(49.25) },
    };

    /// <summary>Writes the logbook to a new file.</summary>
    /// <param name="path">Where.</param>
    /// <param name="outings">How many outings the first paddler has.</param>
    public static void Write(string path, int outings = 6)
    {
        using LogbookFile logbook = LogbookFile.Open(path);
        logbook.Change("Began the log of Tarrow Sound", log =>
        {
            log.Put(Reed);
            Guid first = Paddler(log, 1, "Ilse Maro", LengthUnit.Inches, 50.5);
            Guid second = Paddler(log, 2, "Bram Okello", LengthUnit.Inches, 51.25);
            Guid third = Paddler(log, 3, "Tova Lind", LengthUnit.Centimetres, 48.5);
            Outings(log, first, outings);
            Outings(log, second, 3);
            Outings(log, third, 1);
        });
        logbook.SaveSetting("last-paddler", new Guid(1, 0, 0, new byte[8]).ToString());
    }

    private static Guid Paddler(LogbookWriter log, int number, string name, LengthUnit unit, double reach)
    {
        var paddler = new Paddler
        {
            Id = new Guid(number, 0, 0, new byte[8]), Name = name, Unit = unit,
            Body = new BodyMeasures { SeatedReach = Length.FromInches(reach) }
        };
        log.Put(paddler);
        return paddler.Id;
    }

    private static void Outings(LogbookWriter log, Guid paddler, int count)
    {
        for (int outing = 0; outing < count; outing++)
        {
            double[] lengths = outing % 2 == 0 ? [49.25, 50.75, 50.75, 49.25] : [50, 51.25, 51.25, 50];
            log.Put(new Outing
            {
                Id = new Guid(outing, (short)paddler.ToByteArray()[0], 7, new byte[8]),
                PaddlerId = paddler,
                HullId = StandardHulls.All[outing % 5 == 4 ? 2 : 0].Id,
                // Nearer together where there are many: no outing is believed before 1950.
                Date = new DateOnly(2026, 11, 22).AddDays((count > 1000 ? -2 : -3) * (count - 1 - outing)),
                Wind = Beaufort.FromNumber(outing % 4),
                Notes = outing % 3 == 1 ? "chop off the point" : null,
                Pieces =
                [
                    .. lengths.Select((length, index) => new Piece
                    {
                        Id = new Guid(outing, (short)(8 + index), paddler.ToByteArray()[0], new byte[8]),
                        Order = index + 1,
                        PaddleId = Reed.Id,
                        Length = Length.FromInches(length),
                        Distance = Distance.FromMetres(1000),
                        Time = PieceTime.FromSeconds(
                            330 + outing * 7 % 5 + index * 0.9 + Math.Round((length - 49.75) * (length - 49.75) * 1.6, 1)),
                        Effort = Effort.FromPoints(6),
                        Soreness = Soreness.FromPoints(outing % 3),
                    }),
                ],
            });
        }
    }
}
