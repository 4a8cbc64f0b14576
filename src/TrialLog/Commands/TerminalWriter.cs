using System.Text;
using TrialLog.Application.Wording;
using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary>
/// What goes to a terminal: whatever a name, a note or a file holds, no control character (and so no escape) and no change of direction
/// gets through, only line ends and tabs; and where the terminal knows no more than ASCII, nothing else.
/// </summary>
/// <param name="to">The stream.</param>
/// <param name="strokes">Which glyphs the terminal can show.</param>
internal sealed class TerminalWriter(TextWriter to, Func<Strokes> strokes) : TextWriter
{
    private const char Replacement = '\uFFFD';

    /// <summary>The stream itself, for files that are written to the standard output and must come out as they are.</summary>
    public TextWriter Raw => to;

    /// <inheritdoc/>
    public override Encoding Encoding => strokes() == Strokes.Ascii ? Encoding.ASCII : to.Encoding;

    /// <inheritdoc/>
    public override void Write(char value) => Write(value.ToString());

    /// <inheritdoc/>
    public override void Write(string? value) =>
        to.Write(value is null ? null : strokes().Write(!value.Any(PlainText.DrivesATerminal) ? value
            : string.Concat(value.Select(c => PlainText.DrivesATerminal(c) ? Replacement : c))));

    /// <inheritdoc/>
    public override void WriteLine(string? value)
    {
        Write(value);
        to.WriteLine();
    }

    /// <inheritdoc/>
    public override void WriteLine() => to.WriteLine();

    /// <inheritdoc/>
    public override void Flush() => to.Flush();
}
