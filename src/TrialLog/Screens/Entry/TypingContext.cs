using TrialLog.Application.Logging;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Screens.Entry;

/// <summary>What the texts of an outing are read against.</summary>
/// <param name="Paddler">Who paddled.</param>
/// <param name="Hulls">The hulls that there are.</param>
/// <param name="Paddles">The paddles that there are.</param>
/// <param name="Outings">The paddler's outings.</param>
/// <param name="Today">The day.</param>
internal sealed record TypingContext(
    Paddler Paddler, IReadOnlyList<Hull> Hulls, IReadOnlyList<Paddle> Paddles, IReadOnlyList<Outing> Outings, DateOnly Today)
{
    private readonly Dictionary<(Guid Hull, Guid? Without), UsualSpeed> _usual = [];

    /// <summary>The lengths that a blind card's letters stand for; empty where no blind card is open.</summary>
    public IReadOnlyDictionary<string, Length> Letters { get; init; } = new Dictionary<string, Length>();

    /// <summary>The letters of a blind card; none for another.</summary>
    public static IReadOnlyDictionary<string, Length> LettersOf(GivenCard? given) =>
        given is not { Blind: true } ? new Dictionary<string, Length>()
        : BlindWords.Letters(given.Card).Zip(given.Card.Lengths).DistinctBy(pair => pair.First)
            .ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.OrdinalIgnoreCase);

    /// <summary>The unit of a bare length.</summary>
    public LengthUnit Unit => Paddler.Unit;

    /// <summary>How fast the paddler usually is in that hull, not counting the outing that is being changed.</summary>
    public UsualSpeed Usual(Guid hull, Guid? without)
    {
        if (!_usual.TryGetValue((hull, without), out UsualSpeed? usual))
            _usual[(hull, without)] = usual = UsualSpeed.Of(Outings.Where(outing => outing.Id != without), hull);
        return usual;
    }
}

/// <summary>A text that was read once: either its value or, in words, why it has none.</summary>
internal readonly record struct Reading<T>(T? Value, string? Problem)
{
    /// <summary>Reads a text with the one parser of its field.</summary>
    public static Reading<T> Of(string text, Func<string, T> parse)
    {
        try
        {
            return new(parse(text), null);
        }
        catch (InvalidValueException wrong)
        {
            return new(default, wrong.Message);
        }
    }
}

/// <summary>A place in the form to type in.</summary>
/// <param name="Part">Which field.</param>
/// <param name="Piece">Of which piece, from 0; −1 for a field of the whole outing.</param>
internal readonly record struct Spot(OutingPart Part, int Piece = -1);

/// <summary>The fields of an outing in the order in which they are visited.</summary>
internal enum OutingPart
{
    Date,
    Hull,
    Paddle,
    Wind,
    Label,
    Length,
    Distance,
    Time,
    Effort,
    Soreness,
    Notes,
}
