using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Logbook.Exchange;
using TrialLog.Logbook.Shared;
using static TrialLog.Tests.Logbook.SharedFileTests;

namespace TrialLog.Tests.Logbook;

/// <summary>What two people do to one logbook on two laptops, and what merging makes and says of it: one telling example each.</summary>
public sealed class MergeExamples : IDisposable
{
    private static readonly Paddler Tova = new() { Id = RandomRecords.Id(5, 1), Name = "Tova Lind" };
    private static readonly Paddle Heron = SampleLog.Paddle with { Id = RandomRecords.Id(6, 1), Name = "Heron" };

    private readonly ScratchFolder _folder = new();
    private readonly LogbookFile _mine, _theirs;

    public MergeExamples()
    {
        _mine = WithOneOuting(_folder, "mine");
        _theirs = _folder.OpenHastily("theirs");
        _mine.Change("Added", writer =>
        {
            writer.Put(Tova);
            writer.Put(Heron);
        });
        Merge.Plan(_theirs, Read(Written(_mine))).Apply(_theirs, Unasked);
    }

    private MergePlan FromThem => Merge.Plan(_mine, Read(Written(_theirs)));

    private MergePlan FromMe => Merge.Plan(_theirs, Read(Written(_mine)));

    [Fact]
    public void Each_joined_into_the_others_both_keep_the_same_one()
    {
        _mine.Change("Joined", writer => writer.JoinPaddlers(Tova.Id, SampleLog.Ilse.Id));
        _theirs.Change("Joined", writer => writer.JoinPaddlers(SampleLog.Ilse.Id, Tova.Id));
        // Both files are written before either is read.
        MergePlan fromThem = FromThem, fromMe = FromMe;
        fromThem.Apply(_mine, Unasked);
        fromMe.Apply(_theirs, Unasked);
        Guid lower = Tova.Id.CompareTo(SampleLog.Ilse.Id) < 0 ? Tova.Id : SampleLog.Ilse.Id;
        Assert.All([_mine, _theirs], log => Assert.Equal(lower, Assert.Single(log.Paddlers()).Id));
        Assert.All([_mine, _theirs], log => Assert.Equal(lower, Assert.Single(log.Outings()).PaddlerId));
        Assert.True(FromThem.ChangesNothing && FromMe.ChangesNothing);
    }

    [Fact]
    public void A_paddler_removed_here_and_logged_for_there_is_asked_about_with_all_that_is_theirs()
    {
        _mine.Change("Removed", writer => writer.RemovePaddler(Tova.Id));
        _theirs.Change("Logged", writer => writer.Put(SampleLog.Outing(2, paddler: Tova.Id)));
        MergeQuestion question = Assert.Single(FromThem.Questions);
        Assert.Equal(
            (MergeQuestionKind.RemovedHere, "the paddler “Tova Lind”, with all that is theirs", "removed", "still there"),
            (question.Kind, question.What, question.Here, question.InFile));
        FromThem.Apply(_mine, _ => MergeChoice.TakeFromFile);
        Assert.Equal(Tova.Id, _mine.Outings().Single(outing => outing.Label == "2").PaddlerId);
        Assert.True(FromMe.ChangesNothing);
        _mine.Undo();
        FromThem.Apply(_mine, _ => MergeChoice.KeepHere);
        Assert.True(FromThem.ChangesNothing);
        Assert.Single(_mine.Outings());
        Assert.Equal("The paddler “Tova Lind” was removed there, and so it is here.", Assert.Single(FromMe.Remarks));
        FromMe.Apply(_theirs, Unasked);
        Assert.Single(_theirs.Paddlers());
    }

    [Fact]
    public void What_was_removed_there_and_changed_here_is_asked_about_by_its_name()
    {
        _theirs.Change("Removed", writer =>
        {
            writer.RemovePaddler(Tova.Id);
            writer.RemoveOuting(_theirs.Outings()[0].Id);
        });
        _mine.Change("Renamed", writer => writer.Put(Tova with { Name = "Tova Linde" }));
        _mine.Change("Noted", writer => writer.Put(_mine.Outings()[0] with { Notes = "felt fresh" }));
        Assert.Equal(
            [
                (MergeQuestionKind.RemovedInFile, "the paddler “Tova Linde”, with all that is theirs", "still there", "removed"),
                (MergeQuestionKind.RemovedInFile, "Ilse Maro's outing of 2020-01-02 “1”", "still there", "removed"),
            ],
            FromThem.Questions.Select(question => (question.Kind, question.What, question.Here, question.InFile)));
        FromThem.Apply(_mine, _ => MergeChoice.TakeFromFile);
        Assert.Empty(_mine.Outings());
        Assert.Single(_mine.Paddlers());
        Assert.Equal("Merged the record of Ilse Maro", _mine.Changes(1)[0].What);
    }

