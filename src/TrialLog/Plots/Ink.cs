using TrialLog.Domain.Log;

namespace TrialLog.Plots;

/// <summary>
/// What a cell of a picture shows. Where it is shown, each has a colour; without colour the glyph alone tells them apart.
/// </summary>
internal enum Ink
{
    /// <summary>Nothing.</summary>
    Blank,

    /// <summary>Axes and ticks.</summary>
    Axis,

    /// <summary>Words and numbers.</summary>
    Label,

    /// <summary>The band of a curve.</summary>
    Band,

    /// <summary>A curve.</summary>
    Curve,

    /// <summary>A piece that counts in full.</summary>
    Piece,

    /// <summary>A piece that hardly counts.</summary>
    Faint,

    /// <summary>A bar of probability.</summary>
    Bar,

    /// <summary>Where the paddler is now.</summary>
    Now,

    /// <summary>The best length.</summary>
    Best,

    /// <summary>Where no difference is worthwhile.</summary>
    Zone,
}
