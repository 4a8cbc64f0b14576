using CsCheck;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using static TrialLog.Tests.Logbook.RandomRecords;

namespace TrialLog.Tests.Logbook;

/// <summary>Random things a user may do, over a few ids so that they meet, never refused.</summary>
internal static class RandomWrites
{
    private static readonly Gen<Guid> PaddlerId = Gen.Int[0, 2].Select(i => Id(1, i));
    private static readonly Gen<Guid> PaddleId = Gen.Int[0, 2].Select(i => Id(2, i));
    private static readonly Gen<Guid> HullId = Gen.Int[0, 4].Select(i => i < 3 ? StandardHulls.All[i].Id : Id(3, i));
    private static readonly Gen<Guid> OutingId = Gen.Int[0, 4].Select(i => Id(4, i));
    private static readonly Gen<Guid> CardId = Gen.Int[0, 3].Select(i => Id(5, i));
    private static readonly Gen<Guid> CheckId = Gen.Int[0, 2].Select(i => Id(6, i));
    private static readonly Gen<Guid> ClearanceId = Gen.Int[0, 2].Select(i => Id(8, i));
    private static readonly Gen<Guid> DecisionId = Gen.Int[0, 2].Select(i => Id(10, i));
    private static readonly Gen<Guid> NoteId = Gen.Int[0, 3].Select(i => Id(7, i));

    // What a record refers to is put along with it, so that no step is refused.
    private static void Ensure(LogbookModel model, LogbookWriter writer, Guid paddler, Guid hull, IEnumerable<Guid> paddles)
    {
        if (!model.Hulls.ContainsKey(hull))
            Put(model, writer, new Hull { Id = hull, Name = $"Hull {hull}", Crew = 3 });
        if (!model.Paddlers.ContainsKey(paddler))
            Put(model, writer, new Paddler { Id = paddler, Name = $"Tova {paddler}" });
        foreach (Guid id in paddles.Where(id => !model.Paddles.ContainsKey(id)))
            writer.Put(
                model.Paddles[id] = new Paddle
                {
                    Id = id, Name = $"Paddle {id}", Blade = Length.Parse("18in"),
                    Shortest = Length.Parse("48in"), Longest = Length.Parse("53in"), Step = Length.Parse("1/4")
                });
    }

    private static void Put(LogbookModel model, LogbookWriter writer, Hull hull) => writer.Put(model.Hulls[hull.Id] = hull);

    private static void Put(LogbookModel model, LogbookWriter writer, Paddler paddler) => writer.Put(model.Paddlers[paddler.Id] = paddler);

    private static void PutIf(bool isThere, LogbookModel model, LogbookWriter writer, CoachNote note)
    {
        if (isThere)
            writer.Put(model.Notes[note.Id] = note);
        else
            Assert.Throws<InvalidValueException>(() => writer.Put(note));
    }

    private static void EditPiece(LogbookModel model, LogbookWriter writer, int number, Func<Piece, Piece> edit)
    {
        Outing[] outings = [.. model.Outings.Values.Where(outing => outing.Pieces.Count > 0).OrderBy(outing => outing.Id)];
        if (outings.Length == 0)
            return;
        Outing outing = outings[number % outings.Length];
        int which = number % outing.Pieces.Count;
        writer.Put(
            model.Outings[outing.Id] = outing with { Pieces = [.. outing.Pieces.Select((piece, i) => i == which ? edit(piece) : piece)] });
    }