    [Fact]
    public void What_both_told_alike_is_known_to_both()
    {
        foreach (LogbookFile log in new[] { _mine, _theirs })
            log.Change("Noted", writer => writer.Put(log.Outings()[0] with { Notes = "felt fresh" }));
        Assert.True(FromThem.ChangesNothing);
        FromThem.Apply(_mine, Unasked);
        _mine.Change("Noted", writer => writer.Put(_mine.Outings()[0] with { Notes = "felt stale" }));
        FromMe.Apply(_theirs, Unasked);
        Assert.Equal("felt stale", _theirs.Outings()[0].Notes);
    }

    [Fact]
    public void A_piece_moved_to_another_outing_there_is_in_that_one_alone_here()
    {
        _theirs.Change("Split", writer =>
        {
            Outing outing = _theirs.Outings()[0];
            writer.Put(outing with { Pieces = [.. outing.Pieces.Take(3)] });
            writer.Put(SampleLog.Outing(2) with { Pieces = [outing.Pieces[3] with { Order = 1 }] });
        });
        FromThem.Apply(_mine, Unasked);
        Assert.Equal([3, 1], _mine.Outings().Select(outing => outing.Pieces.Count));
        Assert.Equal("5:34", _mine.Outings()[1].Pieces[0].Time.ToString());
        Assert.True(FromThem.ChangesNothing && FromMe.ChangesNothing);
    }

    // Each joined her into another; what a third laptop logged for her comes by way of theirs.
    [Fact]
    public void Whose_an_outing_is_that_was_logged_for_one_who_became_two_people_is_asked()
    {
        using LogbookFile third = _folder.OpenHastily("third");
        Paddler sela = new() { Id = RandomRecords.Id(5, 3), Name = "Sela Brand" };
        _theirs.Change("Added", writer => writer.Put(sela));
        FromThem.Apply(_mine, Unasked);
        Merge.Plan(third, Read(Written(_mine))).Apply(third, Unasked);
        third.Change("Logged", writer => writer.Put(SampleLog.Outing(2, paddler: Tova.Id)));
        _mine.Change("Joined", writer => writer.JoinPaddlers(Tova.Id, SampleLog.Ilse.Id));
        _theirs.Change("Joined", writer => writer.JoinPaddlers(Tova.Id, sela.Id));
        Merge.Plan(_theirs, Read(Written(third))).Apply(_theirs, Unasked);
        Assert.Equal(sela.Id, _theirs.Outings().Single(outing => outing.Label == "2").PaddlerId);

        MergeQuestion question = Assert.Single(FromThem.Questions);
        Assert.Equal(
            (MergeQuestionKind.EditedOnBoth, "paddler Ilse Maro", "paddler Sela Brand"), (question.Kind, question.Here, question.InFile));
        FromThem.Apply(_mine, _ => MergeChoice.KeepHere);
        Assert.Equal([SampleLog.Ilse.Id, SampleLog.Ilse.Id], _mine.Outings().Select(outing => outing.PaddlerId));
        Assert.Equal(4, _mine.Outings().Single(outing => outing.Label == "2").Pieces.Count);
        _mine.Undo();
        FromThem.Apply(_mine, _ => MergeChoice.TakeFromFile);
        Assert.Equal(sela.Id, _mine.Outings().Single(outing => outing.Label == "2").PaddlerId);
    }

    [Fact]
    public void One_who_is_shown_with_a_number_is_asked_about_with_it()
    {
        using LogbookFile third = _folder.OpenHastily("third");
        Paddler other = Tova with { Id = RandomRecords.Id(5, 9) };
        third.Change("Added", writer =>
        {
            writer.Put(other);
            writer.Put(SampleLog.Paddle);
            writer.Put(SampleLog.Outing(2, paddler: other.Id));
        });
        Merge.Plan(_mine, Read(Written(third))).Apply(_mine, _ => MergeChoice.KeepHere);
        Merge.Plan(_theirs, Read(Written(third))).Apply(_theirs, _ => MergeChoice.KeepHere);
        _mine.Change("Noted", writer => writer.Put(Second(_mine) with { Notes = "felt fresh" }));
        _theirs.Change("Noted", writer => writer.Put(Second(_theirs) with { Notes = "felt stale" }));
        _mine.Change("Whose", writer => writer.Put(Heron with { OwnerId = other.Id }));
        _theirs.Change("Whose", writer => writer.Put(Heron with { OwnerId = Tova.Id }));
        MergeQuestion[] questions = [.. FromThem.Questions];
        Assert.Equal(["the paddle “Heron”", "Tova Lind (2)'s outing of 2020-01-03 “2”"], questions.Select(question => question.What));
        Assert.Equal(("owner Tova Lind (2)", "owner Tova Lind"), (questions[0].Here, questions[0].InFile));

        static Outing Second(LogbookFile log) => log.Outings().Single(outing => outing.Label == "2");
    }

