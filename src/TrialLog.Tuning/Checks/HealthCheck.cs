using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;

namespace TrialLog.Tuning.Checks;

/// <summary>Something that may mislead in the experiment itself: which check found it, and the figures that it found.</summary>
/// <param name="Name">A short fixed name, lower case with hyphens, for programs: <c>order-tangled</c>.</param>
public sealed record HealthCheck(string Name)
{
    /// <summary>How many pieces or outings it is about; 0 where the check counts none.</summary>
    public int Count { get; init; }

    /// <summary>Of how many.</summary>
    public int Of { get; init; }

    /// <summary>A length, or a difference of lengths, inches.</summary>
    public double Inches { get; init; }

    /// <summary>A second length, inches.</summary>
    public double OtherInches { get; init; }

    /// <summary>Whether it is about the longer lengths, or goes up with time; false for the shorter, or down.</summary>
    public bool Longer { get; init; }

    /// <summary>A hull's name.</summary>
    public string? Hull { get; init; }

    /// <summary>A second hull's name.</summary>
    public string? OtherHull { get; init; }

    /// <summary>A piece: the day of its outing and its number in it.</summary>
    public (DateOnly Day, int Order)? Piece { get; init; }
}
