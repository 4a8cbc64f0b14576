using System.Text;
using CsCheck;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Logbook.Shared;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Recordings.Csv;

namespace TrialLog.Tests.Logbook;

/// <summary>Shared files: examples of what merging says, files of every version, files from strangers.</summary>
public class SharedFileTests
{
    private static string Written(LogbookFile log, ShareOptions? options = null)
    {
        using var file = new MemoryStream();
        Sharing.Write(log, options ?? new ShareOptions(), file);
        return Encoding.UTF8.GetString(file.ToArray());
    }

    private static SharedRecord Read(string text) => Sharing.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));

    private static string Example()
    {
        using Stream? file = typeof(SharedFileTests).Assembly.GetManifestResourceStream("TrialLog.Tests.Logbook.record-v1.json");
        using var reader = new StreamReader(file!);
        return reader.ReadToEnd();
    }

    private static LogbookFile WithOneOuting(ScratchFolder folder, string name)
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
        Merge.Plan(theirs, Read(Written(mine))).Apply(theirs, _ => MergeChoice.Mine);
        Edit(theirs, 7);
        MergePlan plan = Merge.Plan(mine, Read(Written(theirs)));
        Assert.Empty(plan.Conflicts);
        Assert.Equal(1, plan.Updated["piece"]);
        Edit(mine, 5);
        plan = Merge.Plan(mine, Read(Written(theirs)));
        MergeConflict conflict = Assert.Single(plan.Conflicts);
        Assert.Equal((MergeQuestion.EditedOnBoth, "effort 5", "effort 7"), (conflict.Question, conflict.Mine, conflict.Theirs));
        Assert.Equal("piece 1 of Ilse Maro's outing of 2020-01-02 “1”", conflict.What);
        plan.Apply(mine, _ => MergeChoice.Mine);
        Assert.Equal(5, mine.Outings()[0].Pieces[0].Effort!.Value.Points);
        plan.Apply(mine, _ => MergeChoice.Theirs);
        Assert.Equal(7, mine.Outings()[0].Pieces[0].Effort!.Value.Points);
        mine.Undo();
        Assert.Equal(5, mine.Outings()[0].Pieces[0].Effort!.Value.Points);

        static void Edit(LogbookFile log, int effort) => log.Change("Edited a piece", writer =>
        {
            Outing outing = log.Outings()[0];
            writer.Put(outing with { Pieces = [outing.Pieces[0] with { Effort = Effort.FromPoints(effort) }, .. outing.Pieces.Skip(1)] });
        });
    }

    [Fact]
    public void What_was_removed_here_comes_back_only_if_the_user_says_so()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = WithOneOuting(folder, "mine");
        SharedRecord before = Read(Written(mine));
        mine.Change("Removed an outing", writer => writer.RemoveOuting(mine.Outings()[0].Id));
        MergePlan plan = Merge.Plan(mine, before);
        Assert.Equal(MergeQuestion.RemovedHere, Assert.Single(plan.Conflicts).Question);
        plan.Apply(mine, _ => MergeChoice.Mine);
        Assert.Empty(mine.Outings());
        Assert.Equal(3, mine.LastChange);
        plan.Apply(mine, _ => MergeChoice.Theirs);
        Assert.Equal(4, mine.Outings()[0].Pieces.Count);
    }

    [Fact]
    public void Equal_names_of_different_things_are_kept_apart_once_and_said()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = folder.OpenHastily("mine"), theirs = WithOneOuting(folder, "theirs");
        mine.Change("Added a paddle", writer => writer.Put(SampleLog.Paddle with { Id = Guid.NewGuid(), Name = "TRAINING paddle" }));
        MergePlan plan = Merge.Plan(mine, Read(Written(theirs)));
        Assert.Contains("kept as “Training paddle (2)”", Assert.Single(plan.Remarks));
        plan.Apply(mine, _ => MergeChoice.Mine);
        Assert.Equal(["TRAINING paddle", "Training paddle (2)"], mine.Paddles().Select(paddle => paddle.Name));
        Assert.True(Merge.Plan(mine, Read(Written(theirs))).ChangesNothing);
    }

    [Fact]
    public void A_plan_that_is_out_of_date_merges_nothing()
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = folder.OpenHastily("mine"), theirs = WithOneOuting(folder, "theirs");
        MergePlan plan = Merge.Plan(mine, Read(Written(theirs)));
        SampleLog.Begin(mine);
        Assert.Contains("merge again", Assert.Throws<LogbookException>(() => plan.Apply(mine, _ => MergeChoice.Mine)).Message);
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
            Read(text.Replace($"\"paddler\": \"{SampleLog.Ilse.Id}\"", $"\"paddler\": \"{Guid.NewGuid()}\"", StringComparison.Ordinal))).Message);

        // An id that is a paddler's here and a paddle's there.
        SharedRecord swapped = Read(text.Replace($"{SampleLog.Ilse.Id}", "x", StringComparison.Ordinal)
            .Replace($"{SampleLog.Paddle.Id}", $"{SampleLog.Ilse.Id}", StringComparison.Ordinal)
            .Replace("\"x\"", $"\"{SampleLog.Paddle.Id}\"", StringComparison.Ordinal));
        Assert.Contains("belongs to a paddler", Assert.Throws<LogbookException>(() => Merge.Plan(log, swapped)).Message);
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
        Assert.Throws<LogbookException>(() => Read($"{{\"format\":\"triallog-record\",\"version\":1,\"hulls\":[{string.Join(",", Enumerable.Repeat("{}", 1_000_000))}]}}"));
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
                Merge.Plan(log, record).Apply(log, _ => MergeChoice.Theirs);
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