    [Fact]
    public void Word_that_soreness_is_gone_and_a_card_with_the_note_on_it_come_too()
    {
        var clearance = new SorenessClearance
        {
            Id = RandomRecords.Id(4, 1), PaddlerId = Tova.Id, Date = new(2026, 5, 3), By = "Sela Brand", Because = "seen today",
        };
        var note = new CoachNote
        {
            Id = RandomRecords.Id(4, 3), AboutId = RandomRecords.Id(4, 2), About = NoteSubject.Card, Author = "Sela Brand",
            WrittenAt = new(2026, 5, 3, 9, 0, 0, TimeSpan.Zero), Text = "into the wind first",
        };
        _theirs.Change("Cleared", writer => writer.Put(clearance));
        _theirs.Change("Gave a card", writer =>
        {
            writer.Put(new GivenCard
            {
                Id = note.AboutId,
                PaddlerId = Tova.Id,
                HullId = SampleLog.Hull.Id,
                PaddleId = Heron.Id,
                GivenAt = note.WrittenAt,
                Card = new TrialCard
                {
                    Lengths = [Length.FromInches(50)],
                    Distance = Distance.FromMetres(1000),
                    Effort = Effort.FromPoints(6),
                    Rest = PieceTime.FromSeconds(300),
                },
                Best = Length.FromInches(50),
                LikelyLow = Length.FromInches(49),
                LikelyHigh = Length.FromInches(51),
                GainLeftPercent = 0.5,
                DiminishingReturns = false,
                Outings = 0,
                Pieces = 0,
                AsOfChange = 0,
            });
            writer.Put(note);
        });
        FromThem.Apply(_mine, Unasked);
        Assert.Equal(clearance, Assert.Single(_mine.SorenessClearances(Tova.Id)));
        Assert.Equal(note.AboutId, Assert.Single(_mine.Everything().Cards).Id);
        Assert.Equal(note, Assert.Single(_mine.Everything().Notes));
    }

    [Fact]
    public void What_a_record_leaves_out_is_not_in_it_and_stays_as_it_is_known_elsewhere()
    {
        Tell(_mine, "felt fresh", 150, 68);
        FromMe.Apply(_theirs, Unasked);
        Tell(_theirs, "felt stale", 155, 69);
        foreach (LeftOut part in new[] { LeftOut.Notes, LeftOut.HeartRate, LeftOut.BodyMeasures })
        {
            SharedRecord without = Read(Written(_theirs, new ShareOptions(LeftOut: part)));
            Assert.Single(without.LeftOutNames);
            using LogbookFile fresh = _folder.OpenHastily($"without {part}");
            Merge.Plan(fresh, without).Apply(fresh, Unasked);
            Assert.Equal(Without(part, null, null, null), Told(fresh));
            Merge.Plan(_mine, without).Apply(_mine, Unasked);
            Assert.Equal(Without(part, "felt fresh", 150, 68), Told(_mine));
            _mine.Undo();
        }

        FromThem.Apply(_mine, Unasked);
        Assert.Equal(("felt stale", 155, 69.0), Told(_mine));

        static (string?, int?, double?) Without(LeftOut part, string? notes, int? rate, double? inches) => (
            part == LeftOut.Notes ? notes : "felt stale", part == LeftOut.HeartRate ? rate : 155,
            part == LeftOut.BodyMeasures ? inches : 69);

        static (string?, int?, double?) Told(LogbookFile log) => (log.Outings()[0].Pieces[0].Notes,
            log.Outings()[0].Pieces[0].HeartRate?.BeatsPerMinute,
            log.Paddlers().Single(paddler => paddler.Id == Tova.Id).Body.Stature?.Inches);

        static void Tell(LogbookFile log, string notes, int rate, double inches) => log.Change("Told", writer =>
        {
            writer.Put(Tova with { Body = new() { Stature = Length.FromInches(inches) } });
            Outing outing = log.Outings()[0];
            Piece told = outing.Pieces[0] with { Notes = notes, HeartRate = HeartRate.FromBeatsPerMinute(rate) };
            writer.Put(outing with { Pieces = [told, .. outing.Pieces.Skip(1)] });
        });
    }

