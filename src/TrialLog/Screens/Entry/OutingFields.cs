using System.Globalization;
using TrialLog.Application.Logging;
using TrialLog.Application.Text;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Forms;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Entry;

/// <summary>What is typed once for an outing: its day, hull, paddle, wind, label, soreness and notes.</summary>
internal sealed class OutingFields
{
    private readonly Workspace _workspace;
    private readonly IReadOnlyList<Hull> _hulls;
    private readonly IReadOnlyList<Paddle> _paddles;

    public OutingFields(Workspace workspace, Look look)
    {
        (_workspace, _hulls, _paddles) = (workspace, workspace.Logbook.Hulls(), workspace.Logbook.Paddles());
        Date = new Field($"{workspace.Today:yyyy-MM-dd}", CheckDate, "The outing has no date.") { X = 8, Y = 0, Width = 11 };
        HullChoice = new ChoiceField(look, [.. _hulls.Select(hull => Quoted.Visible(hull.Name))]) { X = 27, Y = 0, Width = 18 };
        PaddleChoice = new ChoiceField(look, [.. _paddles.Select(paddle => Quoted.Visible(paddle.Name))]) { X = 55, Y = 0, Width = 24 };
        Wind = new Field("", TextForms.Wind.Problem) { X = 8, Y = 1, Width = 4 };
        Label = new Field("", CheckLabel) { X = 29, Y = 1, Width = 16 };
        Soreness = new Field("", text => Domain.Values.Soreness.TryParse(text, out _, out string? problem) ? null : problem) { X = 12, Width = 5 };
        Notes = new Field("", text => text.Length > 4000 ? "Notes have up to 4,000 characters." : null) { X = 12, Width = Terminal.Gui.ViewBase.Dim.Fill(2) };
    }

    public Field Date { get; }

    public ChoiceField HullChoice { get; }

    public ChoiceField PaddleChoice { get; }

    public Field Wind { get; }

    public Field Label { get; }

    public Field Soreness { get; }

    public Field Notes { get; }

    public Hull Hull => _hulls[HullChoice.At];

    public Paddle Paddle => _paddles[PaddleChoice.At];

    public IReadOnlyList<Field> Texts => [Date, Wind, Label, Soreness, Notes];

    /// <summary>Takes a hull and a paddle by id.</summary>
    public void Choose(Guid hull, Guid paddle)
    {
        HullChoice.At = Math.Max(0, _hulls.ToList().FindIndex(known => known.Id == hull));
        PaddleChoice.At = Math.Max(0, _paddles.ToList().FindIndex(known => known.Id == paddle));
    }

    public void Take(OutingDraft draft)
    {
        (Date.Text, Wind.Text, Label.Text, Soreness.Text, Notes.Text) = (draft.Date, draft.Wind, draft.Label, draft.Soreness, draft.Notes);
        Choose(Guid.TryParse(draft.Hull, out Guid hull) ? hull : Guid.Empty, Guid.TryParse(draft.Paddle, out Guid paddle) ? paddle : Guid.Empty);
    }

    public OutingDraft ToDraft(Guid paddler, Guid? editing, IEnumerable<PieceRow> rows) => new(
        paddler, editing, Date.Text, Hull.Id.ToString(), Paddle.Id.ToString(), Wind.Text, Label.Text, Soreness.Text, Notes.Text,
        [.. rows.Select(row => row.ToDraft())]);

    /// <summary>The draft that an outing of the log makes.</summary>
    public static OutingDraft Logged(Outing outing, LengthUnit unit)
    {
        Piece? first = outing.Pieces.Count > 0 ? outing.Pieces[0] : null;
        return new(
            outing.PaddlerId, outing.Id, $"{outing.Date:yyyy-MM-dd}", outing.HullId.ToString(), first?.PaddleId.ToString() ?? "",
            outing.Wind?.ToString() ?? "", outing.Label, outing.Pieces.Select(piece => piece.Soreness?.ToString()).FirstOrDefault(sore => sore is not null) ?? "",
            outing.Notes ?? "", [.. outing.Pieces.Select(piece => PieceRow.Logged(piece, unit))]);
    }

    /// <summary>The outing; every field must be without a problem.</summary>
    public OutingEntry Read(Paddler paddler, IEnumerable<PieceEntry> pieces) => new()
    {
        Paddler = paddler,
        Hull = Hull,
        Date = TextForms.Date(_workspace.Today).Read(Date.Text),
        Label = Label.Text.Trim(),
        Wind = TextForms.Wind.ReadIfAny(Wind.Text),
        Notes = Notes.IsEmpty ? null : Notes.Text.Trim(),
        Pieces = [.. pieces.Select(piece => piece with { Soreness = Soreness.IsEmpty ? null : Domain.Values.Soreness.Parse(Soreness.Text) })],
    };

    private string? CheckDate(string text)
    {
        try
        {
            return Plausible.ProblemWithDate(TextForms.Date(_workspace.Today).Read(text), _workspace.Today);
        }
        catch (InvalidValueException wrong)
        {
            return wrong.Message;
        }
    }

    private static string? CheckLabel(string text)
    {
        try
        {
            NameRule.Checked(text, "label");
            return null;
        }
        catch (InvalidValueException wrong)
        {
            return wrong.Message;
        }
    }
}
