using TrialLog.Application.Coaching;
using TrialLog.Application.Next;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Tests.Commands;
using TrialLog.Tests.Logbook;
using TrialLog.Tests.Reports;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Application.Coaching;

/// <summary>Cards as they were given, paddled and derived again, and what coaches wrote: each by a telling example.</summary>
public sealed class CardsAndNotesTests : IDisposable
{
    private readonly ScratchFolder _folder = new();
    private readonly LogbookFile _log;
    private readonly Workspace _workspace;

    public CardsAndNotesTests()
    {
        _log = _folder.OpenHastily();
        SampleLog.Begin(_log);
        _workspace = new Workspace(_log, new FixedClock(new DateTimeOffset(2026, 6, 1, 12, 0, 0, TimeSpan.Zero)));
    }

    private static readonly Chosen Chosen = new(SampleLog.Ilse, SampleLog.Hull, SampleLog.Paddle);

    [Fact]
    public void Of_two_outings_of_a_day_the_earlier_was_paddled_by_the_card()
    {
        GivenCard card = SampleContents.Of(1).Advice[0].Card;
        Outing morning = SampleContents.Of(1).Outings[0] with { Time = new(8, 0), Label = "second in the alphabet" };
        Outing evening = morning with { Id = SampleContents.Id(999), Time = new(17, 0), Label = "first in the alphabet" };
        foreach (Outing[] outings in new[] { [morning, evening], new[] { evening, morning } })
            Assert.Equal(morning, AdviceHistory.Of([card], outings, at => DateOnly.FromDateTime(at.UtcDateTime)).Single().Paddled);
    }

    [Fact]
    public void Who_was_given_no_card_is_told_how_to_be_given_one() => Assert.Equal(
        "Ilse Maro was given no card yet; see: triallog next",
        Assert.Throws<RequestException>(() => AdviceReview.CardNamed(_workspace, SampleLog.Ilse, "1")).Message);

    [Fact]
    public void A_card_is_derived_again_up_to_the_newest_change_and_no_further()
    {
        GivenCard card = NextOuting.For(_workspace, Chosen, CardWish.None).Card;
        Rederived Again(long asOf) => AdviceReview.Rederive(
            _workspace, new NumberedAdvice(1, new Advice(card with { AsOfChange = asOf }, null, AdviceMatch.NotPaddled), null));
        Assert.True(Again(_log.LastChange).Same);
        Assert.StartsWith("Card 1 was given from another copy of the log",
            Assert.Throws<RequestException>(() => Again(_log.LastChange + 1)).Message);
    }

    [Fact]
    public void Only_what_has_a_card_is_taken_down_as_given_and_nothing_over_a_coachs_card()
    {
        Analysis analysis = Tuner.Analyse(_workspace.Question(Chosen));
        NextOuting.Record(_workspace, [analysis with { Card = analysis.Card with { Lengths = [] } }]);
        Assert.Empty(_log.Cards());
        NextOuting.Record(_workspace, [analysis]);
        Assert.Single(_log.Cards());
        NextOuting.For(_workspace, Chosen, CardWish.None with
        {
            Lengths = [Length.FromInches(48.5), Length.FromInches(52.5)],
            By = "Sela Brand",
            Because = "the ends first",
        });
        NextOuting.Record(_workspace, [analysis]);
        Assert.Equal([null, "Sela Brand"], _log.Cards().Select(card => card.By).Order());
    }

    [Fact]
    public void Notes_are_numbered_in_the_order_written_and_removed_by_that_number()
    {
        CoachNote Note(int id, int minute) => new()
        {
            Id = SampleContents.Id(id), About = NoteSubject.Paddler, AboutId = SampleLog.Ilse.Id, Author = "Sela Brand",
            WrittenAt = new DateTimeOffset(2026, 5, 1, 9, minute, 0, TimeSpan.Zero), Text = $"Of minute {minute}.",
        };
        CoachNote first = Note(3, 1), second = Note(1, 2), third = Note(2, 2);
        _log.Change("Wrote notes", writer =>
        {
            foreach (CoachNote note in new[] { third, first, second })
                writer.Put(note);
        });
        Assert.Equal([first, second, third], CoachNotes.About(_workspace, SampleLog.Ilse));
        foreach (int none in new[] { 0, 4 })
            Assert.Equal($"There is no note {none} on Ilse Maro; they are numbered 1 to 3. See: triallog note list",
                Assert.Throws<RequestException>(() => CoachNotes.Remove(_workspace, SampleLog.Ilse, none)).Message);
        Assert.Equal(first, CoachNotes.Remove(_workspace, SampleLog.Ilse, 1));
        Assert.Equal(third, CoachNotes.Remove(_workspace, SampleLog.Ilse, 2));
        Assert.Equal([second], CoachNotes.About(_workspace, SampleLog.Ilse));
    }

    public void Dispose()
    {
        _log.Dispose();
        _folder.Dispose();
    }
}