    [Fact]
    public void One_paddlers_record_tells_no_removal_of_what_was_anothers()
    {
        _mine.Change("Logged", writer => writer.Put(SampleLog.Outing(2, paddler: Tova.Id)));
        Guid[] outings = [.. _mine.Outings().Select(outing => outing.Id)];
        _mine.Change("Removed", writer =>
        {
            foreach (Guid outing in outings)
                writer.RemoveOuting(outing);
        });
        SharedRecord hers = Read(Written(_mine, new ShareOptions(SampleLog.Ilse.Id))), all = Read(Written(_mine));
        Assert.Equal([outings[0]], hers.Contents.Removed!.Select(gone => gone.Id).Intersect(outings));
        Assert.Equal(2, all.Contents.Removed!.Select(gone => gone.Id).Intersect(outings).Count());
        LogbookException refused = Assert.Throws<LogbookException>(() => Written(_mine, new ShareOptions(RandomRecords.Id(5, 99))));
        Assert.Equal("That paddler is not in the logbook.", refused.Message);
    }

    [Fact]
    public void A_piece_moved_to_another_outing_leaves_one_that_was_changed_besides()
    {
        _theirs.Change("Split", writer =>
        {
            Outing outing = _theirs.Outings()[0];
            writer.Put(outing with
            {
                Pieces = [outing.Pieces[0] with { Effort = Effort.FromPoints(3) }, .. outing.Pieces.Skip(1).Take(2)],
            });
            writer.Put(SampleLog.Outing(2) with { Pieces = [outing.Pieces[3] with { Order = 1 }] });
        });
        FromThem.Apply(_mine, Unasked);
        Assert.Equal([3, 1], _mine.Outings().Select(outing => outing.Pieces.Count));
        Assert.Equal(3, _mine.Outings()[0].Pieces[0].Effort!.Value.Points);
        Assert.True(FromThem.ChangesNothing && FromMe.ChangesNothing);
    }

    // What was learnt first says nothing of the order: a number given twice stays as it was given.
    [Fact]
    public void Pieces_under_one_number_stand_in_one_order_whatever_was_learnt_first()
    {
        using LogbookFile third = _folder.OpenHastily("third");
        AddPiece(_mine, seconds: 340, id: RandomRecords.Id(9, 31));
        AddPiece(_theirs, seconds: 350, id: RandomRecords.Id(9, 32));
        FromThem.Apply(_mine, Unasked);
        AddPiece(_theirs, seconds: 360, id: RandomRecords.Id(9, 30));
        Merge.Plan(third, Read(Written(_theirs))).Apply(third, Unasked);
        FromThem.Apply(_mine, Unasked);
        Merge.Plan(third, Read(Written(_mine))).Apply(third, Unasked);
        FromMe.Apply(_theirs, Unasked);
        Assert.Equal(["5:40", "5:50", "6:00"], Times(_mine).Skip(4));
        Assert.Equal(Times(_mine), Times(_theirs));
        Assert.Equal(Times(_mine), Times(third));
    }

    [Theory]
    [InlineData("{", "The record cannot be understood at line 1; it may be cut short or edited: ask for it again.")]
    [InlineData("{\n\"version\": \"x\"}",
        "The record cannot be understood at line 2, in $.version; it may be cut short or edited: ask for it again.")]
    public void A_record_that_cannot_be_understood_says_where(string text, string said) =>
        Assert.Equal(said, Assert.Throws<LogbookException>(() => Read(text)).Message);

    [Fact]
    public void A_record_larger_than_is_read_again_is_refused_with_how_large_it_may_be()
    {
        using var file = new MemoryStream();
        using var bounded = new BoundedOutput(file, most: 3 << 20);
        bounded.Write(new byte[3 << 20], 0, 3 << 20);
        Assert.Contains("larger than 3 MB", Assert.Throws<LogbookException>(() => bounded.Write([0])).Message);
        Assert.Equal(3 << 20, file.Length);
    }

