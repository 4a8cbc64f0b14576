using System.Text.Json;
using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Logbook.Exchange;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Recordings.Csv;

public class CsvRoundTripTests
{
    [Fact]
    public void A_log_exported_and_imported_into_a_fresh_logbook_is_the_same_log() =>
        RandomLogs.Log.Sample(log =>
        {
            CsvAdditions additions = Files.Import(Files.Export(log), KnownLog.Fresh);
            Assert.Empty(additions.Problems);
            Assert.Equal(Said(log), Said(KnownLog.Fresh.Plus(additions)));
        }, iter: 200);

    [Fact]
    public void A_log_exported_and_imported_into_itself_adds_nothing() =>
        RandomLogs.Log.Sample(log =>
        {
            CsvAdditions additions = Files.Import(Files.Export(log), log);
            Assert.Empty(additions.Problems);
            Assert.Empty(additions.Warnings);
            Assert.True(additions.AddsNothing, additions.Says());
            Assert.Equal(log.Outings.Sum(outing => outing.Pieces.Count), additions.PiecesAlreadyThere);
        }, iter: 200);

    [Fact]
    public void The_order_of_columns_and_their_spelling_do_not_matter() =>
        Gen.Select(RandomLogs.Log, Gen.Int).Sample((log, shuffle) =>
        {
            string file = Files.Export(log);
            Assert.Equal(Said(KnownLog.Fresh.Plus(Files.Import(file, KnownLog.Fresh))),
                Said(KnownLog.Fresh.Plus(Files.Import(Shuffled(file, shuffle), KnownLog.Fresh))));
        }, iter: 60);

    [Fact]
    public void A_file_may_be_cut_anywhere_and_the_parts_imported_one_after_the_other() =>
        Gen.Select(RandomLogs.Log, Gen.Double[0, 1]).Sample((log, share) =>
        {
            KnownLog whole = KnownLog.Fresh.Plus(Files.Import(Files.Export(log), KnownLog.Fresh));
            var part = whole with { Outings = [.. whole.Outings.Take((int)(share * whole.Outings.Count))] };
            KnownLog grown = part.Plus(Files.Import(Files.Export(whole), part));
            Assert.Equal(Said(whole), Said(grown));
        }, iter: 60);

    /// <summary>Everything the log says, names in place of ids, and outings under the labels by which a file tells them apart.</summary>
    private static string Said(KnownLog log)
    {
        Dictionary<Guid, string> names = new Dictionary<Guid, string>(
            log.Paddlers.Select(one => KeyValuePair.Create(one.Id, one.Name))
            .Concat(log.Hulls.Select(one => KeyValuePair.Create(one.Id, one.Name)))
            .Concat(log.Paddles.Select(one => KeyValuePair.Create(one.Id, one.Name))));
        IReadOnlyDictionary<Guid, string> labels = OutingLabels.Of(log.Outings);
        return JsonSerializer.Serialize(new
        {
            Paddlers = log.Paddlers.OrderBy(one => one.Name, StringComparer.Ordinal)
                .Select(one => $"{one with { Id = default, Body = BodyMeasures.Unknown, Goal = null }} {one.Body} " +
                $"{(one.Goal is { } goal ? names[goal.HullId] + goal.Distance + goal.Time : "")}"),
            Hulls = log.Hulls.OrderBy(one => one.Name, StringComparer.Ordinal).Select(one => $"{one with { Id = default }}"),
            Paddles = log.Paddles.OrderBy(one => one.Name, StringComparer.Ordinal)
                .Select(one => $"{one with { Id = default, OwnerId = null }} {(one.OwnerId is Guid owner ? names[owner] : "")}"),
            Outings = log.Outings.Select(one =>
                $"{names[one.PaddlerId]}|{one.Date}|{one.Time?.Ticks}|{labels[one.Id]}|{names[one.HullId]}|" +
                    $"{one with { Id = default, PaddlerId = default, HullId = default, Label = "", Pieces = [] }}|"
                + string.Join("|", one.Pieces.Select(piece => $"{names[piece.PaddleId]}{Bare(piece)}")))
                .Order(StringComparer.Ordinal),
        });
    }

    private static Piece Bare(Piece piece) => piece with
    {
        Id = default,
        PaddleId = default,
        Origin = piece.Origin?.StartsWith("csv:", StringComparison.Ordinal) == true ? null : piece.Origin,
    };

    private static string Shuffled(string file, int shuffle)
    {
        using var reader = new CsvHelper.CsvParser(new StringReader(file), System.Globalization.CultureInfo.InvariantCulture);
        using var text = new StringWriter();
        using var writer = new CsvHelper.CsvWriter(text, System.Globalization.CultureInfo.InvariantCulture);
        int[]? order = null;
        while (reader.Read())
        {
            order ??= [.. Enumerable.Range(0, reader.Count).OrderBy(i => HashCode.Combine(i, shuffle))];
            foreach (int i in order)
                writer.WriteField(reader.Row == 1 ? reader[i].ToUpperInvariant().Replace('_', ' ') : reader[i]);
            writer.NextRecord();
        }

        writer.Flush();
        return text.ToString();
    }
}
