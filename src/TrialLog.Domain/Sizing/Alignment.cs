using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Sizing;

/// <summary>
/// Puts lengths in every hull and with every blade on one scale: inches above the start length, once the hull's seat
/// height and the blade's length are allowed for. aligned = length − start − seat-height offset − (blade − reference blade).
/// </summary>
public sealed class Alignment
{
    private readonly IReadOnlyDictionary<Guid, double> _seatHeightOffsets;

    /// <summary>Creates the scale of one paddler.</summary>
    /// <param name="start">The paddler's start length: solo canoe, reference blade.</param>
    /// <param name="hulls">Every hull that may be asked for.</param>
    public Alignment(Length start, IEnumerable<Hull> hulls)
    {
        Start = start;
        _seatHeightOffsets = SeatHeightRule.OffsetsInches(hulls);
    }

    /// <summary>The start length that stands at zero.</summary>
    public Length Start { get; }

    /// <summary>Inches a paddle in that hull is longer than in the solo canoe.</summary>
    /// <exception cref="KeyNotFoundException">The hull was not given to the constructor.</exception>
    public double SeatHeightOffsetInches(Hull hull) => _seatHeightOffsets[hull.Id];

    /// <summary>Inches above the start length of a paddle so set, in that hull with that blade length.</summary>
    public double Align(Length length, Hull hull, Length blade) => length.InchesMoreThan(Start) - Shift(hull, blade);

    /// <summary>
    /// The overall length in inches whose aligned length is <paramref name="aligned"/>; the inverse of <see cref="Align"/>.
    /// </summary>
    public double LengthInches(double aligned, Hull hull, Length blade) => Start.Inches + aligned + Shift(hull, blade);

    /// <summary>A length in one hull with one blade, carried over to another hull and blade.</summary>
    /// <exception cref="InvalidValueException">The result is not between 0 and 10 m.</exception>
    public Length Carried(Length length, Hull from, Length fromBlade, Hull to, Length toBlade) =>
        length.PlusInches(Shift(to, toBlade) - Shift(from, fromBlade));

    /// <summary>
    /// How far the two rules may be off when a length is carried over, inches, one standard deviation; 0 where hull and blade stay.
    /// </summary>
    public static double CarriedSpreadInches(Hull from, Length fromBlade, Hull to, Length toBlade) => Math.Sqrt(
        (from.Id == to.Id ? 0 : 2 * SeatHeightRule.SpreadInches * SeatHeightRule.SpreadInches)
        + Math.Pow(ExposedShaftRule.SpreadPerInch * toBlade.InchesMoreThan(fromBlade), 2));

    private double Shift(Hull hull, Length blade) => SeatHeightOffsetInches(hull) + ExposedShaftRule.OffsetInches(blade);
}
