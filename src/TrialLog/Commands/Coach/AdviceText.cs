using TrialLog.Application.Coaching;
using TrialLog.Application.Logging;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands.Coach;

/// <summary>The history of advice as text.</summary>
internal static class AdviceText
{
    private const int Indent = 16;

    public static void Write(CommandFrame frame, Workspace workspace, IReadOnlyList<NumberedAdvice> all, Paddler paddler,
        IReadOnlyDictionary<Guid, string> hulls, IReadOnlyDictionary<Guid, string> paddles)
    {
        if (all.Count == 0)
        {
            frame.Out.WriteLine($"{Quoted.Visible(paddler.Name)} was given no card yet. See: triallog next");
            return;
        }

        foreach (NumberedAdvice advice in all)
        {
            GivenCard card = advice.Card;
            frame.Out.WriteLine(
                $"{advice.Number,2}.  {workspace.DayOf(card.GivenAt):yyyy-MM-dd}  " +
                $"{Quoted.Visible(hulls.GetValueOrDefault(card.HullId, "?"))}  " +
                $"{Quoted.Visible(paddles.GetValueOrDefault(card.PaddleId, "?"))}"
                + $"  from {Say.Count(card.Outings, "outing")}, {Say.Count(card.Pieces, "piece")}");
            Line(frame, card.By is null ? "suggested" : "coach's", $"{Order(card.Card.Lengths, paddler.Unit)}; {card.Card.Distance} " +
                $"each, effort {card.Card.Effort}{(card.Blind ? "; blind" : "")}");
            if (card.By is { } by)
                Line(frame, "by",
                    $"{Quoted.Visible(by)}{(card.Because is { } because ? $": {Quoted.Visible(because)}" : "")}" +
                        $"{(card.OwnLengths.Count == 0 ? "" : $"; the tool's own card was {Order(card.OwnLengths, paddler.Unit)}")}");
            Line(frame, "paddled", advice.Advice.Paddled is { } outing
                ? $"{Quoted.Visible(FindOuting.NameOf(outing))}: " +
                    $"{Order(outing.Pieces.OrderBy(piece => piece.Order).Select(piece => piece.Length), paddler.Unit)} " +
                    $"({advice.Advice.MatchInWords})"
                : "not paddled yet");
            Line(frame, "best", $"{card.Best.ToText(paddler.Unit)}, likely {Say.Range(card.LikelyLow, card.LikelyHigh, paddler.Unit)}; " +
                $"gain left {Say.Percent(card.GainLeftPercent)}"
                + (card.DiminishingReturns ? "; time to stop" : ""));
            if (advice.Lesson is { } lesson)
                Line(frame, "taught", lesson.InWords(paddler, new Voice(Quoted.Visible(paddler.Name))));
            else if (advice.MovedInches is { } moved && moved != 0)
                Line(frame, "moved", $"{Length.FromInches(Math.Abs(moved)).ToText(paddler.Unit)} {(moved > 0 ? "longer" : "shorter")} " +
                    $"than the card before");
        }
    }

    public static void Write(CommandFrame frame, Rederived again)
    {
        int number = again.Given.Number;
        string then = $"Card {number}, derived again from the log as it was then (change {again.Given.Card.AsOfChange})";
        if (again.Same)
        {
            frame.Out.WriteLine($"{then}, comes out the same: {Order(again.Again.Card.Lengths, again.Again.Paddler.Unit)}, best length " +
                $"{again.Again.Best.Length.ToText(again.Again.Paddler.Unit)}.");
            return;
        }

        frame.Out.WriteLine($"{then}, comes out different, as it may after an update of the program:");
        foreach ((string what, string given, string now) in again.Differences)
            Wrapped.Write(frame.Out, $"{what}: given {given}; now {now}", frame.ConsoleHost.Width, "  ", 4);
    }

    private static void Line(CommandFrame frame, string label, string text) =>
        Wrapped.Write(frame.Out, text, frame.ConsoleHost.Width, $"     {label,-11}", Indent);

    private static string Order(IEnumerable<Length> lengths, LengthUnit unit) =>
        string.Join(", ", lengths.Select(length => length.ToText(unit)));
}