    [Fact]
    public void Pieces_put_in_order_on_both_sides_are_one_question_that_shows_both_orders()
    {
        Reorder(_mine, 2, 1, 4, 3);
        Reorder(_theirs, 4, 3, 2, 1);
        MergeQuestion question = Assert.Single(FromThem.Questions);
        Assert.Equal(
            (MergeQuestionKind.PieceOrder, "the order of the pieces of Ilse Maro's outing of 2020-01-02 “1”"),
            (question.Kind, question.What));
        Assert.Equal("50 in (5:32), 49.5 in (5:31), 49 in (5:34), 50.5 in (5:33)", question.Here);
        Assert.Equal("49 in (5:34), 50.5 in (5:33), 50 in (5:32), 49.5 in (5:31)", question.InFile);
        FromThem.Apply(_mine, _ => MergeChoice.TakeFromFile);
        Assert.Equal(["5:34", "5:33", "5:32", "5:31"], Times(_mine));
        Assert.True(FromMe.ChangesNothing);
        _mine.Undo();
        FromThem.Apply(_mine, _ => MergeChoice.KeepHere);
        Assert.Equal(["5:32", "5:31", "5:34", "5:33"], Times(_mine));
        Assert.True(FromThem.ChangesNothing);
        FromMe.Apply(_theirs, Unasked);
        Assert.Equal(Times(_mine), Times(_theirs));
    }

    [Fact]
    public void Pieces_added_under_one_number_on_both_sides_are_kept_in_one_order_on_both()
    {
        AddPiece(_mine, seconds: 340);
        AddPiece(_theirs, seconds: 350);
        FromThem.Apply(_mine, Unasked);
        FromMe.Apply(_theirs, Unasked);
        Assert.Equal(6, Times(_mine).Count());
        Assert.Equal(Times(_mine), Times(_theirs));
        Assert.Equal([1, 2, 3, 4, 5, 6], _mine.Outings()[0].Pieces.Select(piece => piece.Order));
        Assert.True(FromThem.ChangesNothing && FromMe.ChangesNothing);
    }

    [Fact]
    public void A_paddle_removed_here_comes_back_with_the_outing_that_needs_it_and_stays()
    {
        _mine.Change("Removed", writer => writer.RemovePaddle(Heron.Id));
        Assert.True(FromThem.ChangesNothing);
        AddPiece(_theirs, seconds: 350, paddle: Heron.Id);
        FromThem.Apply(_mine, Unasked);
        Assert.Equal(Heron.Id, _mine.Outings()[0].Pieces[^1].PaddleId);
        Assert.Contains(_mine.Paddles(), paddle => paddle.Name == "Heron");
        FromMe.Apply(_theirs, Unasked);
        Assert.Contains(_theirs.Paddles(), paddle => paddle.Name == "Heron");
        Assert.True(FromThem.ChangesNothing && FromMe.ChangesNothing);
    }

    [Fact]
    public void A_question_names_people_not_their_numbers()
    {
        _mine.Change("Whose", writer => writer.Put(Heron with { OwnerId = SampleLog.Ilse.Id }));
        _theirs.Change("Whose", writer => writer.Put(Heron with { OwnerId = Tova.Id }));
        MergeQuestion question = Assert.Single(FromThem.Questions);
        Assert.Equal(("the paddle “Heron”", "owner Ilse Maro", "owner Tova Lind"), (question.What, question.Here, question.InFile));
        _theirs.Change("The club's", writer => writer.Put(Heron with { OwnerId = null, BelongsToClub = true }));
        Assert.Equal("owner belongs to club true", Assert.Single(FromThem.Questions).InFile);
        _theirs.Change("Nobody's", writer => writer.Put(Heron));
        Assert.Equal("owner cleared", Assert.Single(FromThem.Questions).InFile);
    }

    [Fact]
    public void Several_fields_of_one_record_are_one_question()
    {
        _mine.Change("Measured", writer => writer.Put(Tova with { Name = "Tova Linde", Unit = LengthUnit.Centimetres }));
        _theirs.Change("Renamed", writer => writer.Put(Tova with
        {
            Name = "Tova Lindh",
            Goal = new()
            {
                HullId = SampleLog.Hull.Id,
                Distance = Distance.FromMetres(16_000)
            }
        }));
        MergePlan plan = FromThem;
        MergeQuestion question = Assert.Single(plan.Questions);
        Assert.Equal(("name Tova Linde", "name Tova Lindh"), (question.Here, question.InFile));
        plan.Apply(_mine, _ => MergeChoice.KeepHere);
        Paddler kept = _mine.Paddlers().Single(paddler => paddler.Id == Tova.Id);
        Assert.Equal(("Tova Linde", LengthUnit.Centimetres, 16_000.0), (kept.Name, kept.Unit, kept.Goal!.Distance!.Value.Metres));
        Assert.Empty(FromThem.Questions);
    }

