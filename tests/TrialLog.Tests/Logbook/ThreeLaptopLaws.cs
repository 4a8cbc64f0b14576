using CsCheck;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Logbook.Exchange;
using TrialLog.Logbook.Shared;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Logbook;

/// <summary>
/// Three laptops that began as one logbook: on each, paddlers are renamed there and back and joined, each way round, while outings are
/// logged, removed, cleared and moved. Merged in every order until nothing is new, they agree, and nothing is lost, doubled or back from
/// the dead.
/// </summary>
public class ThreeLaptopLaws
{
    private static readonly Paddler[] People = [.. new[] { "Ilse Maro", "Bram Okello", "Tova Lind", "Juno Ferreira" }
        .Select((name, at) => new Paddler { Id = Number(1, at), Name = name })];

    private static readonly int[][] Orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];

    private static Guid Number(int kind, int at) => new(kind, 0, 0x4000, 0x80, 0, 0, 0, 0, 0, 0, (byte)at);

    private enum Kind { Log, Remove, Clear, Blow, RenameThereAndBack, Rename, Join, Move, TakeBack }

    /// <summary>Something done on a laptop, to what the two numbers pick of what is there.</summary>
    private readonly record struct Deed(Kind Kind, int One, int Other);

    private static readonly Gen<Deed[]> Deeds = Gen.Select(Gen.Frequency(
            (4, Gen.Const(Kind.Log)), (2, Gen.Const(Kind.Remove)), (2, Gen.Const(Kind.Clear)), (1, Gen.Const(Kind.Blow)),
            (2, Gen.Const(Kind.RenameThereAndBack)), (1, Gen.Const(Kind.Rename)), (3, Gen.Const(Kind.Join)), (1, Gen.Const(Kind.Move)),
            (1, Gen.Const(Kind.TakeBack))),
        Gen.Int[0, 99], Gen.Int[0, 99]).Select(all => new Deed(all.Item1, all.Item2, all.Item3)).Array[1, 6];

    [Fact]
    public void In_every_order_nothing_is_lost_doubled_or_back_from_the_dead() =>
        Gen.Select(Deeds, Deeds, Deeds).Sample(InEveryOrder, iter: 5);

    [Fact(Explicit = true)]
    public void So_it_is_for_many_more() => Gen.Select(Deeds, Deeds, Deeds).Sample(InEveryOrder, iter: 400);

    [Fact]
    public void What_is_logged_under_one_who_became_two_people_elsewhere_is_asked_and_comes_out_alike_in_every_order()
    {
        // Bram became Ilse on the first laptop and Tova on the second; the third goes on logging under Bram.
        Deed[] intoIlse = [new(Kind.Join, 0, 1)], intoTova = [new(Kind.Join, 0, 3)], logs = [new(Kind.Log, 0, 0), new(Kind.Log, 0, 0)];
        AskedOnceInEveryOrder(intoIlse, intoTova, logs, SampleLog.Outing(50).Id);
    }

    [Fact]
    public void An_outing_moved_to_one_who_became_another_elsewhere_is_asked_under_either_name_and_comes_out_alike_in_every_order()
    {
        // Juno's outing: the first laptop gave it to Tova and took that back, the third moved it to Ilse, whom the second joined into Tova.
        // By the order it is asked whether it is Juno's or Ilse's, or Juno's or Tova's; it is the same question.
        Deed[] thereAndBack = [new(Kind.Join, 2, 3), new(Kind.TakeBack, 0, 0)];
        Deed[] joins = [new(Kind.Join, 1, 3)], moves = [new(Kind.Move, 33, 0)];
        AskedOnceInEveryOrder(thereAndBack, joins, moves, SampleLog.Outing(3).Id);
    }

    [Fact]
    public void An_outing_moved_to_one_who_became_two_people_elsewhere_is_asked_and_comes_out_alike_in_every_order()
    {
        // Bram became Ilse on the first laptop and Juno on the second; the third moved Tova's outing, which all know, to Bram.
        Deed[] intoIlse = [new(Kind.Join, 0, 1)], intoJuno = [new(Kind.Join, 0, 2)], moves = [new(Kind.Move, 56, 0)];
        AskedOnceInEveryOrder(intoIlse, intoJuno, moves, SampleLog.Outing(2).Id);

        // And where one of the two is who had it before: Tova became Juno and Ilse, and Juno's outing was moved to Tova.
        Deed[] tovaIntoJuno = [new(Kind.Join, 3, 2)], tovaIntoIlse = [new(Kind.Join, 3, 1)], movesToTova = [new(Kind.Move, 3, 0)];
        AskedOnceInEveryOrder(tovaIntoJuno, tovaIntoIlse, movesToTova, SampleLog.Outing(3).Id);
    }

    [Fact]
    public void What_was_edited_before_a_removal_decides_nothing_about_what_comes_back()
    {
        // The first laptop told the wind of an outing and removed it; the second told another wind, the third cleared its notes.
        InEveryOrder([new(Kind.Blow, 0, 3), new(Kind.Remove, 0, 0)], [new(Kind.Blow, 0, 2)], [new(Kind.Clear, 0, 0)]);
    }

    private static void AskedOnceInEveryOrder(Deed[] first, Deed[] second, Deed[] third, Guid about)
    {
        InEveryOrder(first, second, third);
        foreach (int[] order in Orders)
        {
            using var folder = new ScratchFolder();
            LogbookFile[] laptops = Began(folder);
            foreach ((int at, Deed[] deeds) in ((Deed[][])[first, second, third]).Index())
                for (int step = 0; step < deeds.Length; step++)
                    Do(laptops[at], deeds[step], 10 + 20 * at + step);
            Dictionary<Guid, Guid> persons = Persons(Became(laptops));
            int asked = 0;
            foreach (int to in (int[])[.. order, .. order])
                foreach (int from in order.Where(from => from != to))
                {
                    MergePlan plan = Merge.Plan(laptops[to], Share(laptops[from]));
                    asked += plan.Questions.Count(question => question.Id == about);
                    plan.Apply(laptops[to], Evenly(plan, laptops[to], persons));
                }

            Assert.Equal(1, asked);
            foreach (LogbookFile laptop in laptops)
                laptop.Dispose();
        }
    }

    private static void InEveryOrder(Deed[] first, Deed[] second, Deed[] third)
    {
        string? before = null;
        foreach (int[] order in Orders)
        {
            string after = Merged([first, second, third], order);
            Assert.Equal(before ?? after, after);
            before = after;
        }
    }

    private static string Merged(Deed[][] deeds, int[] order)
    {
        using var folder = new ScratchFolder();
        LogbookFile[] laptops = Began(folder);
        try
        {
            Dictionary<Guid, string> beginning = laptops[0].Outings().ToDictionary(outing => outing.Id, Of);
            var logged = new HashSet<Guid>(beginning.Keys);
            var removed = new List<HashSet<Guid>>();
            var touched = new List<HashSet<Guid>>();
            for (int at = 0; at < 3; at++)
            {
                // Taken away and back again is touched, too: somebody wanted it here.
                HashSet<Guid> here = [];
                Dictionary<Guid, string> now = beginning;
                for (int step = 0; step < deeds[at].Length; step++)
                {
                    Do(laptops[at], deeds[at][step], 10 + 20 * at + step);
                    now = laptops[at].Outings().ToDictionary(outing => outing.Id, Of);
                    logged.UnionWith(now.Keys);
                    here.UnionWith(beginning.Keys.Where(id => now.GetValueOrDefault(id) != beginning[id]));
                }

                logged.ExceptWith(logged.Where(id => Own(id, at) && !now.ContainsKey(id)).ToList());
                removed.Add([.. beginning.Keys.Except(now.Keys)]);
                touched.Add([.. here.Intersect(now.Keys)]);
            }

            // One record joined into two people, and a further join to or from one of the three elsewhere: who they all are then hangs on
            // who tells it first. All agree all the same.
            ILookup<Guid, Guid> became = Became(laptops);
            bool tangled = became.Any(
                gone => gone.Count() > 1 && (gone.Any(became.Contains) || became.Any(more => more.Contains(gone.Key))));
            Dictionary<Guid, Guid> persons = Persons(became);
            int round = 0;
            for (bool quiet = false; !quiet; round++)
            {
                Assert.True(round < 8, "three laptops do not come to rest");
                quiet = true;
                foreach (int to in order)
                {
                    foreach (int from in order.Where(from => from != to))
                    {
                        MergePlan plan = Merge.Plan(laptops[to], Share(laptops[from]));
                        quiet &= plan.ChangesNothing && plan.Questions.Count == 0;
                        plan.Apply(laptops[to], Evenly(plan, laptops[to], persons));
                    }
                }
            }

            string all = Text(laptops[0]);
            Assert.All(laptops, laptop => Assert.Equal(all, Text(laptop)));
            HashSet<Guid> kept = [.. laptops[0].Outings().Select(outing => outing.Id)];
            Assert.Subset(logged, kept);
            foreach (Guid id in logged)
            {
                bool gone = removed.Any(one => one.Contains(id));
                if (!gone)
                    Assert.Contains(id, kept);
                else if (!touched.Any(one => one.Contains(id)))
                    Assert.DoesNotContain(id, kept);
            }

            return tangled ? string.Join(' ', kept.Order()) : Text(laptops[0]);
        }
        finally
        {
            foreach (LogbookFile laptop in laptops)
                laptop.Dispose();
        }
    }

    private static LogbookFile[] Began(ScratchFolder folder)
    {
        LogbookFile[] laptops = [.. Enumerable.Range(0, 3).Select(at => folder.OpenHastily($"laptop{at}"))];
        laptops[0].Change("Began", writer =>
        {
            writer.Put(SampleLog.Paddle);
            foreach (Paddler one in People)
                writer.Put(one);
            for (int at = 0; at < 6; at++)
                writer.Put(Outing(at, People[at % People.Length].Id));
        });
        foreach (LogbookFile other in laptops[1..])
            Merge.Plan(other, Share(laptops[0])).Apply(other, Never);
        return laptops;
    }

    private static void Do(LogbookFile log, Deed deed, int number)
    {
        IReadOnlyList<Paddler> people = log.Paddlers();
        IReadOnlyList<Outing> outings = [.. log.Outings().OrderBy(outing => outing.Id)];
        Paddler one = people[deed.One % people.Count], other = people[deed.Other % people.Count];
        Outing? some = outings.Count == 0 ? null : outings[deed.One % outings.Count];
        switch (deed.Kind)
        {
            case Kind.Log:
                log.Change("Logged", writer => writer.Put(Outing(number, one.Id)));
                break;
            case Kind.Remove when some is not null:
                log.Change("Removed", writer => writer.RemoveOuting(some.Id));
                break;
            case Kind.Clear when some is not null:
                log.Change("Cleared", writer => writer.Put(some with { Notes = null }));
                break;
            case Kind.Blow when some is not null:
                log.Change("Told the wind", writer => writer.Put(some with { Wind = Beaufort.FromNumber(deed.Other % 5) }));
                break;
            case Kind.RenameThereAndBack:
                log.Change("Renamed", writer => writer.Put(one with { Name = $"Somebody else {number}" }));
                log.Change("Renamed back", writer => writer.Put(one));
                break;
            case Kind.Rename:
                log.Change("Renamed", writer => writer.Put(one with { Name = $"{one.Name} {(char)('A' + number % 26)}" }));
                break;
            case Kind.Join when one.Id != other.Id:
                log.Change("Joined", writer => writer.JoinPaddlers(one.Id, other.Id));
                break;
            case Kind.Move when some is not null:
                log.Change("Moved", writer => writer.MoveOuting(some.Id, one.Id, some.HullId));
                break;
            case Kind.TakeBack when log.Changes(1) is [{ TakenBack: false } newest] && newest.What != "Began"
                && !newest.What.StartsWith("Merged", StringComparison.Ordinal):
                log.Undo();
                break;
        }
    }

    private static Outing Outing(int number, Guid paddler) => SampleLog.Outing(number, 2, paddler) with
    {
        Notes = "calm",
        Pieces = [.. SampleLog.Outing(number, 2).Pieces.Select(piece => piece with { Id = Number(100 + number, piece.Order) })],
    };

    private static bool Own(Guid id, int laptop) => Enumerable.Range(10 + 20 * laptop, 20).Any(number => SampleLog.Outing(number).Id == id);

    private static string Of(Outing outing) => $"{outing.PaddlerId} {outing.Notes} {outing.Wind} {outing.Pieces.Count}";

    // Which of the records of one person stays may hang on the order; who paddled what may not.
    private static string Text(LogbookFile log)
    {
        IReadOnlyList<Outing> outings = [.. log.Outings().OrderBy(outing => outing.Id)];
        Dictionary<Guid, string> whose = outings.GroupBy(outing => outing.PaddlerId)
            .ToDictionary(theirs => theirs.Key,
                theirs => string.Join(' ', theirs.Select(outing => outing.Label).Order(StringComparer.Ordinal)));
        return $"{log.Paddlers().Count} paddlers\n" + string.Join('\n', outings
            .Select(outing => $"{outing.Label}: {outing.Notes} {outing.Wind} {outing.Pieces.Count}, with {whose[outing.PaddlerId]}"));
    }

    private static SharedRecord Share(LogbookFile log)
    {
        using var file = new MemoryStream();
        Sharing.Write(log, new ShareOptions(), file);
        file.Position = 0;
        return Sharing.Read(file);
    }

    private static MergeChoice Never(MergeQuestion question) => throw new InvalidOperationException(question.ToString());

    /// <summary>
    /// Who each paddler's record is of, by all that was joined on any laptop: the record that stays, or the lowest id where there are
    /// several. The user knows it, also while the two logbooks before them do not.
    /// </summary>
    private static Dictionary<Guid, Guid> Persons(ILookup<Guid, Guid> became) => People.ToDictionary(one => one.Id, one =>
    {
        HashSet<Guid> all = [one.Id];
        while (all.SelectMany(id => became[id]).Except(all).ToList() is [_, ..] more)
            all.UnionWith(more);
        return all.Where(id => !became.Contains(id)).DefaultIfEmpty(all.Min()).Min();
    });

    /// <summary>What each record that is gone was joined into on any laptop.</summary>
    private static ILookup<Guid, Guid> Became(IEnumerable<LogbookFile> laptops) =>
        laptops.SelectMany(laptop => RecordSet.Of(laptop).Removed).Where(gone => gone.Value is not null)
            .Distinct().ToLookup(gone => gone.Key, gone => gone.Value!.Value);

    /// <summary>
    /// Decides alike on whichever laptop it is asked: whose an outing is by who the two are, whatever their records are called there; all
    /// else by what is said.
    /// </summary>
    private static Func<MergeQuestion, MergeChoice> Evenly(MergePlan plan, LogbookFile here, Dictionary<Guid, Guid> persons) => question =>
    {
        MergeStep step = plan.Steps.Single(step => step.Question == question);
        return question.Kind switch
        {
            MergeQuestionKind.SameName => MergeChoice.KeepHere,
            MergeQuestionKind.RemovedHere => MergeChoice.TakeFromFile,
            MergeQuestionKind.RemovedInFile => MergeChoice.KeepHere,
            _ => (Whose(step.IfTaken), Whose(step.IfKept) ?? Who(here.Outings().FirstOrDefault(one => one.Id == question.Id)?.PaddlerId)) is
                (Guid there, Guid mine) && there != mine ? there.CompareTo(mine) < 0 ? MergeChoice.TakeFromFile : MergeChoice.KeepHere
                : string.CompareOrdinal(question.Here, question.InFile) < 0 ? MergeChoice.TakeFromFile : MergeChoice.KeepHere,
        };

        Guid? Whose(List<MergeWrite> writes) =>
            Who((writes.OfType<PutRecord>().FirstOrDefault(put => put.Id == question.Id)?.Item as SharedOuting)?.Paddler);
        Guid? Who(Guid? paddler) => paddler is Guid id ? persons[id] : null;
    };
}
