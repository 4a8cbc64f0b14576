using System.Text.RegularExpressions;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Logbook.Exchange;
using TrialLog.Logbook.Sync;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Tuning.References;

namespace TrialLog.Tests.Logbook;

/// <summary>Five laptops that exchange through folders, with files that come late, old or cut short.</summary>
public sealed partial class SyncLaws
{
    // Outings that nobody took away, at least, in each run.
    private const int MustStay = 20;

    private static readonly DateOnly Today = new(2026, 5, 1);

    [GeneratedRegex(@" \(\d+\)$")]
    private static partial Regex Number();

    private sealed class Laptop(ScratchFolder folder, int number) : IDisposable
    {
        public LogbookFile Log { get; } = folder.OpenHastily($"laptop{number}");
        public string Folder { get; } = Directory.CreateDirectory(folder.File($"folder{number}")).FullName;
        public string? Own { get; set; }

        public SyncResult Sync(Func<MergeQuestion, MergeChoice> choose)
        {
            SyncResult result = FolderSync.Run(Log, Folder, choose, Today);
            Own = result.File;
            return result;
        }

        public void Dispose() => Log.Dispose();
    }

    // Decides alike on whichever laptop it is asked.
    private static MergeChoice Evenly(MergeQuestion question) => question.Kind switch
    {
        MergeQuestionKind.RemovedHere => MergeChoice.TakeFromFile,
        MergeQuestionKind.RemovedInFile => MergeChoice.KeepHere,
        _ => string.CompareOrdinal(question.Here, question.InFile) < 0 ? MergeChoice.TakeFromFile : MergeChoice.KeepHere,
    };

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void Whatever_comes_in_whatever_order_nothing_is_lost_doubled_or_left_undecided(int seed) => Exchange(seed, steps: 400);

    [Fact(Explicit = true)]
    public void So_it_is_over_two_thousand_steps_at_a_stretch() => Exchange(seed: 1, steps: 2000);

    private static void Exchange(int seed, int steps)
    {
        var random = new Random(seed);
        using var folder = new ScratchFolder();
        Laptop[] laptops = [.. Enumerable.Range(0, 5).Select(i => new Laptop(folder, i))];
        SampleLog.Begin(laptops[0].Log);
        var logged = new HashSet<string>();
        var takenAway = new HashSet<string>();

        // Ids, and with them the order in which files are read, differ from run to run; how much a run logs does too. So it goes on
        // until the law speaks of enough.
        int Kept() => logged.Except(takenAway).Count(what => what.StartsWith("outing", StringComparison.Ordinal));
        for (int step = 0; step < steps || (Kept() < MustStay && step < 5 * steps); step++)
        {
            Laptop laptop = laptops[random.Next(5)];
            switch (random.Next(10))
            {
                case < 5:
                    HashSet<string> before = Logged(laptop.Log);
                    DoSomething(laptop.Log, random, step);
                    HashSet<string> after = Logged(laptop.Log);
                    logged.UnionWith(after.Except(before));
                    takenAway.UnionWith(before.Except(after));
                    break;
                case < 7:
                    laptop.Sync(question => random.Next(2) == 0 ? MergeChoice.Later : Evenly(question));
                    break;
                default:
                    Carry(laptop, laptops[random.Next(5)], random);
                    break;
            }
        }

        int round = 0;
        string news = "";
        for (bool quiet = false; !quiet; round++)
        {
            Assert.True(round < 12, $"five laptops with whole files do not come to rest: {news}");
            (quiet, news) = (true, "");
            foreach (Laptop laptop in laptops)
            {
                SyncResult result = laptop.Sync(Evenly);
                quiet &= result.Added.Count + result.Updated.Count + result.Removed.Count + result.Waiting.Count + result.Unread.Count == 0;
                news += $"\n{string.Join(", ", [.. result.Added, .. result.Updated, .. result.Removed])} {string.Join(' ', result.Unread)}";
                foreach (Laptop other in laptops.Where(other => other != laptop))
                    File.Copy(laptop.Own!, Path.Combine(other.Folder, Path.GetFileName(laptop.Own!)), overwrite: true);
            }
        }

        string first = Comparable(laptops[0].Log);
        Assert.All(laptops, laptop => Assert.Equal(first, Comparable(laptop.Log)));
        List<string> labels = [.. laptops[0].Log.Outings().Select(outing => outing.Label)];
        Assert.Equal(labels.Distinct().Count(), labels.Count);
        Assert.Empty(logged.Except(takenAway).Except(Logged(laptops[0].Log)));
        Assert.Empty(Logged(laptops[0].Log).Except(logged));
        Assert.True(Kept() >= MustStay, "hardly anything was logged");
        foreach (Laptop laptop in laptops)
        {
            Assert.Empty(laptop.Log.Verify());
            laptop.Dispose();
        }
    }

