using Terminal.Gui.Drawing;
using TrialLog.Domain.Log;
using TrialLog.Plots;
using TrialLog.Reports.Pictures;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace TrialLog.Screens.Paint;

/// <summary>
/// How each tone looks. Colours are the terminal's own sixteen, and the background is always the terminal's own, so that
/// dark and light themes both stay readable; without colour, weight and underline carry what colour would.
/// </summary>
internal sealed class Palette
{
    private readonly bool _colour;

    private Palette(bool colour) => _colour = colour;

    /// <summary>The palette that the environment asks for (no-color.org).</summary>
    public static Palette Of(Func<string, string?> variable) =>
        new(string.IsNullOrEmpty(variable("NO_COLOR")) && variable("TERM") is not "dumb");

    /// <summary>
    /// Whether the terminal said that its own background is light. Of the sixteen colours cyan, green and yellow are then too pale to be
    /// read in many themes, and blue is not.
    /// </summary>
    public bool OnLight { get; set; }

    /// <summary>The look of a tone.</summary>
    public Attribute this[Tone tone] => tone switch
    {
        Tone.Dim => Look(null, TextStyle.Faint),
        Tone.Strong => Look(null, TextStyle.Bold),
        Tone.Title => Look(ColorName16.Cyan, TextStyle.Bold),
        Tone.Key => Look(ColorName16.Cyan, TextStyle.Bold),
        Tone.Best => Look(ColorName16.Green, TextStyle.Bold),
        Tone.Now => Look(ColorName16.Magenta, TextStyle.Bold),
        Tone.Band => Look(ColorName16.Cyan, TextStyle.Faint),
        Tone.Curve => Look(ColorName16.Cyan, TextStyle.None),
        Tone.Bar => Look(ColorName16.Green, TextStyle.None),
        Tone.Zone => Look(ColorName16.Yellow, TextStyle.None),
        Tone.Caution => Look(ColorName16.Magenta, TextStyle.Bold),
        Tone.Problem => Look(ColorName16.Red, TextStyle.Bold),
        Tone.Selected => Look(null, TextStyle.Reverse),
        _ => Look(null, TextStyle.None),
    };

    /// <summary>The look of a plot's ink.</summary>
    public static Tone ToneOf(Ink ink) => ink switch
    {
        Ink.Axis or Ink.Faint => Tone.Dim,
        Ink.Band => Tone.Band,
        Ink.Curve => Tone.Curve,
        Ink.Piece => Tone.Strong,
        Ink.Bar => Tone.Bar,
        Ink.Now => Tone.Now,
        Ink.Best => Tone.Best,
        Ink.Zone => Tone.Zone,
        _ => Tone.Plain,
    };

    /// <summary>The looks that the library's own views ask for by role.</summary>
    public Scheme Scheme() => new(this[Tone.Plain])
    {
        HotNormal = this[Tone.Key],
        Focus = this[Tone.Plain],
        HotFocus = this[Tone.Key],
        Active = this[Tone.Selected],
        HotActive = this[Tone.Selected],
        Highlight = this[Tone.Strong],
        Editable = Look(null, TextStyle.Underline),
        ReadOnly = this[Tone.Dim],
        Disabled = this[Tone.Dim],
    };

    private Attribute Look(ColorName16? colour, TextStyle style) =>
        new(_colour && Read(colour) is { } name ? new Color(name) : Color.None, Color.None, style);

    private ColorName16? Read(ColorName16? colour) => colour switch
    {
        ColorName16.Cyan or ColorName16.Green when OnLight => ColorName16.Blue,
        ColorName16.Yellow when OnLight => null,
        _ => colour,
    };
}
