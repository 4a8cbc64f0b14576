using TrialLog.Application.Logging;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Screens.Entry;

/// <summary>
/// An outing being typed: its texts, what is wrong with them, and every step of the typing to go back by. It knows no terminal.
/// A text is read by one parser alone, so that what is accepted as it is typed is the value that is saved.
/// </summary>
internal sealed class TypedOuting
{
    /// <summary>How many steps back are kept.</summary>
    public const int MostSteps = 500;

    private static readonly OutingPart[] PieceParts = [OutingPart.Length, OutingPart.Distance, OutingPart.Time, OutingPart.Effort];

    private readonly List<OutingDraft> _before = [];
    private readonly List<OutingDraft> _after = [];

    /// <param name="start">What stands there at first.</param>
    /// <param name="logged">The logged outing that is changed; null for a new one.</param>
    /// <param name="print">The logged outing's fingerprint when the change was begun; empty for a new one.</param>
    public TypedOuting(OutingDraft start, Outing? logged = null, string print = "")
    {
        (Start, Draft, Logged, Print) = (start, start, logged, print);
    }

    /// <summary>What stood there at first.</summary>
    public OutingDraft Start { get; private set; }

    /// <summary>What stands there now.</summary>
    public OutingDraft Draft { get; private set; }

    /// <summary>The logged outing that is changed; null for a new one.</summary>
    public Outing? Logged { get; }

    /// <summary>The logged outing's fingerprint when the change was begun.</summary>
    public string Print { get; }

    /// <summary>Whether anything differs from what stood there at first.</summary>
    public bool IsTouched => !Same(Draft, Start);

    /// <summary>Whether there is a step to go back.</summary>
    public bool CanUndo => _before.Count > 0;

    /// <summary>Every place to type in, in the order in which they are visited.</summary>
    public IEnumerable<Spot> Spots =>
    [
        .. new[] { OutingPart.Date, OutingPart.Hull, OutingPart.Paddle, OutingPart.Wind, OutingPart.Label }.Select(part => new Spot(part)),
        .. Enumerable.Range(0, Draft.Pieces.Count).SelectMany(piece => PieceParts.Select(part => new Spot(part, piece))),
        new(OutingPart.Soreness), new(OutingPart.Notes),
    ];

    /// <summary>The text at a place. A hull and a paddle stand by their id.</summary>
    public string this[Spot at] => at.Part switch
    {
        OutingPart.Date => Draft.Date,
        OutingPart.Hull => Draft.Hull,
        OutingPart.Paddle => Draft.Paddle,
        OutingPart.Wind => Draft.Wind,
        OutingPart.Label => Draft.Label,
        OutingPart.Soreness => Draft.Soreness,
        OutingPart.Notes => Draft.Notes,
        OutingPart.Length => Draft.Pieces[at.Piece].Length,
        OutingPart.Distance => Draft.Pieces[at.Piece].Distance,
        OutingPart.Time => Draft.Pieces[at.Piece].Time,
        _ => Draft.Pieces[at.Piece].Effort,
    };

    /// <summary>The draft that an outing of the log makes.</summary>
    public static OutingDraft OfLogged(Outing outing, LengthUnit unit) => new(
        outing.PaddlerId, outing.Id, DateText.Write(outing.Date), outing.HullId.ToString(),
            outing.Pieces.Count > 0 ? outing.Pieces[0].PaddleId.ToString() : "",
        outing.Wind?.ToString() ?? "", outing.Label,
        // The worst that was told: it must not be played down by looking at it.
        outing.Pieces.Select(piece => piece.Soreness).Where(sore => sore is not null).MaxBy(sore => sore!.Value.Halves)?.ToString() ?? "",
        outing.Notes ?? "",
        [.. outing.Pieces.Select(piece =>
            new PieceDraft(piece.Id, TextForms.Length(unit).Write(piece.Length), piece.Distance.ToString(), piece.Time.ToString(),
            piece.Effort?.ToString() ?? ""))]);

