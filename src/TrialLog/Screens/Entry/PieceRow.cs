using Terminal.Gui.ViewBase;
using TrialLog.Application.Logging;
using TrialLog.Application.Text;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Documents;
using TrialLog.Screens.Base;
using TrialLog.Screens.Forms;

namespace TrialLog.Screens.Entry;

/// <summary>One piece being typed: length, distance, time, effort.</summary>
internal sealed class PieceRow
{
    private readonly Func<LengthUnit> _unit;

    public PieceRow(Func<LengthUnit> unit, PieceDraft draft)
    {
        _unit = unit;
        PieceId = draft.Piece;
        Length = new Field(draft.Length, text => Domain.Values.Length.TryParse(text, _unit(), out _, out string? problem) ? null : problem, "This piece has no length.");
        Distance = new Field(draft.Distance, text => Domain.Values.Distance.TryParse(text, out _, out string? problem) ? null : problem, "This piece has no distance.");
        Time = new Field(draft.Time, text => PieceTime.TryParseByHand(text, out _, out string? problem) ? null : problem, "This piece has no time yet.");
        Effort = new Field(draft.Effort, text => Domain.Values.Effort.TryParse(text, out _, out string? problem) ? null : problem);
    }

    /// <summary>The columns in which the fields begin, and how wide they are.</summary>
    public static readonly IReadOnlyList<(string Heading, int Column, int Width)> Columns =
        [("length", 6, 9), ("distance", 17, 9), ("time", 28, 9), ("effort", 39, 5)];

    /// <summary>Where words on the piece begin.</summary>
    public const int WordsColumn = 46;

    /// <summary>Which piece of an outing that is changed; null for a new one.</summary>
    public Guid? PieceId { get; }

    public Field Length { get; }

    public Field Distance { get; }

    public Field Time { get; }

    public Field Effort { get; }

    public IReadOnlyList<Field> Fields => [Length, Distance, Time, Effort];

    public bool HasFocus => Fields.Any(input => input.HasFocus);

    public PieceDraft ToDraft() => new(PieceId, Length.Text, Distance.Text, Time.Text, Effort.Text);

    /// <summary>A draft of a piece that a card asks for.</summary>
    public static PieceDraft Planned(Length length, Distance distance, LengthUnit unit) =>
        new(null, length.Typed(unit), distance.ToString(), "", "");

    /// <summary>A draft of a piece that was logged.</summary>
    public static PieceDraft Logged(Piece piece, LengthUnit unit) =>
        new(piece.Id, piece.Length.Typed(unit), piece.Distance.ToString(), piece.Time.ToString(), piece.Effort?.ToString() ?? "");

    /// <summary>The piece, where all of it can be read.</summary>
    public PieceEntry? Read(Paddle paddle) => Fields.Any(field => field.Problem is not null) ? null : new PieceEntry(
        paddle, Domain.Values.Length.Parse(Length.Text, _unit()), Domain.Values.Distance.Parse(Distance.Text), PieceTime.Parse(Time.Text))
    {
        Effort = Effort.IsEmpty ? null : Domain.Values.Effort.Parse(Effort.Text),
    };

    /// <summary>What is wrong with what was typed so far, in words; null if nothing.</summary>
    public string? Typo(Paddle paddle)
    {
        if (Fields.FirstOrDefault(field => field.Typo is not null) is { } wrong)
            return wrong.Typo;
        if (Domain.Values.Length.TryParse(Length.Text, _unit(), out Length length, out _) && OutingProblems.OfLength(paddle, length) is { } unreachable)
            return unreachable;
        return Read(paddle) is { } entry ? LogOuting.ProblemWith(entry) : null;
    }

    /// <summary>The field to mend first; null if none is wrong.</summary>
    public Field? FirstWrong(Paddle paddle) => Fields.FirstOrDefault(field => field.Problem is not null) ?? (Typo(paddle) is null ? null : Time);

    public void Place(int row, bool visible)
    {
        for (int index = 0; index < Columns.Count; index++)
        {
            Field field = Fields[index];
            (field.X, field.Y, field.Width, field.Visible) = (Columns[index].Column, row, Columns[index].Width, visible);
        }
    }
}
