using TrialLog.Application.Sizing;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Bodies;

/// <summary>The sections of the body-and-boats screen as lines.</summary>
internal sealed class BodyText(Session session, Chosen chosen, int width)
{
    private LengthUnit Unit => session.Unit;

    private IReadOnlyList<string> Wrapped(string text, int columns) => WordWrap.Lines(session.Look.Strokes.Write(text), columns);

    public IEnumerable<(string Text, Tone Tone)> StartLength()
    {
        if (RestFirst.Page(session.State.Sore) is { } rest)
        {
            foreach (string line in rest.SelectMany(paragraph => Wrapped(paragraph, width)))
                yield return (line, Tone.Caution);
            yield return ("", Tone.Plain);
            yield break;
        }

        yield return ("Start length", Tone.Title);
        StartLengthAnswer answer;
        string? wrong = null;
        try
        {
            answer = FindStartLength.Of(chosen.Paddler);
        }
        catch (InvalidValueException problem)
        {
            answer = null!;
            wrong = problem.Message;
        }

        if (wrong is not null)
        {
            foreach (string line in Wrapped(wrong, width))
                yield return (line, Tone.Problem);
            yield break;
        }

        yield return ($"{Say.Quarter(answer.Start.Length, Unit)}, likely {Say.Range(answer.Likely.Low, answer.Likely.High, Unit)}",
            Tone.Strong);
        foreach (string line in Wrapped($"{answer.Explanation} {answer.WhatNext}", width))
            yield return (line, Tone.Plain);
        foreach (string line in answer.Questions.SelectMany(question => Wrapped("? " + question, width)))
            yield return (line, Tone.Caution);
        foreach (string line in Wrapped(answer.HandSpacing is { } hands
            ? $"Hands about {Say.Tenth(hands, Unit)} apart on the shaft." : StartWords.HandsQuickly, width))
            yield return (line, Tone.Dim);
        yield return ("", Tone.Plain);
    }

    /// <summary>What was decided, the latest first, and what the log says since.</summary>
    public IEnumerable<(string Text, Tone Tone)> Decisions()
    {
        if (session.State.Decisions.Count == 0)
            yield break;
        yield return ("Decisions", Tone.Title);
        foreach (Decision decision in session.State.Decisions.Reverse())
        {
            string hull = session.State.Hulls.FirstOrDefault(known => known.Id == decision.HullId)?.Name ?? "", paddle =
                session.State.Paddles.FirstOrDefault(known => known.Id == decision.PaddleId)?.Name ?? "";
            foreach (
                string line in Wrapped($"{Name(hull, 12)}, {Name(paddle, 24)}: {DecisionWords.Sentence(decision, Unit)}", width - 2))
                yield return ("  " + line, Tone.Plain);
        }

        yield return ("", Tone.Plain);
    }

    public IEnumerable<(string Text, Tone Tone)> Everywhere(IReadOnlyList<Assessment>? carried)
    {
        // While it hurts only what was measured is shown below.
        if (session.State.Sore is not null)
            yield break;
        yield return ("In every hull, for every blade", Tone.Title);
        if (carried is null)
        {
            yield return (session.Found.Stopped ? "Stopped before there was an answer." : "Working it out …", Tone.Dim);
            yield return ("", Tone.Plain);
            yield break;
        }

        foreach (IGrouping<Guid, Assessment> ofPaddle in carried.GroupBy(length => length.Paddle.Id))
        {
            Paddle paddle = ofPaddle.First().Paddle;
            yield return ($"{Name(paddle.Name, 24)}  blade {Say.Quarter(paddle.Blade, Unit)}, "
                + (paddle.IsFixed ? $"fixed at {Say.Quarter(paddle.Shortest, Unit)}"
                    : $"set to {Say.Range(paddle.Shortest, paddle.Longest, Unit)}"), Tone.Strong);
            foreach (Assessment length in ofPaddle)
            {
                string rests = length.PiecesInHull == 0 ? "by rule" : $"from {Say.Count(length.PiecesInHull, "piece")}";
                string line = $"  {Name(length.Hull.Name, 8),-8} {Say.Length(length.Ideal.Length, Unit),-9} likely " +
                    $"{Say.Range(length.Best.LikelyLow, length.Best.LikelyHigh, Unit),-18} {rests}";
                yield return (line + (length.InRange ? "" : "; ✗ out of range"),
                    !length.InRange ? Tone.Caution : length.DiminishingReturns ? Tone.Best : Tone.Plain);
            }
        }

        yield return ("", Tone.Plain);
    }

    public IEnumerable<(string Text, Tone Tone)> SeatHeights()
    {
        IReadOnlyList<Hull> hulls = session.State.Hulls;
        IReadOnlyDictionary<Guid, double> offsets = SeatHeightRule.OffsetsInches(hulls);
        yield return ("Seat-height rule: an inch more seat, an inch more paddle", Tone.Title);
        foreach (Hull hull in hulls)
        {
            string seat = hull.SeatHeight is { } height ? $"seat {Say.Tenth(height, Unit)}" : $"crew of {hull.Crew}";
            yield return ($"  {Name(hull.Name, 12),-12} {seat,-16} {Difference(offsets[hull.Id])}", Tone.Plain);
        }

        yield return ("", Tone.Plain);
    }

    public IEnumerable<(string Text, Tone Tone)> Blades()
    {
        yield return ("Exposed-shaft rule: an inch more blade, an inch more paddle", Tone.Title);
        // Nobody is shown another's paddle.
        foreach (Paddle paddle in session.State.Paddles.Where(paddle => paddle.OwnerId is null || paddle.IsFor(chosen.Paddler.Id)))
            yield return ($"  {Name(paddle.Name, 24),-24} blade {Say.Quarter(paddle.Blade, Unit),-9} " +
                $"{(paddle.Steering ? "steering, sized apart" : Difference(ExposedShaftRule.OffsetInches(paddle.Blade)))}", Tone.Plain);
        yield return ("", Tone.Plain);
    }

    public IEnumerable<(string Text, Tone Tone)> Technique()
    {
        yield return ("Technique check: top hand against eye, blade just buried", Tone.Title);
        IReadOnlyList<TechniqueAnswer> kept = session.State.Technique;
        if (kept.Count == 0)
        {
            foreach (string line in Wrapped("None yet. t notes one; a photo from the side, level with you, is best.", width))
                yield return (line, Tone.Plain);
        }

        foreach (TechniqueAnswer answer in kept.TakeLast(6))
        {
            yield return (
                $"  {answer.Check.Date:yyyy-MM-dd}  {Name(answer.Hull.Name, 8)} at {Say.Length(answer.Check.Length, Unit)}: hand " +
                $"{HandHeight.InWords(answer.Check.HandAboveEyeInches, Unit)}"
                + (session.State.Sore is null ? $"; points to {Say.Quarter(answer.PointsTo, Unit)}" : ""), Tone.Plain);
            if (answer.Implied.Overhead)
                yield return ("  ! " + TechniqueRule.ShoulderCaution, Tone.Caution);
        }
    }

    private string Difference(double inches) => Math.Abs(inches) < 0.03 ? "as the solo canoe"
        : $"{Say.Amount(Math.Abs(inches), Unit)} {(inches > 0 ? "longer" : "shorter")}";

    private static string Name(string name, int most) => Quoted.Brief(name, most);
}