    /// <summary>The draft of a card that is to be paddled, or of one piece where there is none.</summary>
    /// <param name="card">The card.</param>
    /// <param name="paddler">Whose it is.</param>
    /// <param name="hull">The hull.</param>
    /// <param name="paddle">The paddle.</param>
    /// <param name="today">The day.</param>
    /// <param name="blind">Whether letters stand for the lengths.</param>
    public static OutingDraft OfCard(TrialCard? card, Paddler paddler, Hull hull, Paddle paddle, DateOnly today, bool blind = false) => new(
        paddler.Id, null, DateText.Write(today), hull.Id.ToString(), paddle.Id.ToString(), "", "", "", "",
        card is null or { Lengths.Count: 0 }
            ? [new PieceDraft(null, "", "1 km", "", "")]
            : [.. card.Lengths.Zip(BlindWords.Letters(card), (length, letter) => new PieceDraft(
                null, blind ? letter : TextForms.Length(paddler.Unit).Write(length), card.Distance.ToString(), "", ""))]);

    /// <summary>Goes on with what was kept of it.</summary>
    public void Resume(OutingDraft draft)
    {
        Draft = draft;
        _before.Clear();
        _after.Clear();
    }

    /// <summary>Puts another text in a place.</summary>
    public void Type(Spot at, string text)
    {
        if (this[at] == text)
            return;
        Step(at.Part switch
        {
            OutingPart.Date => Draft with { Date = text },
            OutingPart.Hull => Draft with { Hull = text },
            OutingPart.Paddle => Draft with { Paddle = text },
            OutingPart.Wind => Draft with { Wind = text },
            OutingPart.Label => Draft with { Label = text },
            OutingPart.Soreness => Draft with { Soreness = text },
            OutingPart.Notes => Draft with { Notes = text },
            OutingPart.Length => WithPiece(at.Piece, piece => piece with { Length = text }),
            OutingPart.Distance => WithPiece(at.Piece, piece => piece with { Distance = text }),
            OutingPart.Time => WithPiece(at.Piece, piece => piece with { Time = text }),
            _ => WithPiece(at.Piece, piece => piece with { Effort = text }),
        });
    }

    /// <summary>Adds a piece after that one, as long and as far as it. Gives where to type on.</summary>
    public Spot AddPiece(int after)
    {
        int at = Math.Clamp(after, 0, Draft.Pieces.Count - 1);
        PieceDraft added = Draft.Pieces[at] with { Piece = null, Time = "", Effort = "" };
        Step(Draft with { Pieces = [.. Draft.Pieces.Take(at + 1), added, .. Draft.Pieces.Skip(at + 1)] });
        return new(OutingPart.Time, at + 1);
    }

    /// <summary>Takes a piece away; the last one stays. Gives where to type on.</summary>
    public Spot DropPiece(int piece)
    {
        if (Draft.Pieces.Count > 1)
            Step(Draft with { Pieces = [.. Draft.Pieces.Where((_, index) => index != piece)] });
        return new(OutingPart.Time, Math.Min(piece, Draft.Pieces.Count - 1));
    }

    /// <summary>Puts what stood there at first in place of what was typed.</summary>
    public void Clear() => Step(Start);

    /// <summary>Another card is to be paddled: it stands there, if nothing was typed over the one before.</summary>
    public void Plan(OutingDraft planned)
    {
        if (IsTouched)
            return;
        (Start, Draft) = (planned, planned);
    }

    /// <summary>Goes a step back. Gives where something changed; null where there is none.</summary>
    public Spot? Undo() => Go(_before, _after);

    /// <summary>Does again what was undone last. Gives where something changed; null where there is none.</summary>
    public Spot? Redo() => Go(_after, _before);

    /// <summary>The hull in which it was paddled.</summary>
    public Hull Hull(TypingContext context) => context.Hulls.FirstOrDefault(hull => hull.Id.ToString() == Draft.Hull) ?? context.Hulls[0];

