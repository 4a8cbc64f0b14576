using System.Text;
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
using TrialLog.Tests.Recordings.Csv;
using TrialLog.Tests.Tuning.References;

namespace TrialLog.Tests.Logbook;

/// <summary>Shared files: examples of what merging says, files of every version, files from strangers.</summary>
public class SharedFileTests
{
    internal static string Written(LogbookFile log, ShareOptions? options = null)
    {
        using var file = new MemoryStream();
        Sharing.Write(log, options ?? new ShareOptions(), file);
        return Encoding.UTF8.GetString(file.ToArray());
    }

    internal static SharedRecord Read(string text) => Sharing.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));

    internal static string Example()
    {
        using Stream? file = typeof(SharedFileTests).Assembly.GetManifestResourceStream("TrialLog.Tests.Logbook.record-v1.json");
        using var reader = new StreamReader(file!);
        return reader.ReadToEnd();
    }

    internal static LogbookFile WithOneOuting(ScratchFolder folder, string name)
    {
        LogbookFile log = folder.OpenHastily(name);
        SampleLog.Begin(log);
        log.Change("Logged an outing", writer => writer.Put(SampleLog.Outing(1) with
        {
            Pieces = [.. SampleLog.Outing(1).Pieces.Select((piece, i) => piece with { Id = RandomRecords.Id(9, i) })],
        }));
        return log;
    }

    [Fact]
    public void A_record_written_by_version_1_is_still_read_and_means_the_same()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.OpenHastily();
        SharedRecord record = Read(Example());
        Assert.Equal((1, 2, 4), (record.PaddlerNames.Count, record.OutingCount, record.PieceCount));
        Merge.Plan(log, record).Apply(log, _ => throw new InvalidOperationException());
        Outing outing = log.Outings()[0];
        Assert.Equal("Ilse Maro", log.Paddlers().Single().Name);
        Assert.Equal(new DateOnly(2026, 5, 2), outing.Date);
        Assert.Equal(["49¾ in", "50¼ in"], outing.Pieces.Select(piece => piece.Length.ToString()));
        Assert.Equal("5:32.4", outing.Pieces[0].Time.ToString());
        Assert.Equal(6.5, outing.Pieces[0].Effort!.Value.Points);
        Assert.Equal("overtaken by a wash", outing.Pieces[1].ExcludedBecause);
    }

    [Fact]
    public void A_piece_edited_on_one_side_is_updated_and_on_both_sides_is_asked()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = WithOneOuting(folder, "mine"), theirs = folder.OpenHastily("theirs");
        Merge.Plan(theirs, Read(Written(mine))).Apply(theirs, _ => MergeChoice.KeepHere);
        Edit(theirs, 7);
        MergePlan plan = Merge.Plan(mine, Read(Written(theirs)));
        Assert.Empty(plan.Questions);
        Assert.Equal(1, plan.Updated["piece"]);
        Edit(mine, 5);
        plan = Merge.Plan(mine, Read(Written(theirs)));
        MergeQuestion question = Assert.Single(plan.Questions);
        Assert.Equal((MergeQuestionKind.EditedOnBoth, "effort 5", "effort 7"), (question.Kind, question.Here, question.InFile));
        Assert.Equal("piece 1 of Ilse Maro's outing of 2020-01-02 “1”", question.What);
        plan.Apply(mine, _ => MergeChoice.KeepHere);
        Assert.Equal(5, mine.Outings()[0].Pieces[0].Effort!.Value.Points);
        Assert.True(Merge.Plan(mine, Read(Written(theirs))).ChangesNothing);
        Edit(mine, 4);
        Edit(theirs, 7);
        Edit(theirs, 6);
        Edit(theirs, 7);
        Merge.Plan(mine, Read(Written(theirs))).Apply(mine, _ => MergeChoice.TakeFromFile);
        Assert.Equal(7, mine.Outings()[0].Pieces[0].Effort!.Value.Points);
        mine.Undo();
        Assert.Equal(4, mine.Outings()[0].Pieces[0].Effort!.Value.Points);

        static void Edit(LogbookFile log, int effort) => log.Change("Edited a piece", writer =>
        {
            Outing outing = log.Outings()[0];
            writer.Put(outing with { Pieces = [outing.Pieces[0] with { Effort = Effort.FromPoints(effort) }, .. outing.Pieces.Skip(1)] });
        });
    }

    [Fact]
    public void What_was_removed_here_stays_away_unless_something_was_done_to_it_there()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = WithOneOuting(folder, "mine"), theirs = folder.OpenHastily("theirs");
        SharedRecord before = Read(Written(mine));
        Merge.Plan(theirs, before).Apply(theirs, Unasked);
        mine.Change("Removed an outing", writer => writer.RemoveOuting(mine.Outings()[0].Id));
        Assert.True(Merge.Plan(mine, before).ChangesNothing);

        theirs.Change("Noted", writer => writer.Put(theirs.Outings()[0] with { Notes = "into the wind" }));
        SharedRecord edited = Read(Written(theirs));
        MergeQuestion question = Assert.Single(Merge.Plan(mine, edited).Questions);
        Assert.Equal((MergeQuestionKind.RemovedHere, "removed", "still there"), (question.Kind, question.Here, question.InFile));
        Merge.Plan(mine, edited).Apply(mine, _ => MergeChoice.TakeFromFile);
        Assert.Equal(4, mine.Outings().Single().Pieces.Count);
        Assert.Equal("into the wind", mine.Outings().Single().Notes);

        // Asked once: the answer is known there, whichever it was.
        Assert.True(Merge.Plan(theirs, Read(Written(mine))).ChangesNothing);
        mine.Undo();
        Assert.Empty(mine.Outings());
        Merge.Plan(mine, edited).Apply(mine, _ => MergeChoice.KeepHere);
        Assert.True(Merge.Plan(mine, edited).ChangesNothing);
        MergePlan told = Merge.Plan(theirs, Read(Written(mine)));
        Assert.Equal(1, told.Removed["outing"]);
        Assert.Contains("was removed there", Assert.Single(told.Remarks));
        told.Apply(theirs, Unasked);
        Assert.Empty(theirs.Outings());
        Assert.NotNull(theirs.Undo());
        Assert.Single(theirs.Outings());
    }

    [Fact]
    public void What_was_cleared_stays_cleared_and_what_was_told_elsewhere_is_taken_without_a_question()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = WithOneOuting(folder, "mine"), theirs = folder.OpenHastily("theirs");
        mine.Change("Noted", writer => writer.Put(mine.Outings()[0] with { Notes = "felt fresh" }));
        Merge.Plan(theirs, Read(Written(mine))).Apply(theirs, Unasked);
        mine.Change("Cleared the note", writer => writer.Put(mine.Outings()[0] with { Notes = null }));
        theirs.Change("Told the wind", writer => writer.Put(theirs.Outings()[0] with { Wind = Beaufort.FromNumber(4) }));
        SharedRecord fromMine = Read(Written(mine)), fromTheirs = Read(Written(theirs));
        Merge.Plan(mine, fromTheirs).Apply(mine, Unasked);
        Merge.Plan(theirs, fromMine).Apply(theirs, Unasked);
        Assert.All(new[] { mine, theirs }, log => Assert.Equal((null, 4), (log.Outings()[0].Notes, log.Outings()[0].Wind?.Number)));

        // Cleared on one side and rewritten on the other: both are shown.
        theirs.Change("Noted", writer => writer.Put(theirs.Outings()[0] with { Notes = "felt stale" }));
        Merge.Plan(mine, Read(Written(theirs))).Apply(mine, Unasked);
        mine.Change("Cleared", writer => writer.Put(mine.Outings()[0] with { Notes = null }));
        theirs.Change("Noted", writer => writer.Put(theirs.Outings()[0] with { Notes = "felt heavy" }));
        MergeQuestion question = Assert.Single(Merge.Plan(mine, Read(Written(theirs))).Questions);
        Assert.Equal(("notes cleared", "notes felt heavy"), (question.Here, question.InFile));
    }

    [Fact]
    public void Both_sides_newer_is_asked_and_never_decided_by_itself()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = WithOneOuting(folder, "mine"), theirs = folder.OpenHastily("theirs");
        Merge.Plan(theirs, Read(Written(mine))).Apply(theirs, Unasked);

        // There and back again: each side's history holds the other's value.
        foreach (string name in new[] { "A", "B" })
            mine.Change("Renamed", writer => writer.Put(mine.Paddlers()[0] with { Name = name }));
        foreach (string name in new[] { "B", "A" })
            theirs.Change("Renamed", writer => writer.Put(theirs.Paddlers()[0] with { Name = name }));
        MergeQuestion question = Assert.Single(Merge.Plan(mine, Read(Written(theirs))).Questions);
        Assert.Equal(("name B", "name A"), (question.Here, question.InFile));
        Assert.Equal(MergeQuestionKind.EditedOnBoth, Assert.Single(Merge.Plan(theirs, Read(Written(mine))).Questions).Kind);
        Merge.Plan(mine, Read(Written(theirs))).Apply(mine, _ => MergeChoice.Later);
        Assert.Equal("B", mine.Paddlers()[0].Name);
        Assert.Single(Merge.Plan(mine, Read(Written(theirs))).Questions);
        Merge.Plan(mine, Read(Written(theirs))).Apply(mine, _ => MergeChoice.KeepHere);
        Merge.Plan(theirs, Read(Written(mine))).Apply(theirs, Unasked);
        Assert.Equal("B", theirs.Paddlers()[0].Name);
    }

    [Fact]
    public void Two_who_were_joined_here_are_one_there_with_what_came_after()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = WithOneOuting(folder, "mine"), theirs = folder.OpenHastily("theirs");
        Paddler slip = SampleLog.Ilse with { Id = Guid.NewGuid(), Name = "Ilse Mro" };
        mine.Change("Logged under a slip", writer =>
        {
            writer.Put(slip);
            writer.Put(SampleLog.Outing(2, paddler: slip.Id));
        });
        Merge.Plan(theirs, Read(Written(mine))).Apply(theirs, Unasked);
        mine.Change("Joined", writer => writer.JoinPaddlers(slip.Id, SampleLog.Ilse.Id));
        theirs.Change("Logged", writer => writer.Put(SampleLog.Outing(3, paddler: slip.Id)));
        MergePlan plan = Merge.Plan(theirs, Read(Written(mine)));
        Assert.Contains("was joined into “Ilse Maro” there", Assert.Single(plan.Remarks));
        plan.Apply(theirs, Unasked);
        Merge.Plan(mine, Read(Written(theirs))).Apply(mine, Unasked);
        foreach (LogbookFile log in new[] { mine, theirs })
        {
            Assert.Equal("Ilse Maro", Assert.Single(log.Paddlers()).Name);
            Assert.Equal(3, log.Outings(SampleLog.Ilse.Id).Count);
        }

        // Taken back there, it is two here again.
        while (theirs.Undo() is { } undone && !undone.What.StartsWith("Merged", StringComparison.Ordinal))
        {
        }
        Assert.Equal(2, theirs.Paddlers().Count);
    }

    [Fact]
    public void Coaches_who_each_have_a_club_paddle_exchange_squads_for_a_season_without_numbers_piling_up()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = folder.OpenHastily("mine"), theirs = folder.OpenHastily("theirs");
        foreach (LogbookFile log in new[] { mine, theirs })
            log.Change(
                "Added a paddle", writer =>
                writer.Put(SampleLog.Paddle with { Id = Guid.NewGuid(), Name = "Club adjustable", BelongsToClub = true }));
        for (int week = 0; week < 20; week++)
        {
            Merge.Plan(mine, Read(Written(theirs))).Apply(mine, _ => MergeChoice.KeepHere);
            Merge.Plan(theirs, Read(Written(mine))).Apply(theirs, Unasked);
        }

        foreach (LogbookFile log in new[] { mine, theirs })
            Assert.Equal(["Club adjustable", "Club adjustable (2)"], log.Paddles().Select(paddle => paddle.Name));

        // They are one after all: here it is said, there it is told.
        mine.Change("Joined", writer => writer.JoinPaddles(mine.Paddles()[1].Id, mine.Paddles()[0].Id));
        Merge.Plan(theirs, Read(Written(mine))).Apply(theirs, Unasked);
        Assert.Single(theirs.Paddles());
    }

    [Fact]
    public void A_paddler_who_may_be_the_same_is_asked_and_joined()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = folder.OpenHastily("mine"), theirs = WithOneOuting(folder, "theirs");
        mine.Change("Added", writer => writer.Put(SampleLog.Ilse with { Id = Guid.NewGuid(), Name = "Ilse Marro" }));
        MergePlan plan = Merge.Plan(mine, Read(Written(theirs)));
        MergeQuestion question = Assert.Single(plan.Questions);
        Assert.Equal((MergeQuestionKind.SameName, "“Ilse Marro” is here", "“Ilse Maro” is in the file"),
            (question.Kind, question.Here, question.InFile));
        plan.Apply(mine, _ => MergeChoice.Same);
        Assert.Equal("Ilse Marro", Assert.Single(mine.Paddlers()).Name);
        Assert.Single(mine.Outings(mine.Paddlers()[0].Id));
        Assert.True(Merge.Plan(mine, Read(Written(theirs))).ChangesNothing);
    }

    [Fact]
    public void A_shared_record_has_the_fields_that_are_merged_one_by_one()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.OpenHastily();
        foreach (
            IGrouping<string, string> table in RecordFields.ByTable.SelectMany(
            table => table.Value.Select(field => (Table: table.Key, field.Column))).GroupBy(pair => pair.Table, pair => pair.Column))
        {
            // Every column is a field, or this logbook's own.
            var columns = Dapper.SqlMapper.Query<string>(
                log.Connection, "SELECT name FROM pragma_table_info(@table)", new { table = table.Key });
            Assert.Equal(["as_of_change", "id", "name_key", "true_name"],
                columns.Except(table).Union(["as_of_change", "id", "name_key", "true_name"]).Order());
        }

        RandomRecords.Outing(Gen.Guid, Gen.Guid, Gen.Guid, Gen.Guid).Sample(outing =>
        {
            Assert.Subset(Fields("outings"), new ItemFields(SharedOuting.Of(outing), null).Names.ToHashSet());
            foreach (Piece piece in outing.Pieces)
                Assert.Subset(Fields("pieces"), new ItemFields(SharedPiece.Of(piece), outing.Id).Names.ToHashSet());
        });
        RandomRecords.Paddler(Gen.Guid, Gen.Guid)
            .Sample(paddler => Assert.Subset(Fields("paddlers"), new ItemFields(SharedPaddler.Of(paddler), null).Names.ToHashSet()));
        RandomRecords.Paddle(Gen.Guid, Gen.Guid)
            .Sample(paddle => Assert.Subset(Fields("paddles"), new ItemFields(SharedPaddle.Of(paddle), null).Names.ToHashSet()));
        RandomRecords.Card(Gen.Guid, Gen.Guid, Gen.Guid, Gen.Guid)
            .Sample(card => Assert.Subset(Fields("cards"), new ItemFields(SharedCard.Of(card), null).Names.ToHashSet()));

        static HashSet<string> Fields(string table) => [.. RecordFields.ByTable[table].Select(pair => pair.Field)];
    }

    internal static MergeChoice Unasked(MergeQuestion question) => throw new InvalidOperationException(question.ToString());

    [Fact]
    public void Equal_names_of_different_things_are_kept_apart_once_and_said()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = folder.OpenHastily("mine"), theirs = WithOneOuting(folder, "theirs");
        mine.Change("Added a paddle", writer => writer.Put(SampleLog.Paddle with { Id = Guid.NewGuid(), Name = "TRAINING paddle" }));
        MergePlan plan = Merge.Plan(mine, Read(Written(theirs)));
        Assert.Contains("shown as “Training paddle (2)”", Assert.Single(plan.Remarks));
        Assert.Equal(MergeQuestionKind.SameName, Assert.Single(plan.Questions).Kind);
        plan.Apply(mine, _ => MergeChoice.KeepHere);
        Assert.Equal(["TRAINING paddle", "Training paddle (2)"], mine.Paddles().Select(paddle => paddle.Name));
        Assert.True(Merge.Plan(mine, Read(Written(theirs))).ChangesNothing);
    }

    [Fact]
    public void Who_was_removed_there_and_is_needed_here_stays_beside_a_new_one_of_the_same_name()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = WithOneOuting(folder, "mine"), theirs = folder.OpenHastily("theirs");
        var tova = new Paddler { Id = RandomRecords.Id(5, 1), Name = "Tova Lind" };
        mine.Change("Added Tova Lind", writer => writer.Put(tova));
        Merge.Plan(theirs, Read(Written(mine))).Apply(theirs, _ => MergeChoice.Later);

        mine.Change("Moved", writer => writer.MoveOuting(mine.Outings()[0].Id, tova.Id, SampleLog.Hull.Id));
        theirs.Change("Removed", writer => writer.RemovePaddler(tova.Id));
        theirs.Change("Added another", writer => writer.Put(tova with { Id = RandomRecords.Id(5, 2) }));
        Merge.Plan(mine, Read(Written(theirs))).Apply(mine, question =>
            question.Kind == MergeQuestionKind.RemovedInFile ? MergeChoice.TakeFromFile : MergeChoice.KeepHere);

        Assert.Equal(tova.Id, mine.Outings().Single().PaddlerId);
        Assert.Equal(["Ilse Maro", "Tova Lind", "Tova Lind (2)"], mine.Paddlers().Select(paddler => paddler.Name));
        Assert.Empty(mine.Verify());
    }

    [Fact]
    public void A_plan_that_is_out_of_date_merges_nothing()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = folder.OpenHastily("mine"), theirs = WithOneOuting(folder, "theirs");
        MergePlan plan = Merge.Plan(mine, Read(Written(theirs)));
        SampleLog.Begin(mine);
        Assert.Contains("merge again", Assert.Throws<LogbookException>(() => plan.Apply(mine, _ => MergeChoice.KeepHere)).Message);
        Assert.Empty(mine.Outings());
    }

    [Theory]
    [InlineData("", "", "cannot be understood")]
    [InlineData("\"format\": \"triallog-record\"", "\"format\": \"something\"", "is not a TrialLog record")]
    [InlineData("\"version\": 1", "\"version\": 3", "newer version")]
    [InlineData("\"version\": 1", "\"version\": 0", "no version")]
    [InlineData("\"version\": 1", "\"version\": 1e99", "cannot be understood")]
    [InlineData("\"crew\": 1", "\"crew\": 99", "in hulls, number 1: A hull has a crew of 1 to 24")]
    [InlineData("\"crew\": 1", "\"crew\": 1, \"crew\": 2", "cannot be understood")]
    [InlineData("\"crew\": 1", "\"crews\": 1", "cannot be understood")]
    [InlineData("\"length_in\": 49.75", "\"length_in\": -49.75", "is not a length")]
    [InlineData("\"length_in\": 49.75", "\"length_in\": 4.975", "not believable")]
    [InlineData("\"time\": \"5:32.4\"", "\"time\": \"0:32.4\"", "faster than any paddled piece")]
    [InlineData("\"time\": \"5:32.4\"", "\"time\": null", "cannot be understood")]
    [InlineData("\"date\": \"2026-05-02\"", "\"date\": \"2026-02-30\"", "cannot be understood")]
    [InlineData("\"name\": \"Ilse Maro\"", "\"name\": \"\\u001b[2J\"", "control characters")]
    [InlineData("\"name\": \"Ilse Maro\"", "\"name\": \"\\ud83d\"", "cannot be understood")]
    [InlineData("\"outings\": [", "\"outings\": [ null,", "in outings, number 1: There is nothing there")]
    [InlineData("\"cards\": [", "\"cards\": [[[[[[[[[[[[[[[[[[[[[[", "cannot be understood")]
    public void A_wrong_file_is_refused_with_the_place(string right, string wrong, string says)
    {
        string text = right.Length == 0 ? wrong : Example().Replace(right, wrong, StringComparison.Ordinal);
        Assert.NotEqual(Example(), text);
        Assert.Contains(says, Assert.Throws<LogbookException>(() => Read(text)).Message);
    }

    [Fact]
    public void Ids_that_repeat_or_lead_nowhere_are_refused()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = WithOneOuting(folder, "mine");
        string text = Written(log);
        Assert.Contains("not its own", Assert.Throws<LogbookException>(() =>
            Read(text.Replace($"{RandomRecords.Id(9, 1)}", $"{RandomRecords.Id(9, 0)}", StringComparison.Ordinal))).Message);
        Assert.Contains("refers to a paddler that is not in the file", Assert.Throws<LogbookException>(() =>
            Read(text.Replace($"\"paddler\": \"{SampleLog.Ilse.Id}\"", $"\"paddler\": \"{Guid.NewGuid()}\"",
                StringComparison.Ordinal))).Message);

        // An id that is a paddler's here and a paddle's there.
        SharedRecord swapped = Read(text.Replace($"{SampleLog.Ilse.Id}", "x", StringComparison.Ordinal)
            .Replace($"{SampleLog.Paddle.Id}", $"{SampleLog.Ilse.Id}", StringComparison.Ordinal)
            .Replace("\"x\"", $"\"{SampleLog.Paddle.Id}\"", StringComparison.Ordinal));
        Assert.Contains("belongs to a paddle of this logbook", Assert.Throws<LogbookException>(() => Merge.Plan(log, swapped)).Message);
    }

    [Fact]
    public void A_record_too_large_to_be_read_is_not_written_over_what_was_there()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.Open();
        SampleLog.Begin(log);
        File.WriteAllText(folder.File("record.json"), "the last one");
        Assert.Contains("larger than",
            Assert.Throws<LogbookException>(() => Sharing.Save(log, new ShareOptions(), folder.File("record.json"), 200)).Message);
        Assert.Equal("the last one", File.ReadAllText(folder.File("record.json")));
        Assert.Empty(Directory.GetFiles(folder.Path, "*.part"));
    }

    // What is surely too large is refused by the number of its pieces alone, of which the shortest is taken for all.
    [Fact]
    public void No_piece_is_written_in_fewer_than_200_bytes()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.Open();
        SampleLog.Begin(log);
        Outing outing = SampleLog.Outing(1, pieces: 9);
        Piece shortest = outing.Pieces[0] with
        {
            Length = Length.FromInches(49),
            Distance = Distance.FromMetres(100),
            Time = PieceTime.FromSeconds(30),
            Effort = null,
            Notes = null,
        };
        log.Change("one", writer => writer.Put(outing with { Pieces = [shortest] }));
        long one = Written();
        log.Change("nine", writer => writer.Put(outing with
        {
            Pieces = [.. outing.Pieces.Select((piece, i) => shortest with { Id = piece.Id, Order = i + 1 })],
        }));
        Assert.InRange((Written() - one) / 8, 200, 400);

        long Written()
        {
            using var to = new MemoryStream();
            Sharing.Write(log, new ShareOptions(), to);
            return to.Length;
        }
    }

    [Fact]
    public void A_file_without_end_is_given_up()
    {
        using var endless = new Endless();
        Assert.Contains("larger than 64 MB", Assert.Throws<LogbookException>(() => Sharing.Read(endless)).Message);
    }

    [Fact]
    public void A_million_empty_records_and_deep_nesting_are_refused_at_once()
    {
        Assert.Throws<LogbookException>(
            () => Read(
            $"{{\"format\":\"triallog-record\",\"version\":1,\"hulls\":[{string.Join(",", Enumerable.Repeat("{}", 1_000_000))}]}}"));
        Assert.Throws<LogbookException>(() => Read(new string('[', 1_000_000)));
        Assert.Throws<LogbookException>(() => Read(string.Concat(Enumerable.Repeat("{\"a\":", 100_000))));
    }

    [Fact]
    public void Whatever_bytes_are_changed_the_file_is_read_or_refused_and_what_is_read_can_be_merged()
    {
        byte[] example = Encoding.UTF8.GetBytes(Example());
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.OpenHastily();
        int merged = 0;
        Gen.Select(Gen.Int[0, example.Length - 1], Gen.Byte, Gen.Int[0, 3], Gen.Int[0, example.Length - 1]).Array[1, 3].Sample(edits =>
        {
            List<byte> bytes = [.. example];
            foreach ((int at, byte value, int kind, int to) in edits)
            {
                int place = Math.Min(at, bytes.Count - 1);
                if (kind == 0)
                    bytes[place] = value;
                else if (kind == 1)
                    bytes[place] = (byte)"0123456789-,:\"ae"[value % 16];
                else if (kind == 2)
                    bytes.Insert(place, value);
                else
                    bytes.RemoveRange(place, Math.Min(to / 50, bytes.Count - place - 1));
            }
            try
            {
                SharedRecord record = Sharing.Read(new MemoryStream([.. bytes]));
                Merge.Plan(log, record).Apply(log, _ => MergeChoice.TakeFromFile);
                merged++;
            }
            catch (LogbookException e)
            {
                Assert.DoesNotContain(e.Message, char.IsControl);
            }
        }, iter: 400);
        Assert.True(merged > 0, "no changed file was read, so merging them was not tried");
    }

    private sealed class Endless : Stream
    {
        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => 0; set => throw new NotSupportedException(); }
        public override int Read(byte[] buffer, int offset, int count)
        {
            buffer.AsSpan(offset, count).Fill((byte)'[');
            return count;
        }
        public override void Flush() => throw new NotSupportedException();
        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
        public override void SetLength(long value) => throw new NotSupportedException();
        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
