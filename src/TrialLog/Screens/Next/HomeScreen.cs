using Terminal.Gui.Input;
using TrialLog.Application.Deciding;
using TrialLog.Application.Logging;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Pictures;
using TrialLog.Screens.Base;
using TrialLog.Screens.Bodies;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Next;

/// <summary>Where the search stands, before anything else: the card while testing, else the length to race, or why there is none.</summary>
internal sealed class HomeScreen(Session session) : Screen(session)
{
    private const int WidestText = 110, LabelColumns = 29, CurveFrom = 76, FewestPictureRows = 9, MostPictureRows = 20, KeptFigures = 3;

    public override (string Wide, string Narrow) Names => ("Home", "Home");

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.Enter, "Enter", "type the outing", Session.Shell.TypeOuting),
        .. Session.Analysis is { } analysis ? OfAnswer(analysis) : [],
        .. Choosing.Work(Session),
        .. Choosing.Keys(Session),
    ];

    public override string Explanation =>
        "The first sentence is the verdict: what to do now. Below it stands what it rests on.\n\n" +
        "# While you test\n" +
        "The card says which lengths to paddle next. Set the paddle to each in turn, in the order shown; the paddles drawn beside " +
        "the lengths show which are longer, not true to scale. The order is mirrored, so that tiredness affects all lengths alike.\n\n" +
        "# When it is time to stop\n" +
        "The length to race stands there large. o shows the order sheet, r notes that you race it from now on, c the card, should you " +
            "want to test anyway.\n\n" +
        "# The card\n" +
        "c takes it along: to the watch, on paper, on the phone, or blind, to a partner who sets the paddle while you see letters.\n\n" +
        "# Best length, likely range\n" +
        "The setting that costs you least on average, given all your pieces and what was known beforehand. Your true best length lies in " +
            "the likely range 9 times in 10.\n\n" +
        "# Gain left\n" +
        "What more testing could win on average, if it found your true best length.\n\n" +
        "# Outings to go\n" +
        "How many more until it is probably time to stop; its range holds 8 times in 10.\n\n" +
        "# The small curve\n" +
        "Speed against length, all else equal, with its band. Screen 4 shows it large, with your pieces.";

    public override void Refresh()
    {
        Session.Want(FindingKind.Analysis);
        if (Session.Analysis is { } analysis && HomeText.Of(analysis).ShowsCard)
            Session.NoteGiven(analysis);
        // The order sheet stands behind a key of an answer that ends the search.
        if (Session.Analysis?.Standing is Standing.Settled or Standing.Flat)
            Session.Want(FindingKind.Carried);
        SetNeedsDraw();
    }

    protected override void Paint(Brush brush)
    {
        if (Session.Chosen is not { } chosen)
            return;
        if (Session.Analysis is not { } analysis)
        {
            PaintWaiting(brush, chosen);
            return;
        }

        HomeText text = HomeText.Of(analysis);
        int width = Math.Min(brush.Columns - 2, WidestText);
        int row = brush.Words(1, 0, width, text.Headline, text.Look);
        foreach (string caution in text.Own)
            row = brush.Words(1, row, width, "! " + caution, Tone.Caution);
        if (Session.HalfTyped)
            brush.Text(1, row++, "An outing is half typed. Enter goes on with it.", Tone.Now);
        IReadOnlyList<string> water = WordWrap.Lines("! " + Cautions.Water, width);
        PaintMiddle(brush, analysis, chosen, text, row + 1, brush.Rows - water.Count, width);
        for (int line = 0; line < water.Count; line++)
            brush.Text(1, brush.Rows - water.Count + line, water[line], Tone.Caution);
    }

    // The picture first, as many rows as it deserves; then what fits of the rest, whole sentences only.
    private void PaintMiddle(Brush brush, Analysis analysis, Chosen chosen, HomeText text, int top, int end, int width)
    {
        List<IReadOnlyList<(string Text, Tone Tone)>> below =
        [
            .. text.FiguresIn(width - LabelColumns, analysis)
                .Select(figure =>
                (IReadOnlyList<(string, Tone)>)[($"{figure.Label,-LabelColumns}", Tone.Dim),
                (figure.Value, figure.Label == text.Figures[0].Label ? Tone.Best : Tone.Plain)]),
            [("From " + Answer.Basis(analysis), Tone.Dim)],
        ];
        Strokes strokes = brush.Strokes;
        List<IReadOnlyList<string>> beside =
        [
            .. (Decided(analysis) is { } decided ? [decided, .. text.Beside] : text.Beside)
                .Select(said => WordWrap.Lines(strokes.Write(said), width)),
        ];
        int wanted = below.Count + beside.Sum(said => said.Count) + 1;
        // While it hurts nothing may tempt.
        bool curve = analysis.Standing != Standing.Sore && brush.Columns >= CurveFrom && analysis.Curve.Points.Count > 1;
        int fewest = text.ShowsCard ? CardPicture.RowsOf(analysis.Card) : text.Large is null ? 0 : LargeFigures.Rows + 1;
        int most = text.ShowsCard ? Math.Max(MostPictureRows, CardPicture.LargeRowsOf(analysis.Card)) : MostPictureRows;
        int picture = Math.Clamp(end - top - wanted, Math.Min(end - top, Math.Max(fewest, curve ? FewestPictureRows : 0)), most);
        if (picture < Math.Max(fewest, 4))
            (picture, curve) = (Math.Min(fewest, end - top), false);
        if (text.Large is not null && !text.ShowsCard && picture < LargeFigures.Rows)
            picture = 0;
        int left = curve ? Math.Min(58, Math.Max(40, brush.Columns * 5 / 12)) : brush.Columns;
        if (curve)
            brush.Picture(
                left, top, CurvePlot.Draw(analysis, Math.Min(96, brush.Columns - left - 1), picture, brush.Strokes, pieces: false));
        if (text.ShowsCard)
            CardPicture.Draw(brush, top, picture, HomeText.Heading(analysis, Session.Given), analysis.Card, Session.Unit, left,
                Session.Given is { Blind: true });
        else if (text.Large is { } large && picture >= LargeFigures.Rows)
            PaintLarge(brush, top, picture, large, $"{(analysis.DiminishingReturns ? "to race" : "for now")} in {chosen.Hull.Name}");

        int row = top + picture + 1;
        if (row + wanted - 1 > end && row > top)
            row--;
        // The first figures keep their place; beside them stand whole sentences only. A verdict that ends the search has told them.
        int room = end - row - Math.Min(below.Count, text.ShowsCard ? KeptFigures : 1);
        foreach (IReadOnlyList<string> said in beside)
        {
            if (said.Count > room)
                continue;
            foreach (string line in said)
                brush.Text(1, row++, line, Tone.Strong);
            room -= said.Count;
        }

        foreach (IReadOnlyList<(string Text, Tone Tone)> line in below.Take(Math.Max(0, end - row)))
            brush.Runs(1, row++, [.. line]);
    }

    private static void PaintLarge(Brush brush, int top, int rows, string length, string caption)
    {
        IReadOnlyList<string> figures = LargeFigures.Of(length, brush.Strokes);
        int row = top + Math.Max(0, (rows - LargeFigures.Rows - 2) / 2);
        for (int line = 0; line < figures.Count; line++)
            brush.Text(6, row + line, figures[line], Tone.Best);
        if (rows > LargeFigures.Rows + 1)
            brush.Text(6, row + LargeFigures.Rows + 1, caption, Tone.Dim);
    }

    private void PaintWaiting(Brush brush, Chosen chosen)
    {
        brush.Text(1, 0, Session.Found.Stopped ? "Stopped before there was an answer." : "Working it out from the log …", Tone.Dim);
        // Until there is an answer the card that is open stands; a search that had ended gave none.
        if (Session.State.OpenCard is { DiminishingReturns: false } open)
            CardPicture.Draw(brush, 2, brush.Rows - 2, $"The card of {Say.DayInWords(Session.Workspace.DayOf(open.GivenAt))}", open.Card,
                chosen.Paddler.Unit, brush.Columns, open.Blind);
    }

    private IEnumerable<KeyHint> OfAnswer(Analysis analysis)
    {
        if (analysis.HasCard)
            yield return new KeyHint('c', "card", () => ShowCard(analysis));
        // A fixed paddle has nothing to set: what it costs stands in the headline.
        if (analysis.Standing is Standing.Settled or Standing.Flat && !analysis.Paddle.IsFixed)
        {
            yield return new KeyHint('o', "order sheet", () => Bodies.BodySheets.Order(Session));
            yield return new KeyHint('r', "race it", () => Bodies.BodySheets.Race(Session, analysis));
        }

        if (analysis.Standing == Standing.Sore)
            yield return new KeyHint('z', "it no longer hurts", () => Bodies.BodySheets.ClearSoreness(Session));
        yield return new KeyHint(
            'w', "why", () => Session.Shell.Lay(new TextSheet(Look, Session.Shell, "Why", HomeText.Why(analysis, Session.Given))));
        yield return InWords(() => HomeText.InWords(analysis, Session.Given).Split('\n'));
    }

    private string? Decided(Analysis analysis) => Session.Decided is not { } decision ? null
        : DecisionWords.WithAfter(decision, Decide.OutingsSince(decision, Session.State.Outings), analysis, Session.Unit);

    private void ShowCard(Analysis analysis)
    {
        // What is looked at is given, sore or not; but a card that must not be paddled is not on offer.
        if (analysis.Standing != Standing.Sore)
            Session.NoteGiven(analysis);
        CardSheets.Lay(Session, analysis);
    }
}