    /// <summary>The paddle of a piece: as chosen, or each piece's own as long as nobody chose another.</summary>
    public Paddle PaddleOf(TypingContext context, int piece)
    {
        Guid? own = Draft.Paddle == Start.Paddle ? LoggedPiece(piece)?.PaddleId : null;
        return context.Paddles.FirstOrDefault(paddle => paddle.Id == own)
            ?? context.Paddles.FirstOrDefault(paddle => paddle.Id.ToString() == Draft.Paddle) ?? context.Paddles[0];
    }

    /// <summary>What is wrong with the text at a place, said as it is typed; null if nothing, or if nothing stands there.</summary>
    public string? Typo(Spot at, TypingContext context)
    {
        if (string.IsNullOrWhiteSpace(this[at]))
            return null;
        return at.Part switch
        {
            OutingPart.Date => Date(context).Problem,
            OutingPart.Wind => Wind().Problem,
            OutingPart.Label => Label().Problem,
            OutingPart.Soreness => Soreness().Problem,
            OutingPart.Notes => Notes().Problem,
            OutingPart.Length => Length(at.Piece, context).Problem,
            OutingPart.Distance => Distance(at.Piece).Problem,
            OutingPart.Time => Time(at.Piece, context).Problem,
            OutingPart.Effort => Effort(at.Piece).Problem,
            _ => null,
        };
    }

    /// <summary>What stands in the way of saving at a place; null if nothing.</summary>
    public string? Problem(Spot at, TypingContext context) => !string.IsNullOrWhiteSpace(this[at]) ? Typo(at, context) : at.Part switch
    {
        OutingPart.Date => "The outing has no date.",
        OutingPart.Length => "This piece has no length.",
        OutingPart.Distance => "This piece has no distance.",
        OutingPart.Time => "This piece has no time yet.",
        _ => null,
    };

    /// <summary>The piece, where all of it can be read; else null.</summary>
    public PieceEntry? Piece(int piece, TypingContext context) =>
        PieceParts.Any(part => Problem(new Spot(part, piece), context) is not null)
        ? null
        : new PieceEntry(PaddleOf(context, piece), Length(piece, context).Value, Distance(piece).Value, Time(piece, context).Value)
        {
            Effort = Effort(piece).Value,
            // What was told of each piece stays, as long as nobody tells something else.
            Soreness = Draft.Soreness == Start.Soreness && Logged is not null ? LoggedPiece(piece) is { } own ? own.Soreness
                : Soreness().Value : Soreness().Value,
        };

    /// <summary>How far a piece's time is off the paddler's usual, in words; null where nothing is odd.</summary>
    public string? Doubt(PieceEntry piece, TypingContext context) =>
        context.Usual(Hull(context).Id, Draft.Editing).Doubt(piece.Distance, piece.Time);

    /// <summary>The whole outing, or the first place that stands in its way and why.</summary>
    public (OutingEntry? Entry, Spot Wrong, string Problem) Read(TypingContext context)
    {
        foreach (Spot spot in Spots)
        {
            if (Problem(spot, context) is { } problem)
                return (null, spot, spot.Piece < 0 ? problem : $"Piece {spot.Piece + 1}: {problem}");
        }

        return (new OutingEntry
        {
            Paddler = context.Paddler,
            Hull = Hull(context),
            Date = Date(context).Value,
            Label = Label().Value ?? "",
            Wind = Wind().Value,
            Notes = Notes().Value,
            Pieces = [.. Enumerable.Range(0, Draft.Pieces.Count).Select(piece => Piece(piece, context)!)],
        }, default, "");
    }

    /// <summary>The day that a date typed in words means, such as <c>sat</c> or <c>-1</c>; null where it is written out or wrong.</summary>
    public DateOnly? DayMeant(TypingContext context) =>
        Date(context) is { Problem: null, Value: var day } && $"{day:yyyy-MM-dd}" != Draft.Date.Trim() ? day : null;

