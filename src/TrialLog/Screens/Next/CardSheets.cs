using TrialLog.Application.Files;
using TrialLog.Application.Next;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Reports.Squads;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Next;

/// <summary>Takes the card along: to the watch, on paper, on the phone, or to the partner who sets the paddle unseen.</summary>
internal static class CardSheets
{
    /// <summary>Asks where to.</summary>
    /// <param name="session">What the screens share.</param>
    /// <param name="analysis">The answer with its card.</param>
    public static void Lay(Session session, Analysis analysis)
    {
        // A card that must not be paddled is looked at, not handed out.
        if (analysis.Standing == Standing.Sore)
        {
            LookAt(session, analysis);
            return;
        }

        bool blind = session.Given is { Blind: true };
        LengthUnit unit = analysis.Paddler.Unit;
        List<(string What, Action Do)> ways =
        [
            ("look at it, and why", () => LookAt(session, analysis)),
            ("to the watch: a workout file, a step a piece", () => ToFile(session, "card.fit", (workspace, file) =>
                NewFile.Write(workspace, file, WatchWorkout.File(analysis.Card, unit, blind, workspace.Now)))),
            ("on tape or in a message: a few short lines to copy", () => session.Shell.Lay(new TextSheet(
                session.Look, session.Shell, "The card in short", WatchWorkout.Strip(analysis.Card, unit, blind), asWritten: true))),
        ];
        GivenCard? given = session.Given;
        ways.Add(("on paper: a page to print and fill in", () => ToFile(session, "card.html", (workspace, file) =>
            NewFile.Write(workspace, file, Paper(analysis, given, workspace.Today)))));
        ways.Add(("on the phone: a page that needs no network", () => ToFile(session, "card-phone.html", (workspace, file) =>
            NewFile.Write(workspace, file, PhoneCard.ToHtml(analysis, given, workspace.Today, ProgramVersion.Text)))));
        ways.Add((blind ? "to the partner again: the file with the lengths" : "to a partner, blind: they set the lengths, you see letters",
            () => ToFile(session, "partner.txt", (workspace, file) => ToPartner(workspace, analysis, file))));
        session.Shell.Lay(new ChoiceSheet(
            session.Look, session.Shell, "The card: where to?", [.. ways.Select(way => way.What)], 0, index => ways[index].Do()));
    }

    private static void LookAt(Session session, Analysis analysis) => session.Shell.Lay(new TextSheet(
        session.Look, session.Shell, HomeText.Heading(analysis, session.Given), HomeText.Why(analysis, session.Given)));

    private static void ToFile(Session session, string name, Action<Workspace, string> write)
    {
        session.Shell.Lay(new QuestionSheet(
        session.Look, session.Shell, "Into which file?", "In the folder from which you began, unless you name another.", name,
        text => string.IsNullOrWhiteSpace(text) ? "A file needs a name." : null,
        text =>
        {
            string file = FileToImport.Path(text);
            if (!File.Exists(file))
            {
                Write(file);
                return;
            }

            session.Shell.Lay(new ChoiceSheet(session.Look, session.Shell, $"{Quoted.Brief(file, 60)} is there already. Write over it?",
                ["no, name another file", "yes, write over it"], 0, index =>
                {
                    if (index == 1)
                        Write(file);
                    else
                        ToFile(session, text, write);
                }));
        }));

        void Write(string file) => session.Change(workspace => write(workspace, file),
            () => session.Shell.Say($"The card is in {Quoted.Brief(Path.GetFullPath(file), 200)}.", Tone.Best));
    }

    private static void ToPartner(Workspace workspace, Analysis analysis, string file)
    {
        NewFile.Refuse(workspace, file);
        (_, GivenCard card) = NextOuting.For(
            workspace, new Chosen(analysis.Paddler, analysis.Hull, analysis.Paddle), new CardWish { Blind = true });
        NewFile.Write(workspace, file,
            BlindWords.ForThePartner(card, analysis.Paddler, analysis.Hull.Name, analysis.Paddle.Name, workspace.Today));
    }

    private static string Paper(Analysis analysis, GivenCard? given, DateOnly day) => Html.Write(new Document(
        PlainText.Line(analysis.Paddler.Name), $"{PlainText.Line(analysis.Hull.Name)} with {PlainText.Line(analysis.Paddle.Name)}.",
        [
            new("Card", new Cards([CardWords.ToFill(HomeText.Heading(analysis, given), analysis, given, null, Voice.ToThePaddler)])),
            CautionsSection.Of(CautionsSection.For(analysis)),
        ],
        $"TrialLog {PlainText.Line(ProgramVersion.Text)}, {Say.Day(day)}."));
}
