using CsCheck;
using TrialLog.Application.Logging;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Screens.Entry;
using OutingDraft = TrialLog.Application.Logging.OutingDraft;

namespace TrialLog.Tests.Screens;

/// <summary>An outing being typed, without a terminal: what is accepted is what is saved, and every step can be gone back.</summary>
public class TypedOutingTests
{
    private static readonly Paddle Reed = new()
    {
        Id = new Guid(1, 0, 0, new byte[8]), Name = "Reed 44", Blade = Length.FromInches(18.5),
        Shortest = Length.FromInches(47), Longest = Length.FromInches(53), Step = Length.FromInches(0.25),
    };

    private static readonly Paddle Heron = Reed with { Id = new Guid(2, 0, 0, new byte[8]), Name = "Heron" };

    private static readonly TypingContext Context = new(
        new Paddler { Id = new Guid(3, 0, 0, new byte[8]), Name = "Ilse Maro" }, StandardHulls.All, [Reed, Heron], [Logged()],
            new DateOnly(2026, 11, 25));

    private static readonly OutingDraft Card = TypedOuting.OfCard(
        new TrialCard
        {
            Lengths = [.. new[] { 49.25, 50.75, 50.75, 49.25 }.Select(Length.FromInches)],
            Distance = Distance.FromMetres(1000), Effort = Effort.FromPoints(6), Rest = PieceTime.FromSeconds(180),
        },
        Context.Paddler, StandardHulls.All[0], Reed, Context.Today);

    private static readonly string[] Texts =
    [
        "", " ", "5:32", "532", "5.32", "5:3x", "332s", "F4", "4 Bft", "13", "4", "6.5", "11", "49 3/4", "49¾", "126.4cm", "60", "1km",
            "0.62mi", "abc",
        "sat", "24 nov", "-1", "2026-11-24", "2027-01-01", "3", "“”", "evening",
    ];

    /// <summary>Something done to the form: a text typed somewhere, a piece added or dropped, a step back or again, all cleared.</summary>
    private static readonly Gen<(int What, int Where, int Piece, string Text)> Doing =
        Gen.Select(Gen.Int[0, 11], Gen.Int[0, 10], Gen.Int[0, 7], Gen.Int[0, Texts.Length - 1].Select(index => Texts[index]));

    [Fact]
    public void What_the_form_accepts_is_saved_and_what_it_refuses_is_not_whatever_is_typed() => Doing.Array[0, 60].Sample(all =>
        {
            var typed = new TypedOuting(Card);
            foreach ((int what, int where, int piece, string text) in all)
                Do(typed, what, where, piece, text);
            (OutingEntry? entry, Spot wrong, string problem) = typed.Read(Context);
            Assert.Equal(entry is null, typed.Spots.Any(spot => typed.Problem(spot, Context) is not null));
            if (entry is null)
            {
                Assert.Contains(typed.Problem(wrong, Context)!, problem);
                return;
            }

            Assert.Equal(typed.Draft.Pieces.Count, entry.Pieces.Count);
            Assert.All(entry.Pieces, piece => Assert.Null(LogOuting.ProblemWith(piece)));
            Assert.Null(Plausible.ProblemWithDate(entry.Date, Context.Today));
            Assert.Equal(string.IsNullOrWhiteSpace(typed.Draft.Wind), entry.Wind is null);
        },
        iter: 3000);

    [Fact]
    public void Going_back_step_by_step_ends_where_it_began_and_going_on_again_where_it_was() => Doing.Array[0, 150].Sample(all =>
        {
            var typed = new TypedOuting(Card);
            foreach ((int what, int where, int piece, string text) in all.Where(step => step.What is not (9 or 10)))
                Do(typed, what, where, piece, text);
            string last = Written(typed.Draft);
            int steps = 0;
            while (typed.Undo() is { } spot)
            {
                steps++;
                Assert.True(spot.Piece < typed.Draft.Pieces.Count);
            }

            Assert.Equal(Written(Card), Written(typed.Draft));
            Assert.False(typed.IsTouched);
            for (int step = 0; step < steps; step++)
                Assert.NotNull(typed.Redo());
            Assert.Equal(last, Written(typed.Draft));
        },
        iter: 500);

    [Fact]
    public void A_hundred_steps_and_more_can_be_gone_back()
    {
        var typed = new TypedOuting(Card);
        for (int step = 1; step <= 150; step++)
            typed.Type(new Spot(OutingPart.Notes), new string('x', step));
        for (int step = 1; step <= 150; step++)
            Assert.NotNull(typed.Undo());
        Assert.Null(typed.Undo());
    }