    private Reading<DateOnly> Date(TypingContext context) => Reading<DateOnly>.Of(Draft.Date, text =>
    {
        DateOnly day = TextForms.Date(context.Today).Read(text);
        return Plausible.ProblemWithDate(day, context.Today) is { } problem ? throw new InvalidValueException(problem) : day;
    });

    private Reading<Beaufort?> Wind() => Optional<Beaufort?>(Draft.Wind, text => TextForms.Wind.Read(text));

    private Reading<string> Label() => Optional(Draft.Label, text => NameRule.Checked(text, "label"));

    private Reading<Soreness?> Soreness() => Optional<Soreness?>(Draft.Soreness, text => TextForms.Soreness.Read(text));

    private Reading<string> Notes() => Optional(Draft.Notes, text =>
        NoteRule.TryCheck(text.Trim(), "note", out string? note, out string? problem) ? note! : throw new InvalidValueException(problem));

    private Reading<Length> Length(int piece, TypingContext context) => Reading<Length>.Of(Draft.Pieces[piece].Length, text =>
    {
        if (context.Letters.TryGetValue(text.Trim(), out Length hidden))
            return hidden;
        Length length = TextForms.Length(context.Unit).Read(text);
        return OutingProblems.OfLength(PaddleOf(context, piece), length) is { } problem ? throw new InvalidValueException(problem) : length;
    });

    private Reading<Distance> Distance(int piece) =>
        Reading<Distance>.Of(Draft.Pieces[piece].Distance, text => TextForms.Distance.Read(text));

    private Reading<PieceTime> Time(int piece, TypingContext context) => Reading<PieceTime>.Of(Draft.Pieces[piece].Time, text =>
    {
        Reading<Distance> distance = Distance(piece);
        Distance? over = distance.Problem is null ? distance.Value : null;
        PieceTime time = TimeText.Read(text, over, context.Usual(Hull(context).Id, Draft.Editing).Fits);
        return over is { } known && Domain.Log.Piece.ProblemWithSpeed(known, time) is { } problem
            ? throw new InvalidValueException(problem) : time;
    });

    private Reading<Effort?> Effort(int piece) => Optional<Effort?>(Draft.Pieces[piece].Effort, text => TextForms.Effort.Read(text));

    private static Reading<T> Optional<T>(string text, Func<string, T> parse) =>
        string.IsNullOrWhiteSpace(text) ? default : Reading<T>.Of(text, parse);

    private Piece? LoggedPiece(int piece) => Logged?.Pieces.FirstOrDefault(known => known.Id == Draft.Pieces[piece].Piece);

    private OutingDraft WithPiece(int piece, Func<PieceDraft, PieceDraft> change) =>
        Draft with { Pieces = [.. Draft.Pieces.Select((known, index) => index == piece ? change(known) : known)] };

    private void Step(OutingDraft next)
    {
        if (Same(next, Draft))
            return;
        _before.Add(Draft);
        if (_before.Count > MostSteps)
            _before.RemoveAt(0);
        _after.Clear();
        Draft = next;
    }

    private Spot? Go(List<OutingDraft> from, List<OutingDraft> to)
    {
        if (from.Count == 0)
            return null;
        OutingDraft was = Draft;
        to.Add(was);
        Draft = from[^1];
        from.RemoveAt(from.Count - 1);
        var before = new TypedOuting(was);
        List<Spot> spots = [.. Spots];
        int changed = spots.FindIndex(spot => spot.Piece >= was.Pieces.Count || before[spot] != this[spot]);
        return changed < 0 ? new Spot(OutingPart.Time, Math.Min(was.Pieces.Count, Draft.Pieces.Count) - 1) : spots[changed];
    }

    private static bool Same(OutingDraft a, OutingDraft b) =>
        a with { Pieces = b.Pieces } == b && a.Pieces.SequenceEqual(b.Pieces);
}
