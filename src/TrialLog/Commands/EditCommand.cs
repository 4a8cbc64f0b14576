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
        var order = new Argument<int?>("PIECE") { Description = "The piece to change; without it the outing itself is changed, and soreness and course of all its pieces.", Arity = ArgumentArity.ZeroOrOne };
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
        var command = new Command("edit", "Change what was logged; undo takes it back.")
        {
            name, order, frame.Paddler, frame.Hull, frame.Paddle, date, label, place, wind, water, notes, length, distance, time, effort, soreness, course,
        };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Paddler paddler = workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
            Outing outing = FindOuting.Of(workspace, paddler, parsed.GetRequiredValue(name));
            string? Given(Option<string?> option) => parsed.GetValue(option);
            Option<string?>[] ofPiece = [frame.Paddle, length, distance, time, effort];
            Option<string?>[] ofOuting = [frame.Hull, date, label, place, wind, water];
            Option<string?>[] wrong = parsed.GetValue(order) is null ? ofPiece : ofOuting;
            if (wrong.FirstOrDefault(option => Given(option) is not null) is { } misplaced)
                throw new RequestException(parsed.GetValue(order) is null
                    ? $"{misplaced.Name} belongs to a piece; say which: triallog edit {FindOuting.NameOf(outing)} PIECE {misplaced.Name} …"
                    : $"{misplaced.Name} belongs to the whole outing; leave out the piece's number.");

            Soreness? sore = Given(soreness) is { } points ? Soreness.Parse(points) : null;
            Course? way = Given(course) is { } spelled ? CourseText.Parse(spelled) : null;
            Piece Throughout(Piece piece) => piece with { Soreness = sore ?? piece.Soreness, Course = way ?? piece.Course };
            Outing changed = parsed.GetValue(order) is not { } number
                ? outing with
                {
                    HullId = Given(frame.Hull) is { } hull ? workspace.HullNamed(hull).Id : outing.HullId,
                    Date = Given(date) is { } day ? FindOuting.Date(day, workspace.Today) : outing.Date,
                    Label = Given(label)?.Trim() ?? outing.Label,
                    Place = Given(place) ?? outing.Place,
                    Wind = Given(wind) is { } beaufort ? Values.Wind(beaufort) : outing.Wind,
                    Water = Given(water) ?? outing.Water,
                    Notes = Given(notes) ?? outing.Notes,
                    Pieces = sore is null && way is null ? outing.Pieces : [.. outing.Pieces.Select(Throughout)],
                }
                : With(outing, FindOuting.Piece(outing, number), piece => Throughout(piece) with
                {
                    PaddleId = Given(frame.Paddle) is { } paddle ? workspace.PaddleNamed(paddle).Id : piece.PaddleId,
                    Length = Given(length) is { } text ? Length.Parse(text, paddler.Unit) : piece.Length,
                    Distance = Given(distance) is { } far ? Distance.Parse(far) : piece.Distance,
                    Time = Given(time) is { } took ? PieceTime.ParseByHand(took) : piece.Time,
                    Effort = Given(effort) is { } hard ? Effort.Parse(hard) : piece.Effort,
                    Notes = Given(notes) ?? piece.Notes,
                });
            if (changed == outing)
                throw new RequestException("Nothing to change was given; see: triallog edit --help");
            CorrectOuting.Replace(workspace, changed);
            HistoryText.Write(frame.Out, changed, workspace.Logbook.Hulls().First(hull => hull.Id == changed.HullId), workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id), paddler.Unit);
            DoubtText.Write(frame, workspace, changed, outing);
        });
        return command;
    }

    private static Outing With(Outing outing, Piece piece, Func<Piece, Piece> change)
    {
        Piece changed = change(piece);
        return changed == piece ? outing : outing with { Pieces = [.. outing.Pieces.Select(other => other.Id == piece.Id ? changed : other)] };
    }
}

/// <summary>Small values as they are typed in options.</summary>
internal static class Values
{
    public static Beaufort Wind(string text) => Beaufort.TryParse(text, out Beaufort wind, out string? problem) ? wind : throw new InvalidValueException(problem);

    public static TimeOnly TimeOfDay(string text) =>
        TimeOnly.TryParseExact(text.Trim(), ["HH:mm", "H:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly time)
            ? time
            : throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a time of day; write it like 06:45.");
}
