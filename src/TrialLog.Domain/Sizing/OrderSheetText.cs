using System.Globalization;
using System.Text;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Sizing;

/// <summary>An order sheet written out, for a printer or a message.</summary>
public static class OrderSheetText
{
    /// <summary>Plain text, at most 80 columns wide.</summary>
    public static string Plain(OrderSheet sheet)
    {
        var text = new StringBuilder();
        string title = Title(sheet, Quoted.Visible);
        text.Append(title).Append('\n').Append('=', title.Length).Append("\n\n");
        foreach (OrderLine line in sheet.Lines)
        {
            text.Append($"{Quoted.Visible(line.Hull)}, {Quoted.Visible(line.Paddle)} (blade {Spoken.ToQuarter(line.Blade, sheet.Unit)})\n");
            if (!line.NotNow)
            {
                text.Append($"    Cut to    {Spoken.ToQuarter(line.CutTo, sheet.Unit),-10}{line.RestsOn}\n");
                text.Append($"    Order at  {Spoken.ToQuarter(line.OrderAt, sheet.Unit),-10}and cut down\n");
            }

            Wrapped(text, Said(line, sheet.Unit), "    ", "    ");
            text.Append('\n');
        }

        if (sheet.Lines.Count == 0 && sheet.Steering.Count == 0)
            text.Append("Nothing to order: no paddle was asked for.\n\n");
        if (sheet.Steering.Count > 0)
        {
            text.Append("Steering (not tuned for speed; borrow before you buy)\n");
            foreach (OrderSheetSteering line in sheet.Steering)
                Wrapped(text, $"{Quoted.Visible(line.Hull)}, {Quoted.Visible(line.Paddle)}: {Steering(sheet, line)}", "  - ", "    ");
            Wrapped(text, SteeringRule.Cautions[0], "    ", "    ");
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
        if (sheet.Lines.Count > 0)
        {
            text.Append($"| Hull | Blade | Blade length | Cut to | Order at | Within {Spoken.Fraction(0.25, sheet.Unit)} | Rests on " +
                $"|\n|---|---|---|---|---|---|---|\n");
            foreach (OrderLine line in sheet.Lines)
                text.Append(
                    $"| {Escaped(line.Hull)} | {Escaped(line.Paddle)} | {Spoken.ToQuarter(line.Blade, sheet.Unit)} | " +
                    $"{(line.NotNow ? "not yet" : $"**{Spoken.ToQuarter(line.CutTo, sheet.Unit)}**")} | " +
                    $"{(line.NotNow ? "not yet" : Spoken.ToQuarter(line.OrderAt, sheet.Unit))} | {Spoken.Chance(line.WithinQuarterInch)} " +
                    $"| {line.RestsOn} |\n");
            text.Append('\n');
            foreach (OrderLine line in sheet.Lines)
                text.Append($"- {Escaped(line.Hull)}, {Escaped(line.Paddle)}: {Said(line, sheet.Unit)}\n");
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
            text.Append($"\n{SteeringRule.Cautions[0]}\n\n");
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
        $"begin with about {Spoken.ToQuarter(line.Proposal.Length, sheet.Unit)} " +
            $"({Spoken.Range(line.Proposal.Low, line.Proposal.High, sheet.Unit)}), " +
            $"{(line.Proposal.Large ? "a large blade: top hand lower than for forward strokes" : "much as for forward strokes")}";

    private static string Said(OrderLine line, LengthUnit unit) =>
        line.Own(unit) is { } own ? $"{line.Risk(unit)} {own}" : line.Risk(unit);

    private static IEnumerable<(string Heading, IReadOnlyList<string> Items)> Sections(OrderSheet sheet) =>
    [
        ("For the maker", sheet.ForTheMaker),
        ("Cutting", sheet.Cutting),
        ("Cautions", OrderSheet.Cautions),
    ];

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
        int column = first.Length;
        text.Append(first);
        bool fresh = true;
        foreach (string word in Spoken.Unbroken(paragraph))
        {
            if (!fresh && column + 1 + word.Length > width)
            {
                text.Append('\n').Append(rest);
                (column, fresh) = (rest.Length, true);
            }

            text.Append(fresh ? "" : " ").Append(word);
            column += word.Length + (fresh ? 0 : 1);
            fresh = false;
        }

        text.Append('\n');
    }
}
