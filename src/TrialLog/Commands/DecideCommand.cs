using System.CommandLine;
using TrialLog.Application.Deciding;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary><c>triallog decide</c>: takes down what was decided about a length; without one, lists what was.</summary>
internal static class DecideCommand
{
    public static Command Build(CommandFrame frame)
    {
        Option<string?> length = PaddlerCommand.Text("--length", "The length decided on; without it the decisions are listed.", "L");
        (Option<bool> Option, DecisionKind Kind)[] kinds =
        [
            (new("--ordered") { Description = "A paddle of this length was ordered." }, DecisionKind.Ordered),
            (new("--cut") { Description = "A shaft was cut to this length." }, DecisionKind.Cut),
            (new("--delivered") { Description = "The ordered paddle came." }, DecisionKind.Delivered),
            (new("--kept") { Description = "After trying it, it was kept as it is." }, DecisionKind.Kept),
        ];
        Option<string?> on = PaddlerCommand.Text("--on", "When; today at first.", "DATE");
        Option<string?> by = PaddlerCommand.Text("--by", "Who decided.", "WHO");
        Option<string?> because = PaddlerCommand.Text("--because", "Why.", "TEXT");
        var command = new Command(
            "decide", "Take down what was decided about a length; raced from now on, unless said otherwise.") { length, frame.Paddler,
            frame.Hull, frame.Paddle };
        foreach (Option option in kinds.Select(one => (Option)one.Option).Concat([on, by, because, frame.Json]))
            command.Options.Add(option);
        command.Validators.Add(result =>
        {
            if (kinds.Count(one => result.GetValue(one.Option)) > 1)
                result.AddError("Say one of --ordered, --cut, --delivered and --kept.");
        });
        frame.OnDesk(command, (parsed, workspace) =>
        {
            if (parsed.GetValue(length) is not { } text)
            {
                List(frame, parsed, workspace);
                return;
            }

            Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            Decision decision = Decide.On(
                workspace, chosen, TextForms.Length(chosen.Paddler.Unit).Read(text),
                    kinds.FirstOrDefault(one => parsed.GetValue(one.Option)).Option is { } said
                    ? kinds.First(one => one.Option == said).Kind : DecisionKind.Raced,
                TextForms.Date(workspace.Today).ReadIfAny(parsed.GetValue(on)) ?? workspace.Today, parsed.GetValue(by),
                    parsed.GetValue(because));
            if (parsed.GetValue(frame.Json))
                JsonOutput.Write<IReadOnlyList<DecisionFacts>>(
                    frame.Out, [DecisionFacts.Of(decision, chosen.Paddler.Name, chosen.Hull.Name, chosen.Paddle.Name)]);
            else
                frame.Out.WriteLine($"{Quoted.Visible(chosen.Paddler.Name)}, {Quoted.Visible(chosen.Hull.Name)}, " +
                    $"{Quoted.Visible(chosen.Paddle.Name)}: {DecisionWords.Sentence(decision, chosen.Paddler.Unit)} To " +
                    $"undo: triallog undo");
        });
        return command;
    }

    private static void List(CommandFrame frame, ParseResult parsed, Workspace workspace)
    {
        Paddler paddler = workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
        Dictionary<Guid, string> hulls = workspace.Logbook.Hulls().ToDictionary(hull => hull.Id, hull => hull.Name);
        Dictionary<Guid, string> paddles = workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id, paddle => paddle.Name);
        IReadOnlyList<Decision> all = Decide.All(workspace, paddler);
        if (parsed.GetValue(frame.Json))
        {
            JsonOutput.Write<IReadOnlyList<DecisionFacts>>(
                frame.Out, [.. all.Select(one => DecisionFacts.Of(one, paddler.Name, hulls[one.HullId], paddles[one.PaddleId]))]);
            return;
        }

        if (all.Count == 0)
            frame.Out.WriteLine($"Nothing was decided for {Quoted.Visible(paddler.Name)} yet.");
        foreach (Decision decision in all)
            Wrapped.Write(frame.Out, $"{Quoted.Visible(hulls[decision.HullId])}, {Quoted.Visible(paddles[decision.PaddleId])}: " +
                $"{DecisionWords.Sentence(decision, paddler.Unit)}", frame.ConsoleHost.Width, "- ", 2);
    }
}
