using System.CommandLine;
using TrialLog.Application.Logging;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Forms;
using TrialLog.Tuning;

namespace TrialLog.Commands;

/// <summary><c>triallog log</c>: one outing and its pieces, in one line or asked step by step.</summary>
internal static class LogCommand
{
    public static Command Build(CommandFrame frame)
    {
        var pieces = new Argument<string[]>(
            "PIECE")
        { Description = "Each piece: " + PieceText.Form + ".", Arity = ArgumentArity.ZeroOrMore };
        Option<string?> date = PaddlerCommand.Text("--date", "The day; today at first.", "DATE");
        Option<string?> at = PaddlerCommand.Text("--at", "When it began, local time.", "HH:MM");
        Option<string?> label = PaddlerCommand.Text("--label", "A label, where a day has several outings.", "TEXT");
        Option<string?> place = PaddlerCommand.Text("--place", "A coarse place, as you call it.", "TEXT");
        Option<string?> wind = PaddlerCommand.Text("--wind", "Wind, Beaufort.", "0..12");
        Option<string?> water = PaddlerCommand.Text("--water", "The water: flat, chop, swell.", "TEXT");
        Option<string?> notes = PaddlerCommand.Text("--notes", "Anything else.", "TEXT");
        Option<string?> effort = PaddlerCommand.Text("--effort", "Effort of every piece that does not say its own, CR10.", "0..10");
        Option<string?> soreness = PaddlerCommand.Text("--soreness", "Shoulder, elbow or back, 0 (none) to 10.", "0..10");
        Option<string?> course = PaddlerCommand.Text("--course", "How the pieces lay; a round trip at first.", "round-trip|out|back|loop");
        var command = new Command("log", "Log an outing and its pieces; without pieces it asks step by step.")
        {
            pieces, frame.Paddler, frame.Hull, frame.Paddle, date, at, label, place, wind, water, notes, effort, soreness, course,
        };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            string? Given(Option<string?> option) => parsed.GetValue(option);
            string[] texts = parsed.GetValue(pieces) ?? [];
            if (texts.Length == 0)
            {
                if (!frame.ConsoleHost.Interactive)
                    throw new RequestException(
                        $"Say what was paddled, each piece as {PieceText.Form}; on a terminal it is asked step by step.");
                var questions = new LogQuestions(frame.ConsoleHost, workspace, chosen);
                if (questions.Ask() is not { } asked)
                {
                    throw new RequestException(HalfTypedOuting.Exists(workspace, chosen.Paddler)
                        ? "Nothing was saved. What you typed is kept; go on with: triallog log"
                        : "Nothing was saved.");
                }

                Outing saved = LogOuting.Save(workspace, asked);
                if (questions.KeepsDraft)
                    HalfTypedOuting.Drop(workspace, chosen.Paddler);
                Tell(frame, workspace, saved, chosen);
                return;
            }

            Effort? everyEffort = TextForms.Effort.ReadIfAny(Given(effort));
            Soreness? everySoreness = TextForms.Soreness.ReadIfAny(Given(soreness));
            Course way = TextForms.Course.ReadIfAny(Given(course)) ?? Course.RoundTrip;
            DateOnly on = Given(date) is { } day ? TextForms.Date(workspace.Today).Read(day) : workspace.Today;
            var entry = new OutingEntry
            {
                Paddler = chosen.Paddler,
                Hull = chosen.Hull,
                Date = on,
                Time = TextForms.TimeOfDay.ReadIfAny(Given(at)),
                Label = Given(label) ?? "",
                Place = Given(place),
                Wind = TextForms.Wind.ReadIfAny(Given(wind)),
                Water = Given(water),
                Notes = Given(notes),
                Pieces =
                [
                    .. ByTheCard(workspace, chosen, on, [.. texts.Select(one => PieceText.Parse(one, chosen.Paddler.Unit))])
                        .Select(piece => piece with { Effort = piece.Effort ?? everyEffort, Soreness = everySoreness, Course = way }),
                ],
            };
            Tell(frame, workspace, LogOuting.Save(workspace, entry), chosen);
        });
        return command;
    }

    // Pieces typed as times alone take lengths and distance from the card in order; their number must be the card's.
    private static List<PieceEntry> ByTheCard(Workspace workspace, Chosen chosen, DateOnly on, IReadOnlyList<PieceText> typed)
    {
        var usual = UsualSpeed.Of(workspace.Logbook.Outings(chosen.Paddler.Id), chosen.Hull.Id);
        if (typed.All(piece => piece is { Length: not null, Distance: not null }))
            return [.. typed.Select(piece => Entry(piece, piece.Length!.Value, piece.Distance!.Value))];
        GivenCard card = OpenCard.Of(workspace, chosen, on)
            ?? throw new RequestException(
                $"No card was open for {chosen.Paddler.Name} in {chosen.Hull.Name} with {chosen.Paddle.Name} on {on:yyyy-MM-dd}; ask for " +
                $"one with: triallog next, or give each piece as {PieceText.Form}.");
        if (typed.Count != card.Card.Lengths.Count)
            throw new RequestException(
                $"The card has {Say.Count(card.Card.Lengths.Count, "piece")}" +
                    $"{(card.Blind ? "" : $" ({Say.Order(card.Card.Lengths, chosen.Paddler.Unit)})")}; you gave {typed.Count}. Give the " +
                    $"lengths too: {PieceText.Form}.");
        return [
            .. typed.Select(
            (piece, index) => Entry(piece, piece.Length ?? card.Card.Lengths[index], piece.Distance ?? card.Card.Distance))];

        PieceEntry Entry(PieceText piece, Length length, Distance distance) =>
            new(chosen.Paddle, length, distance, TimeText.Read(piece.Time, distance, usual.Fits)) { Effort = piece.Effort };
    }

    private static void Tell(CommandFrame frame, Workspace workspace, Outing outing, Chosen chosen)
    {
        frame.Out.WriteLine("Logged:");
        HistoryText.Write(frame.Out, outing, chosen.Hull, workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id),
            chosen.Paddler.Unit);
        if (Cautions.OfLogged(outing.Pieces.Select(piece => piece.Soreness).MaxBy(sore => sore?.Halves ?? -1),
            TuningSettings.Default.SorenessLimit) is { } caution)
            Wrapped.Write(frame.Out, caution, frame.ConsoleHost.Width, "Caution: ", 9);
        DoubtText.Write(frame, workspace, outing);
        frame.Out.WriteLine("See what changed: triallog next");
    }
}
