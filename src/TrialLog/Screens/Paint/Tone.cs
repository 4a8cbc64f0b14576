namespace TrialLog.Screens.Paint;

/// <summary>What a stretch of text means. A palette gives each tone a look; none relies on colour alone.</summary>
internal enum Tone
{
    Plain,
    Dim,
    Strong,
    Title,
    Key,
    Best,
    Now,
    Band,
    Curve,
    Bar,
    Zone,
    Caution,
    Problem,
    Selected,
}
