using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Sizing;

/// <summary>What a paddler hands to a maker or takes to the saw: a length for every hull and blade, and how to get there.</summary>
/// <param name="Paddler">The paddler's name.</param>
/// <param name="Date">The day it was drawn up.</param>
/// <param name="Unit">The unit it is written in.</param>
/// <param name="Lines">One line for each hull and blade.</param>
/// <param name="Steering">Steering paddles, which are not ordered on the tuning.</param>
public sealed record OrderSheet(
    string Paddler, DateOnly Date, LengthUnit Unit, IReadOnlyList<OrderLine> Lines, IReadOnlyList<OrderSheetSteering> Steering)
{
    /// <summary>How far a maker or a saw may be off, inches either way: half a step. Chosen, no source.</summary>
    public const double ToleranceInches = 0.125;

    /// <summary>What stands in place of every line while soreness stands (<see cref="Wording.RestFirst"/>); null where none does.</summary>
    public IReadOnlyList<string>? RestFirst { get; init; }

    /// <summary>The lines ready to be ordered come first, then by hull and blade; their order in the input does not matter.</summary>
    public static OrderSheet Of(
        string paddler, DateOnly date, LengthUnit unit, IEnumerable<OrderLine> lines, IEnumerable<OrderSheetSteering> steering) => new(
            paddler, date, unit,
            [.. lines.OrderBy(line => !line.DiminishingReturns).ThenBy(line => line.Pieces == 0)
                .ThenBy(line => line.Hull, StringComparer.Ordinal).ThenBy(line => line.Paddle, StringComparer.Ordinal)],
            [.. steering.OrderBy(line => line.Hull, StringComparer.Ordinal).ThenBy(line => line.Paddle, StringComparer.Ordinal)]);

    /// <summary>What to tell the maker, whichever line is ordered.</summary>
    public IReadOnlyList<string> ForTheMaker =>
    [
        "Overall length is from the tip of the blade to the top of the grip, in a straight line, grip fitted.",
        "Blade length is from the tip to the throat. If your blade of this name is longer or shorter than stated, tell me: the paddle " +
            "then changes by as much (common practice, no source).",
        $"Tolerance: {Say.Fraction(ToleranceInches, Unit)} either way; if it must be off, then long, never short.",
        "Build it to the order length; leave the grip unglued or use hot-melt glue, so that I can cut the grip end.",
    ];

    /// <summary>How to come down from the order length to the length to cut to.</summary>
    public IReadOnlyList<string> Cutting =>
    [
        $"Cut long first. Paddle the order length, then take off {Say.Fraction(0.25, Unit)} at a time, at the grip end; stop at the " +
            $"cut length, or earlier if it feels right.",
        "Measure the whole paddle before every cut, grip on. Wear eye protection and a dust mask, and bind the shaft with " +
            "tape where you saw it.",
    ];

    /// <summary>Whether there is anything to order or to cut: not while it hurts.</summary>
    public bool Orders => RestFirst is null && (Lines.Count > 0 || Steering.Count > 0);

    /// <summary>Cautions that go with the sheet.</summary>
    public static readonly IReadOnlyList<string> Cautions =
    [
        "Shoulder, elbow or back pain is a reason to stop, not a length: ask a clinician before you order longer.",
        "A full-size blade on an over-long shaft is more than many paddlers can carry; when in doubt, take less blade.",
        "This is no coaching or medical advice; a qualified coach decides.",
        Wording.Cautions.Water,
    ];
}

/// <summary>A steering paddle on the order sheet.</summary>
/// <param name="Hull">The hull's name.</param>
/// <param name="Paddle">The paddle's name.</param>
/// <param name="Proposal">The length to begin with.</param>
public sealed record OrderSheetSteering(string Hull, string Paddle, SteeringProposal Proposal);
