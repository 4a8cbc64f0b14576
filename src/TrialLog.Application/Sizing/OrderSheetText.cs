using System.Globalization;
using System.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Application.Sizing;

/// <summary>An order sheet written out, for a printer or a message.</summary>
public static class OrderSheetText
{
    /// <summary>Plain text, at most 80 columns wide.</summary>
    public static string Plain(OrderSheet sheet)
    {
        var text = new StringBuilder();
        string title = Title(sheet, Quoted.Visible);
        text.Append(title).Append('\n').Append('=', title.Length).Append("\n\n");
        if (sheet.RestFirst is { } rest)
        {
            foreach (string paragraph in Resting(rest))
                Wrapped(text, paragraph, "", "");
            return text.ToString();
        }

        foreach (OrderLine line in sheet.Lines)
        {
            text.Append($"{Quoted.Visible(line.Hull)}, {Quoted.Visible(line.Paddle)} (blade {Say.Quarter(line.Blade, sheet.Unit)})\n");
            text.Append($"    Cut to    {Say.Quarter(line.CutTo, sheet.Unit),-10}{line.RestsOn}\n");
            text.Append($"    Order at  {Say.Quarter(line.OrderAt, sheet.Unit),-10}and cut down\n");
            Wrapped(text, OrderWords.Of(line, sheet.Unit), "    ", "    ");
            text.Append('\n');
        }

        if (sheet.Lines.Count == 0 && sheet.Steering.Count == 0)
            text.Append("Nothing to order: no paddle was asked for.\n\n");
        if (sheet.Steering.Count > 0)
        {
            text.Append("Steering (not tuned for speed; borrow before you buy)\n");
            foreach (OrderSheetSteering line in sheet.Steering)
                Wrapped(text, $"{Quoted.Visible(line.Hull)}, {Quoted.Visible(line.Paddle)}: {Steering(sheet, line)}", "  - ", "    ");
            Wrapped(text, SteeringWords.Cautions[0], "    ", "    ");
            text.Append('\n');
        }

        foreach ((string heading, IReadOnlyList<string> items) in Sections(sheet))
        {
            text.Append(heading).Append('\n');
            foreach (string item in items)
                Wrapped(text, item, "  - ", "    ");
            text.Append('\n');
        }

        return text.ToString().TrimEnd('\n') + "\n";
    }

    /// <summary>Markdown (CommonMark with tables).</summary>
    public static string Markdown(OrderSheet sheet)
    {
        var text = new StringBuilder();
        text.Append($"# {Title(sheet, Escaped)}\n\n");
        if (sheet.RestFirst is { } rest)
            return text.AppendJoin("\n\n", Resting(rest)).Append('\n').ToString();
        if (sheet.Lines.Count > 0)
        {
            text.Append($"| Hull | Blade | Blade length | Cut to | Order at | Within {Say.Fraction(0.25, sheet.Unit)} | Rests on " +
                $"|\n|---|---|---|---|---|---|---|\n");
            foreach (OrderLine line in sheet.Lines)
                text.Append(
                    $"| {Escaped(line.Hull)} | {Escaped(line.Paddle)} | {Say.Quarter(line.Blade, sheet.Unit)} | " +
                    $"**{Say.Quarter(line.CutTo, sheet.Unit)}** | {Say.Quarter(line.OrderAt, sheet.Unit)} | " +
                    $"{Say.Chance(line.WithinQuarterInch)} | {line.RestsOn} |\n");
            text.Append('\n');
            foreach (OrderLine line in sheet.Lines)
                text.Append($"- {Escaped(line.Hull)}, {Escaped(line.Paddle)}: {OrderWords.Of(line, sheet.Unit)}\n");
            text.Append('\n');
        }
        else if (sheet.Steering.Count == 0)
        {
            text.Append("Nothing to order: no paddle was asked for.\n\n");
        }

        if (sheet.Steering.Count > 0)
        {
            text.Append("## Steering (not tuned for speed; borrow before you buy)\n\n");
            foreach (OrderSheetSteering line in sheet.Steering)
                text.Append($"- {Escaped(line.Hull)}, {Escaped(line.Paddle)}: {Steering(sheet, line)}\n");
            text.Append($"\n{SteeringWords.Cautions[0]}\n\n");
        }

        foreach ((string heading, IReadOnlyList<string> items) in Sections(sheet))
        {
            text.Append($"## {heading}\n\n");
            foreach (string item in items)
                text.Append($"- {item}\n");
            text.Append('\n');
        }

        return text.ToString().TrimEnd('\n') + "\n";
    }

    private static string Title(OrderSheet sheet, Func<string, string> written) =>
        $"Order sheet: {written(sheet.Paddler)}, {sheet.Date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}";

    private static string Steering(OrderSheet sheet, OrderSheetSteering line) =>
        $"begin with about {Say.Quarter(line.Proposal.Length, sheet.Unit)} " +
            $"({Say.Range(line.Proposal.Low, line.Proposal.High, sheet.Unit)}), " +
            $"{(line.Proposal.Large ? "a large blade: top hand lower than for forward strokes" : "much as for forward strokes")}";

    private static IEnumerable<string> Resting(IReadOnlyList<string> rest) => [rest[0], RestFirst.NoOrder, .. rest.Skip(1)];

    private static IEnumerable<(string Heading, IReadOnlyList<string> Items)> Sections(OrderSheet sheet) =>
        sheet.Orders ? [("For the maker", sheet.ForTheMaker), ("Cutting", sheet.Cutting), ("Cautions", OrderSheet.Cautions)]
            : [("Cautions", OrderSheet.Cautions)];

    private static string Escaped(string name)
    {
        var safe = new StringBuilder(name.Length);
        foreach (char c in Quoted.Visible(name))
        {
            if (c is '\\' or '`' or '*' or '_' or '[' or ']' or '<' or '>' or '|' or '#' or '&' or '~' or '!')
                safe.Append('\\');
            safe.Append(c);
        }

        return safe.ToString();
    }

    private static void Wrapped(StringBuilder text, string paragraph, string first, string rest)
    {
        const int width = 80;
        text.Append(first).AppendJoin("\n" + rest, Lines.Of(paragraph, width - first.Length)).Append('\n');
    }
}
