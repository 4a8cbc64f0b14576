using System.CommandLine;
using TrialLog.Application.Logging;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;

namespace TrialLog.Commands;

/// <summary><c>triallog exclude OUTING PIECE --because REASON</c>.</summary>
internal static class ExcludeCommand
{
    public static Command Build(CommandFrame frame)
    {
        var outing = new Argument<string>("OUTING") { Description = OutingArgument.Description };
        var piece = new Argument<int>("PIECE") { Description = "The piece's number in the outing." };
        var because = new Option<string>("--because") { Description = "Why it does not count.", HelpName = "REASON", Required = true };
        var command = new Command("exclude", "Leave a piece out of every analysis; it stays in the log.") { outing, piece, because,
            frame.Paddler };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Outing changed = CorrectOuting.Exclude(
                workspace, OutingArgument.Find(frame, parsed, workspace, outing), parsed.GetRequiredValue(piece),
                    parsed.GetRequiredValue(because));
            frame.Out.WriteLine(
                $"Piece {parsed.GetRequiredValue(piece)} of {FindOuting.NameOf(changed)} no longer counts. To take it back: triallog undo");
        });
        return command;
    }
}

/// <summary><c>triallog include OUTING PIECE</c>.</summary>
internal static class IncludeCommand
{
    public static Command Build(CommandFrame frame)
    {
        var outing = new Argument<string>("OUTING") { Description = OutingArgument.Description };
        var piece = new Argument<int>("PIECE") { Description = "The piece's number in the outing." };
        var command = new Command("include", "Let a piece that was left out count again.") { outing, piece, frame.Paddler };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Outing changed = CorrectOuting.Include(
                workspace, OutingArgument.Find(frame, parsed, workspace, outing), parsed.GetRequiredValue(piece));
            frame.Out.WriteLine($"Piece {parsed.GetRequiredValue(piece)} of {FindOuting.NameOf(changed)} counts again.");
        });
        return command;
    }
}

/// <summary><c>triallog delete OUTING [PIECE]</c>.</summary>
internal static class DeleteCommand
{
    public static Command Build(CommandFrame frame)
    {
        var outing = new Argument<string>("OUTING") { Description = OutingArgument.Description };
        var piece = new Argument<int?>("PIECE") { Description = "Only this piece.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("delete", "Delete an outing, or one piece of it.") { outing, piece, frame.Paddler };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Outing found = OutingArgument.Find(frame, parsed, workspace, outing);
            if (parsed.GetValue(piece) is { } order)
                CorrectOuting.DeletePiece(workspace, found, order);
            else
                CorrectOuting.Delete(workspace, found);
            frame.Out.WriteLine(
                $"Deleted {(parsed.GetValue(piece) is { } number ? $"piece {number} of " : "the outing ")}{FindOuting.NameOf(found)}. To " +
                $"take it back: triallog undo");
        });
        return command;
    }
}

/// <summary><c>triallog undo</c>.</summary>
internal static class UndoCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("undo", "Take back the newest thing done; again goes further back.");
        frame.OnDesk(command, (_, workspace) =>
        {
            ChangeSummary taken = CorrectOuting.Undo(workspace);
            frame.Out.WriteLine($"Taken back: {Quoted.Visible(taken.What)}. To have it again: triallog redo");
        });
        return command;
    }
}

/// <summary><c>triallog redo</c>.</summary>
internal static class RedoCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("redo", "Do again what was just taken back.");
        frame.OnDesk(command, (_, workspace) => frame.Out.WriteLine($"Done again: {Quoted.Visible(CorrectOuting.Redo(workspace).What)}."));
        return command;
    }
}

/// <summary>The argument that names an outing.</summary>
internal static class OutingArgument
{
    public const string Description = "The outing's date, with its label where the day has several: 2026-05-03 or " +
        "2026-05-03:evening; or last.";

    public static Outing Find(CommandFrame frame, ParseResult parsed, Workspace workspace, Argument<string> name) =>
        FindOuting.Of(workspace, workspace.PaddlerNamed(parsed.GetValue(frame.Paddler)), parsed.GetRequiredValue(name));
}