    /// <summary>Something done to a logbook, and to its model alike.</summary>
    public static readonly Gen<Action<LogbookModel, LogbookWriter>> PutOrRemove = Gen.Frequency(
        (2, Hull(HullId).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) => Put(model, writer, x)))),
        (2, Paddle(PaddleId, PaddlerId).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            if (x.OwnerId is Guid owner && !model.Paddlers.ContainsKey(owner))
                Put(model, writer, new Paddler { Id = owner, Name = $"Tova {owner}" });
            writer.Put(model.Paddles[x.Id] = x);
        }))),
        (2, Paddler(PaddlerId, Gen.Const(StandardHulls.All[1].Id)).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            if (x.Goal is not null && !model.Hulls.ContainsKey(x.Goal.HullId))
                Put(model, writer, StandardHulls.All[1]);
            Put(model, writer, x);
        }))),
        (6, Outing(OutingId, PaddlerId, HullId, PaddleId).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            Ensure(model, writer, x.PaddlerId, x.HullId, x.Pieces.Select(piece => piece.PaddleId));
            writer.Put(model.Outings[x.Id] = x);
        }))),
        (2, Gen.Select(Card(CardId, PaddlerId, HullId, PaddleId), OutingId)
            .Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            Ensure(model, writer, x.Item1.PaddlerId, x.Item1.HullId, [x.Item1.PaddleId]);
            writer.Put(model.Cards[x.Item1.Id] = x.Item1 with { PaddledAs = model.Outings.ContainsKey(x.Item2) ? x.Item2 : null });
        }))),
        (2, Check(CheckId, PaddlerId, HullId, PaddleId).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            Ensure(model, writer, x.PaddlerId, x.HullId, [x.PaddleId]);
            writer.Put(model.Checks[x.Id] = x);
        }))),
        (1, Clearance(ClearanceId, PaddlerId).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            Ensure(model, writer, x.PaddlerId, StandardHulls.All[0].Id, []);
            writer.Put(model.Clearances[x.Id] = x);
        }))),
        (1, Decision(DecisionId, PaddlerId, HullId, PaddleId).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            Ensure(model, writer, x.PaddlerId, x.HullId, [x.PaddleId]);
            writer.Put(model.Decisions[x.Id] = x);
        }))),
        (1, ClearanceId.Select(
            id => new Action<LogbookModel, LogbookWriter>(
            (model, writer) => { writer.RemoveSorenessClearance(id); model.Clearances.Remove(id); }))),
        (1, DecisionId.Select(
            id => new Action<LogbookModel, LogbookWriter>((model, writer) => { writer.RemoveDecision(id); model.Decisions.Remove(id); }))),
        (1, Note(NoteId, PaddlerId, NoteSubject.Paddler)
            .Select(
            x => new Action<LogbookModel, LogbookWriter>(
            (model, writer) => PutIf(model.Paddlers.ContainsKey(x.AboutId), model, writer, x)))),
        (1, Note(NoteId, OutingId, NoteSubject.Outing)
            .Select(
            x => new Action<LogbookModel, LogbookWriter>(
            (model, writer) => PutIf(model.Outings.ContainsKey(x.AboutId), model, writer, x)))),
        (1, Note(NoteId, CardId, NoteSubject.Card)
            .Select(
            x => new Action<LogbookModel, LogbookWriter>((model, writer) => PutIf(model.Cards.ContainsKey(x.AboutId), model, writer, x)))),
        (5, Gen.Select(Gen.Int[0, 100], Gen.Int[0, 20], Gen.OneOf<string?>(null, "a", "b"))
            .Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
            EditPiece(model, writer, x.Item1, piece => piece with { Effort = Effort.FromPoints(x.Item2 / 2.0), Notes = x.Item3 })))),
        (3, Gen.Select(Gen.Int[0, 100], Gen.Int[50, 200]).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
            EditPiece(model, writer, x.Item1, piece => piece with { HeartRate = HeartRate.FromBeatsPerMinute(x.Item2) })))),
        (2, OutingId.Select(
            id => new Action<LogbookModel, LogbookWriter>((model, writer) => { writer.RemoveOuting(id); model.RemoveOuting(id); }))),
        (1, PaddlerId.Select(
            id => new Action<LogbookModel, LogbookWriter>((model, writer) => { writer.RemovePaddler(id); model.RemovePaddler(id); }))),
        (1, CardId.Select(
            id => new Action<LogbookModel, LogbookWriter>((model, writer) => { writer.RemoveCard(id); model.RemoveCard(id); }))),
        (1, CheckId.Select(
            id => new Action<LogbookModel, LogbookWriter>(
            (model, writer) => { writer.RemoveTechniqueCheck(id); model.Checks.Remove(id); }))),
        (1, NoteId.Select(
            id => new Action<LogbookModel, LogbookWriter>((model, writer) => { writer.RemoveNote(id); model.Notes.Remove(id); }))),
        (1, HullId.Select(id => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            if (model.UsesHull(id))
                Assert.Throws<InvalidValueException>(() => writer.RemoveHull(id));
            else
            {
                writer.RemoveHull(id);
                model.RemoveHull(id);
            }
        }))),
        (1, PaddleId.Select(id => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            if (model.UsesPaddle(id))
                Assert.Throws<InvalidValueException>(() => writer.RemovePaddle(id));
            else
            {
                writer.RemovePaddle(id);
                model.RemovePaddle(id);
            }
        }))));
}
