namespace TrialLog.Domain.Values;

/// <summary>The unit that a person reads and types lengths in.</summary>
public enum LengthUnit
{
    /// <summary>Inches and their fractions.</summary>
    Inches,

    /// <summary>Centimetres.</summary>
    Centimetres,
}
