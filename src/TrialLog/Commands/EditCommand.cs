using System.CommandLine;
using System.Globalization;
using TrialLog.Application.Logging;
using TrialLog.Application.Text;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;

namespace TrialLog.Commands;

/// <summary><c>triallog edit OUTING</c> for the outing, <c>triallog edit OUTING PIECE</c> for one piece.</summary>
internal static class EditCommand
{
    public static Command Build(CommandFrame frame)
    {
        var name = new Argument<string>("OUTING") { Description = OutingArgument.Description };
        var order = new Argument<int?>(
            "PIECE")
        {
            Description = "The piece to change; without it the outing itself is changed, and soreness and " +
            "course of all its pieces.", Arity = ArgumentArity.ZeroOrOne
        };
        Option<string?> date = PaddlerCommand.Text("--date", "The outing's date.", "DATE");
        Option<string?> label = PaddlerCommand.Text("--label", "The outing's label.", "TEXT");
        Option<string?> place = PaddlerCommand.Text("--place", "The outing's place.", "TEXT");
        Option<string?> wind = PaddlerCommand.Text("--wind", "The outing's wind, Beaufort.", "0..12");
        Option<string?> water = PaddlerCommand.Text("--water", "The outing's water.", "TEXT");
        Option<string?> notes = PaddlerCommand.Text("--notes", "Notes on the outing, or on the piece.", "TEXT");
        Option<string?> length = PaddlerCommand.Text("--length", "The piece's paddle length.", "L");
        Option<string?> distance = PaddlerCommand.Text("--distance", "The piece's distance.", "D");
        Option<string?> time = PaddlerCommand.Text("--time", "The piece's time.", "T");
        Option<string?> effort = PaddlerCommand.Text("--effort", "The piece's effort, CR10.", "0..10");
        Option<string?> soreness = PaddlerCommand.Text("--soreness", "The piece's soreness, or that of all pieces.", "0..10");
        Option<string?> course = PaddlerCommand.Text("--course", "The piece's course, or that of all pieces.", "round-trip|out|back|loop");
        Option<string?> timed = PaddlerCommand.Text("--timed", "What timed the piece, or all pieces.", "hand|watch");
        Option<string?> blind = PaddlerCommand.Text("--blind", "Whether the lengths were not known to the paddler.", "yes|no");
        Option<string?> move = PaddlerCommand.Text("--to", "Move the outing to this paddler.", "NAME");
        var command = new Command("edit", "Change what was logged, or clear it with none; undo takes it back.")
        {
            name, order, frame.Paddler, frame.Hull, frame.Paddle, date, label, place, wind, water, notes, length, distance, time, effort,
                soreness, course, timed, blind, move,
        };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Paddler paddler = workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
            Outing outing = FindOuting.Of(workspace, paddler, parsed.GetRequiredValue(name));
            string? Given(Option<string?> option) => parsed.GetValue(option);
            Option<string?>[] ofPiece = [frame.Paddle, length, distance, time, effort];
            Option<string?>[] ofOuting = [frame.Hull, date, label, place, wind, water, blind, move];
            Option<string?>[] wrong = parsed.GetValue(order) is null ? ofPiece : ofOuting;
            if (wrong.FirstOrDefault(option => Given(option) is not null) is { } misplaced)
                throw new RequestException(parsed.GetValue(order) is null
                    ? $"{misplaced.Name} belongs to a piece; say which: triallog edit {FindOuting.NameOf(outing)} PIECE {misplaced.Name} …"
                    : $"{misplaced.Name} belongs to the whole outing; leave out the piece's number.");

            DateOnly on = Given(date) is { } day ? TextForms.Date(workspace.Today).Read(day) : outing.Date;
            Soreness? Sore(Piece piece) => Spelling.Changed(Given(soreness), piece.Soreness, TextForms.Soreness);
            Piece Throughout(Piece piece) => piece with
            {
                Soreness = Sore(piece),
                Course = TextForms.Course.ReadIfAny(Given(course)) ?? piece.Course,
                TimedBy = Spelling.Changed(Given(timed), piece.TimedBy, TextForms.TimedBy),
            };
            Outing changed = parsed.GetValue(order) is not { } number
                ? outing with
                {
                    HullId = Given(frame.Hull) is { } hull ? workspace.HullNamed(hull).Id : outing.HullId,
                    Date = on,
                    Label = Spelling.IsNone(Given(label)) ? "" : Given(label)?.Trim() ?? outing.Label,
                    Place = Spelling.Changed(Given(place), outing.Place),
                    Wind = Spelling.Changed(Given(wind), outing.Wind, TextForms.Wind),
                    Water = Spelling.Changed(Given(water), outing.Water),
                    Notes = Spelling.Changed(Given(notes), outing.Notes),
                    Blind = TextForms.YesOrNo.ReadIfAny(Given(blind)) ?? outing.Blind,
                    Pieces = Given(soreness) is null && Given(course) is null && Given(timed) is null ? outing.Pieces
                        : [.. outing.Pieces.Select(Throughout)],
                }
                : With(outing, FindOuting.Piece(outing, number), piece => Timed(Throughout(piece) with
                {
                    PaddleId = Given(frame.Paddle) is { } paddle ? workspace.PaddleNamed(paddle).Id : piece.PaddleId,
                    Length = TextForms.Length(paddler.Unit).ReadIfAny(Given(length)) ?? piece.Length,
                    Distance = TextForms.Distance.ReadIfAny(Given(distance)) ?? piece.Distance,
                    Effort = Spelling.Changed(Given(effort), piece.Effort, TextForms.Effort),
                    Notes = Spelling.Changed(Given(notes), piece.Notes),
                }));
            Piece Timed(Piece piece) => Given(time) is not { } took ? piece
                : piece
                    with
                {
                    Time = TimeText.Read(took, piece.Distance,
                    UsualSpeed.Of(workspace.Logbook.Outings(paddler.Id), outing.HullId).Fits)
                };
            if (Given(move) is { } newOwner)
                changed = changed with { PaddlerId = workspace.PaddlerNamed(newOwner).Id };
            if (changed == outing)
                throw new RequestException("Nothing to change was given; see: triallog edit --help");
            changed = CorrectOuting.Replace(workspace, changed);
            HistoryText.Write(frame.Out, changed, workspace.Logbook.Hulls().First(hull => hull.Id == changed.HullId),
                workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id), paddler.Unit);
            DoubtText.Write(frame, workspace, changed, outing);
        });
        return command;
    }

    private static Outing With(Outing outing, Piece piece, Func<Piece, Piece> change)
    {
        Piece changed = change(piece);
        return changed == piece ? outing
            : outing with { Pieces = [.. outing.Pieces.Select(other => other.Id == piece.Id ? changed : other)] };
    }
}