    // Version 1 told no edits: of what is known here nothing is taken unasked, and nothing that is missing there is cleared.
    [Fact]
    public void An_old_file_fills_in_what_nobody_ever_said_here_and_asks_of_the_rest()
    {
        using LogbookFile log = _folder.OpenHastily("old");
        Merge.Plan(log, Read(Example())).Apply(log, Unasked);
        Assert.True(Merge.Plan(log, Read(Example())).ChangesNothing);
        Outing outing = log.Outings()[0];
        string without = Example().Replace("\"place\": \"Tarrow Sound, inside the bar\",", "", StringComparison.Ordinal);
        Assert.True(Merge.Plan(log, Read(without)).ChangesNothing);
        using LogbookFile later = _folder.OpenHastily("later");
        Merge.Plan(later, Read(without)).Apply(later, Unasked);
        Merge.Plan(later, Read(Example())).Apply(later, Unasked);
        Assert.Equal("Tarrow Sound, inside the bar", later.Outings()[0].Place);
        log.Change("Taken out", writer => writer.Put(outing with
        {
            Pieces = [outing.Pieces[0], outing.Pieces[1] with { ExcludedBecause = null }],
        }));
        MergeQuestion question = Assert.Single(Merge.Plan(log, Read(Example())).Questions);
        Assert.Equal(("excluded because cleared", "excluded because overtaken by a wash"), (question.Here, question.InFile));
    }

    [Fact]
    public void Numbers_that_keep_names_apart_go_by_the_records_not_by_the_way_they_came()
    {
        Paddle[] three = [.. Enumerable.Range(1, 3).Select(i => Heron with { Id = RandomRecords.Id(7, i), Name = $"Third {i}" })];
        using LogbookFile one = _folder.OpenHastily("one"), other = _folder.OpenHastily("other");
        foreach (LogbookFile log in new[] { one, other })
            log.Change("Added", writer => writer.Put(Heron with { Id = RandomRecords.Id(8, 1), Name = "Club" }));
        using LogbookFile first = _folder.OpenHastily("first"), second = _folder.OpenHastily("second");
        first.Change("Added", writer => writer.Put(three[0] with { Name = "Club" }));
        second.Change("Added", writer => writer.Put(three[1] with { Name = "Club" }));
        Merge.Plan(first, Read(Written(second))).Apply(first, _ => MergeChoice.KeepHere);
        Merge.Plan(second, Read(Written(first))).Apply(second, _ => MergeChoice.KeepHere);
        Merge.Plan(one, Read(Written(first))).Apply(one, _ => MergeChoice.KeepHere);
        Merge.Plan(other, Read(Written(second))).Apply(other, _ => MergeChoice.KeepHere);
        Assert.All([one, other], log => Assert.Equal(
            ["Club", "Club (2)", "Club (3)"],
            new[] { RandomRecords.Id(8, 1), three[0].Id, three[1].Id }.Select(id => log.Paddles().Single(paddle => paddle.Id == id).Name)));
    }

    public void Dispose()
    {
        _mine.Dispose();
        _theirs.Dispose();
        _folder.Dispose();
    }

    private static IEnumerable<string> Times(LogbookFile log) => log.Outings()[0].Pieces.Select(piece => piece.Time.ToString());

    private static void Reorder(LogbookFile log, params int[] orders)
    {
        Outing outing = log.Outings()[0];
        log.Change("Put in order", writer => writer.Put(outing with
        {
            Pieces = [.. orders.Select((from, i) => outing.Pieces[from - 1] with { Order = i + 1 })],
        }));
    }

    private static void AddPiece(LogbookFile log, int seconds, Guid? paddle = null, Guid? id = null)
    {
        Outing outing = log.Outings()[0];
        Piece piece = outing.Pieces[^1] with
        {
            Id = id ?? Guid.NewGuid(),
            Order = outing.Pieces.Count + 1,
            Time = PieceTime.FromSeconds(seconds),
            PaddleId = paddle ?? SampleLog.Paddle.Id,
        };
        log.Change("Added a piece", writer => writer.Put(outing with { Pieces = [.. outing.Pieces, piece] }));
    }
}
