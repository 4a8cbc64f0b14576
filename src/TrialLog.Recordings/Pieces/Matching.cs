using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Pieces;

/// <summary>The card held against what was found.</summary>
public sealed partial record RecordedOuting
{
    // Without a card's distance, pieces further than this from the middle one are asked about. No source: chosen.
    private const double MostUneven = 0.25;

    // How much likelier one reading must make what was seen than the next, natural logarithm: seven times. No source: chosen.
    private const double Decisive = 2;

    // How much more a reading is believed whose pieces are mostly of the card's distance, or of its number, likewise. No source: chosen.
    private const double ForDistance = 2, ForNumber = 1;

    private bool corrected;
    private string? shapeDoubt;

    /// <summary>What the pieces are held against; null where nothing is known yet.</summary>
    public PieceCard? Card { get; private init; }

    /// <summary>How the stretches are read as pieces.</summary>
    public PieceShape Shape { get; private init; }

    /// <summary>Every way in which they can be read, the likelier first.</summary>
    public IReadOnlyList<PieceReading> Readings { get; private init; } = [];

    /// <summary>What the user said is right as shown.</summary>
    public IReadOnlyList<QuestionKind> Confirmed { get; private init; } = [];

    /// <summary>What must be settled before it can be saved; empty where nothing is in doubt.</summary>
    public IReadOnlyList<RecordingQuestion> Questions =>
        [.. Doubts.Concat(OfPieces()).Where(q => !q.CanBeConfirmed || !Confirmed.Contains(q.Kind))];

    /// <summary>
    /// The outing held against a card: count, distance and rest choose among the readings, unless pieces were corrected by hand.
    /// </summary>
    public RecordedOuting For(PieceCard card)
    {
        if (card == Card)
            return this;
        return corrected ? this with { Card = card } : Chosen(finder.Readings(card), card);
    }

    /// <summary>The outing read in that way, as the user says it was.</summary>
    /// <exception cref="InvalidValueException">It cannot be read so.</exception>
    public RecordedOuting As(PieceShape shape)
    {
        PieceReading reading = Readings.FirstOrDefault(r => r.Shape == shape)
            ?? throw new InvalidValueException("The stretches cannot be read so, or it makes no difference.");
        return Taking(reading, null) with { corrected = true, Before = this };
    }

    /// <summary>The outing with that question answered: it is right as shown.</summary>
    public RecordedOuting Confirm(QuestionKind kind) => this with { Confirmed = [.. Confirmed, kind] };

    private RecordedOuting Chosen(IReadOnlyList<PieceReading> readings, PieceCard? card)
    {
        RecordedOuting read = this with { Card = card, Readings = readings };
        if (card is null)
            return read.Taking(readings[0], null);
        List<PieceReading> fit = [.. readings.Where(r => r.Fits(card))];
        List<PieceReading> sound = [.. fit.Where(r => r.Against is null).OrderBy(r => r.Shape == PieceShape.Intervals ? 0 : 1)
            .ThenByDescending(r => Known(r.LogLikelihood))];
        if (sound is [var only] || (sound is [var first, ..] && first.Shape == PieceShape.Intervals && (only = first) is not null))
            return read.Taking(only, only.Unsure);
        if (sound is [_, _, ..])
            return (ByRest(sound, card) ?? ByDrift(sound) ?? ByUsual(sound, card)) is { } told
                ? read.Taking(told, null)
                : read.Taking(sound[0], $"Were these {Described(sound[0])}, or {string.Join(", or ", sound.Skip(1).Select(Described))}? " +
                    $"The recording does not tell.");
        if (fit is [var against, ..])
            return read.Taking(against, $"These can only be {Described(against)}, but {against.Against}. Is it so?");
        // What the watch itself marked is not given up for a number that fits by chance.
        return read.Taking(readings[0].Shape == PieceShape.Intervals ? readings[0] : Likeliest(readings, card), null);
    }

    // None is of the card: the one against which nothing speaks, that makes most sense of how the canoe drifted, of the card's distance and
    // of its number.
    private static PieceReading Likeliest(IReadOnlyList<PieceReading> readings, PieceCard card)
    {
        bool drifted = readings.All(r => !double.IsNaN(r.LogLikelihood));
        return readings.OrderBy(r => r.Against is null ? 0 : 1).ThenByDescending(r => (drifted ? r.LogLikelihood : 0)
            + (card.Distance is not null && ShareThatFits(r, card) > 0.5 ? ForDistance : 0)
            + (r.Kept.Count == card.Pieces ? ForNumber : 0)).ThenBy(r => Math.Abs(r.Kept.Count - card.Pieces)).First();
    }