    [Theory]
    [InlineData("F4", 4)]
    [InlineData("4 Bft", 4)]
    [InlineData("12", 12)]
    public void Wind_is_saved_as_it_was_accepted(string text, int number)
    {
        TypedOuting typed = Complete();
        typed.Type(new Spot(OutingPart.Wind), text);
        Assert.Equal(number, typed.Read(Context).Entry!.Wind!.Value.Number);
    }

    [Theory]
    [InlineData("532", "1 km", "5:32")]
    [InlineData("5.32", "1 km", "5:32")]
    [InlineData("1132", "2 km", "11:32")]
    [InlineData("332s", "1 km", "5:32")]
    public void Quick_fingers_are_understood_where_only_one_time_makes_sense(string text, string distance, string time)
    {
        TypedOuting typed = Complete();
        typed.Type(new Spot(OutingPart.Distance, 0), distance);
        typed.Type(new Spot(OutingPart.Time, 0), text);
        Assert.Equal(time, typed.Read(Context).Entry!.Pieces[0].Time.ToString());
    }

    [Fact]
    public void Where_two_times_make_sense_it_is_asked()
    {
        TypedOuting typed = Complete();
        typed.Type(new Spot(OutingPart.Distance, 0), "1.8 km");
        typed.Type(new Spot(OutingPart.Time, 0), "830");
        Assert.Contains("may be 8:30 or 830 seconds", typed.Read(Context).Problem);
    }

    [Fact]
    public void What_was_told_of_each_piece_stays_until_something_else_is_told()
    {
        Outing logged = Logged();
        var typed = new TypedOuting(TypedOuting.OfLogged(logged, LengthUnit.Inches), logged, "");
        Assert.Equal("5", typed.Draft.Soreness);
        OutingEntry untouched = typed.Read(Context).Entry!;
        Assert.Equal(logged.Pieces.Select(piece => (piece.Soreness, piece.PaddleId)),
            untouched.Pieces.Select(piece => (piece.Soreness, piece.Paddle.Id)));
        typed.Type(new Spot(OutingPart.Soreness), "2");
        typed.Type(new Spot(OutingPart.Paddle), $"{Heron.Id}");
        Assert.All(typed.Read(Context).Entry!.Pieces,
            piece => Assert.Equal((Soreness.FromPoints(2), Heron.Id), (piece.Soreness, piece.Paddle.Id)));
    }

    [Fact]
    public void Another_card_takes_the_place_of_one_that_nobody_typed_over_and_of_no_other()
    {
        var typed = new TypedOuting(Card with { Pieces = [Card.Pieces[0]] });
        typed.Plan(Card);
        Assert.Equal(4, typed.Draft.Pieces.Count);
        typed.Type(new Spot(OutingPart.Time, 0), "5");
        typed.Plan(Card with { Pieces = [Card.Pieces[0]] });
        Assert.Equal((4, "5"), (typed.Draft.Pieces.Count, typed.Draft.Pieces[0].Time));
    }

    private static void Do(TypedOuting typed, int what, int where, int piece, string text)
    {
        int at = piece % typed.Draft.Pieces.Count;
        switch (what)
        {
            case 7:
                typed.AddPiece(at);
                break;
            case 8:
                typed.DropPiece(at);
                break;
            case 9:
                typed.Undo();
                break;
            case 10:
                typed.Redo();
                break;
            case 11 when where == 0:
                typed.Clear();
                break;
            default:
                var part = (OutingPart)where;
                typed.Type(
                    part is >= OutingPart.Length and <= OutingPart.Effort ? new Spot(part, at) : new Spot(part),
                    part == OutingPart.Hull ? $"{StandardHulls.All[piece % 5].Id}" : part == OutingPart.Paddle
                        ? $"{(piece % 2 == 0 ? Reed : Heron).Id}" : text);
                break;
        }
    }

    private static TypedOuting Complete()
    {
        var typed = new TypedOuting(Card);
        for (int piece = 0; piece < 4; piece++)
            typed.Type(new Spot(OutingPart.Time, piece), "5:32");
        return typed;
    }

    private static Outing Logged() => new()
    {
        Id = new Guid(9, 0, 0, new byte[8]),
        PaddlerId = new Guid(3, 0, 0, new byte[8]),
        HullId = StandardHulls.All[0].Id,
        Date = new DateOnly(2026, 11, 20),
        Pieces =
        [
            .. new[] { (Reed.Id, 1), (Heron.Id, 5), (Reed.Id, 0) }.Select((told, index) => new Piece
            {
                Id = new Guid(10 + index, 0, 0, new byte[8]), Order = index + 1, PaddleId = told.Id, Length = Length.FromInches(49),
                Distance = Distance.FromMetres(1000), Time = PieceTime.FromSeconds(332), Soreness = Soreness.FromPoints(told.Item2),
            }),
        ],
    };

    private static string Written(OutingDraft draft) => $"{draft with { Pieces = [] }}{string.Join(';', draft.Pieces)}";
}