    // Outings and pieces. What a laptop's user takes away by any deed is what is there before it and not after; what goes at any other
    // moment, a sync lost.
    private static HashSet<string> Logged(LogbookFile log) =>
        [.. log.Outings().SelectMany(outing => outing.Pieces.Select(piece => $"piece {piece.Id}").Prepend($"outing {outing.Label}"))];

    private static void DoSomething(LogbookFile log, Random random, int step)
    {
        IReadOnlyList<Paddler> paddlers = log.Paddlers();
        IReadOnlyList<Outing> outings = log.Outings();
        Outing? some = outings.Count == 0 ? null : outings[random.Next(outings.Count)];
        string? Word() => random.Next(3) == 0 ? null : $"word {random.Next(4)}";
        switch (random.Next(12))
        {
            case < 3 when paddlers.Count > 0 && log.Paddles().Count > 0:
                log.Change(
                    "Logged", writer =>
                    writer.Put(
                    SampleLog.Outing(step, pieces: 3, paddler: paddlers[random.Next(paddlers.Count)].Id) with { Id = Guid.NewGuid() }));
                break;
            case < 5 when some is not null:
                log.Change(
                    "Edited", writer =>
                    writer.Put(
                    some with
                    {
                        Notes = Word(),
                        Wind = Beaufort.FromNumber(random.Next(4)),
                        Place = random.Next(2) == 0 ? some.Place : Word()
                    }));
                break;
            case 5 when some is { Pieces.Count: > 0 }:
                log.Change(
                    "Edited a piece", writer =>
                    writer.Put(
                    some with
                    {
                        Pieces = [some.Pieces[0] with { Effort = Effort.FromPoints(random.Next(10)), Notes = Word() },
                    .. some.Pieces.Skip(1)]
                    }));
                break;
            case 6 when some is { Pieces.Count: > 0 and < 8 }:
                log.Change(
                    "Added a piece", writer =>
                    writer.Put(
                    some with
                    {
                        Pieces = [
                    .. some.Pieces, some.Pieces[0] with { Id = Guid.NewGuid(), Order = some.Pieces.Max(piece => piece.Order) + 1 }]
                    }));
                break;
            case 7 when some is { Pieces.Count: > 1 }:
                log.Change("Turned the order round",
                    writer =>
                    writer.Put(some with { Pieces = [.. some.Pieces.Select((piece, i) => piece with { Order = some.Pieces.Count - i })] }));
                break;
            case 8 when paddlers.Count > 0:
                log.Change("Renamed", writer => writer.Put(paddlers[0] with { Name = Free(log, $"Ilse {(char)('A' + random.Next(4))}") }));
                break;
            case 9 when random.Next(3) == 0 && some is not null:
                log.Change("Removed", writer => writer.RemoveOuting(some.Id));
                break;
            // Not the very beginning: with the only paddler and paddle gone, nobody could log anything.
            case 10 when log.Changes(1) is [{ TakenBack: false, What: not SampleLog.Beginning } newest]
                && !newest.What.StartsWith("Merged", StringComparison.Ordinal):
                log.Undo();
                break;
            case 11 when random.Next(4) == 0:
                log.Change("Added a paddler",
                    writer => writer.Put(new Paddler { Id = Guid.NewGuid(), Name = Free(log, $"Tova {(char)('A' + random.Next(3))}") }));
                break;
            case 11 when paddlers.Count > 1 && random.Next(2) == 0:
                log.Change("Joined", writer => writer.JoinPaddlers(paddlers[1].Id, paddlers[0].Id));
                break;
        }
    }

    private static string Free(LogbookFile log, string name)
    {
        while (log.Paddlers().Any(paddler => paddler.Name == name))
            name += "x";
        return name;
    }

    /// <summary>One laptop's file as it was left reaches another, at times only a part of it.</summary>
    private static void Carry(Laptop from, Laptop to, Random random)
    {
        if (from.Own is null || from == to)
            return;
        byte[] file = File.ReadAllBytes(from.Own);
        if (random.Next(4) == 0)
            file = file[..random.Next(file.Length)];
        File.WriteAllBytes(Path.Combine(to.Folder, Path.GetFileName(from.Own)), file);
    }

    // What a name is shown with and the change a card was given after are each logbook's own.
    private static string Comparable(LogbookFile log)
    {
        LogbookSnapshot all = log.Everything();
        return LogbookModel.Text(all with
        {
            Paddlers = [.. all.Paddlers.Select(paddler => paddler with { Name = Number().Replace(paddler.Name, "") })],
            Cards = [.. all.Cards.Select(card => card with { AsOfChange = 0 })],
        });
    }
}