    private static double Known(double logLikelihood) => double.IsNaN(logLikelihood) ? double.NegativeInfinity : logLikelihood;

    private static PieceReading? ByDrift(List<PieceReading> readings) =>
        readings.TrueForAll(r => !double.IsNaN(r.LogLikelihood)) && readings[0].LogLikelihood - readings[1].LogLikelihood >= Decisive
            ? readings[0] : null;

    private static PieceReading? ByUsual(List<PieceReading> readings, PieceCard card) =>
        readings.FindAll(r => r.Kept.All(p => card.IsUsual(p.Distance))) is [var only] ? only : null;

    private static double ShareThatFits(PieceReading reading, PieceCard card) =>
        reading.Kept is { Count: > 0 } kept ? kept.Count(p => card.Fits(p.Distance)) / (double)kept.Count : 0;

    // The rests of the card tell where those of one reading are about as long and those of the others are not.
    private static PieceReading? ByRest(List<PieceReading> readings, PieceCard card)
    {
        if (card.Rest is not { } rest)
            return null;
        List<PieceReading> near = readings.FindAll(r => Off(r) is < 2);
        return near is [var only] && readings.TrueForAll(r => r == only || Off(r) > 3) ? only : null;

        double Off(PieceReading reading)
        {
            IReadOnlyList<PieceProposal> kept = reading.Kept;
            if (kept.Count < 2)
                return double.NaN;
            double[] rests = [.. kept.Zip(kept.Skip(1), (a, b) => Math.Max(1, (b.Start - a.End).TotalSeconds)).Order()];
            double ratio = rests[rests.Length / 2] / rest.Seconds;
            return Math.Max(ratio, 1 / ratio);
        }
    }

    private RecordedOuting Taking(PieceReading reading, string? doubt) =>
        this with { Shape = reading.Shape, Proposals = reading.Proposals, shapeDoubt = doubt };

    private IEnumerable<RecordingQuestion> OfPieces()
    {
        if (Card is not { } card)
            yield break;
        IReadOnlyList<PieceProposal> kept = Kept;
        if (kept.Count != card.Pieces)
        {
            string says = $"{(card.Distance is null ? "There are lengths for" : "The card has")} {Counted(card.Pieces)}, the " +
                $"recording shows {kept.Count}";
            yield return new RecordingQuestion(QuestionKind.Count, kept.Count > card.Pieces
                ? $"{says}: drop or merge those that are none of the card's, or say the length of each."
                : $"{says}: add, keep or split the missing ones, or say the length of each that was paddled.", CanBeConfirmed: false);
            yield break;
        }

        if (kept.Count == 0)
            yield break;
        double shortest = kept.Min(p => p.Distance.Metres), longest = kept.Max(p => p.Distance.Metres);
        if (card.Distance is { } meant && !kept.All(p => card.Fits(p.Distance)))
            yield return new RecordingQuestion(
                QuestionKind.Distance, $"The card has pieces of {meant}; these are {shortest:0} to {longest:0} m. Are " +
                    $"they the card's pieces?", CanBeConfirmed: true);
        else if (card.Distance is null && IsUneven(kept))
            yield return new RecordingQuestion(
                QuestionKind.Distance, $"The pieces are of very different lengths, {shortest:0} to {longest:0} m. Are they the " +
                    $"ones that were paddled?", CanBeConfirmed: true);
        if (shapeDoubt is { } doubt && !corrected)
            yield return new RecordingQuestion(QuestionKind.Shape, doubt, CanBeConfirmed: true);
    }

    private static bool IsUneven(IReadOnlyList<PieceProposal> kept)
    {
        double[] metres = [.. kept.Select(p => p.Distance.Metres).Order()];
        double middle = metres[metres.Length / 2];
        return metres.Any(m => Math.Abs(m / middle - 1) > MostUneven);
    }

    private static string Described(PieceReading reading)
    {
        double metres = reading.Kept.Count > 0 ? reading.Kept.Average(p => p.Distance.Metres) : 0;
        string count = $"{Counted(reading.Kept.Count)} of about {metres:0} m";
        return reading.Shape switch
        {
            PieceShape.RoundTrips => $"{count} out and back",
            PieceShape.EasyWayBack => $"{count} one way with an easy way back",
            PieceShape.OneWay => $"{count} one way",
            _ => $"{count} as the watch marked them",
        };
    }

    private static string Counted(int pieces) => pieces == 1 ? "1 piece" : $"{pieces} pieces";
}
