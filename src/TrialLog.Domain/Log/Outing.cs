using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>One time on the water: one paddler, one hull, one set of conditions, and its timed pieces.</summary>
public sealed record Outing
{
    /// <summary>Stable across logbooks.</summary>
    public required Guid Id { get; init; }

    /// <summary>Whose outing it is.</summary>
    public required Guid PaddlerId { get; init; }

    /// <summary>The craft.</summary>
    public required Guid HullId { get; init; }

    /// <summary>The day on the water.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>When it began, local time, where known.</summary>
    public TimeOnly? Time { get; init; }

    /// <summary>Any label; with the date and paddler it names the outing. Up to 80 characters, may be empty.</summary>
    public string Label { get; init; } = "";

    /// <summary>A coarse place, as the paddler calls it.</summary>
    public string? Place { get; init; }

    /// <summary>Wind over the outing.</summary>
    public Beaufort? Wind { get; init; }

    /// <summary>Water: flat, chop, swell, tide, as the paddler puts it.</summary>
    public string? Water { get; init; }

    /// <summary>Anything else.</summary>
    public string? Notes { get; init; }

    /// <summary>Whether the paddler did not know the lengths until the times were in.</summary>
    public bool Blind { get; init; }

    /// <summary>The pieces in the order paddled.</summary>
    public IReadOnlyList<Piece> Pieces { get; init; } = [];
}
