using System.Text.Json;
using CsCheck;
using Terminal.Gui.Input;
using TrialLog.Application.Logging;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using OutingDraft = TrialLog.Application.Logging.OutingDraft;

namespace TrialLog.Tests.Screens;

/// <summary>The form of an outing on a terminal, against a plain record of what was typed.</summary>
[Collection(nameof(ScreensTests))]
public sealed class EntryFormTests : IDisposable
{
    private static readonly Guid Ilse = new(1, 0, 0, new byte[8]);

    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-form-").FullName;

    private string Logbook => Path.Combine(_folder, "logbook.db");

    [Theory]
    [InlineData("sat", "on Saturday, 21 November 2026")]
    [InlineData("24 nov", "on Tuesday, 24 November 2026")]
    [InlineData("-1", "on Tuesday, 24 November 2026")]
    public void A_day_typed_in_words_is_named_before_it_is_saved(string typed, string named)
    {
        SampleLog.Write(Logbook);
        using AtTheTerminal terminal = Known();
        terminal.Press(Key.Enter).ShowsNot("on Wednesday").Press(Key.CursorUp, Key.CursorUp, Key.Home)
            .Press([.. Enumerable.Repeat(Key.Delete, 12)]).Type(typed).Shows(named);
    }

    /// <summary>
    /// Whatever is typed, tabbed, resized, undone and done again, over 100 steps and more: each letter is in the field where it was typed,
    /// and nowhere else.
    /// </summary>
    [Fact]
    public void What_was_typed_stands_where_it_was_typed_whatever_the_terminals_size() =>
        Gen.Select(Gen.Int[0, 13], Gen.Int[12, 200], Gen.Int[12, 60]).Array[110, 150].Sample(doings =>
        {
            File.Delete(Logbook);
            SampleLog.Write(Logbook);
            using AtTheTerminal terminal = Known();
            // The fields in the order of Tab: five of the outing, four of each piece, two more. The time of piece 1 is first.
            List<string> record = ["2026-11-25", "", "", "", "",
                .. new[] { "49.25", "50.75", "50.75", "49.25" }.SelectMany(length => new[] { length, "1 km", "", "" }), "", ""];
            var (before, after) = (new Stack<string[]>(), new Stack<string[]>());
            int at = 7;
            terminal.Press(Key.Enter);
            foreach ((int what, int columns, int rows) in doings)
            {
                if (what < 3)
                {
                    terminal.Resize(columns, rows);
                }
                else if (what < 5)
                {
                    terminal.Press(Key.Tab);
                    at = (at + 1) % record.Count;
                }
                else if (what < 6)
                {
                    terminal.Press(Key.Tab.WithShift);
                    at = (at + record.Count - 1) % record.Count;
                }
                else if (what is 6 or 7)
                {
                    terminal.Press(what == 6 ? Key.Z.WithCtrl : Key.Y.WithCtrl);
                    (Stack<string[]> from, Stack<string[]> to) = what == 6 ? (before, after) : (after, before);
                    if (!from.TryPop(out string[]? other))
                        continue;
                    to.Push([.. record]);
                    // The cursor goes where something changed.
                    at = Enumerable.Range(0, record.Count).First(field => record[field] != other[field]);
                    record = [.. other];
                }
                else if (at is not (1 or 2))
                {
                    char letter = (char)('0' + columns % 10);
                    terminal.Press(Key.End, new Key(letter));
                    before.Push([.. record]);
                    after.Clear();
                    record[at] += letter;
                }
            }

            Assert.Equal(record, Typed(terminal, record));
            // And all the way back.
            while (before.TryPop(out string[]? other))
            {
                terminal.Press(Key.Z.WithCtrl);
                record = [.. other];
                if (before.Count % 9 == 0)
                    Assert.Equal(record, Typed(terminal, record));
            }
        },
        iter: 3);

    private static List<string> Typed(AtTheTerminal terminal, List<string> start)
    {
        terminal.Settle();
        return Kept(terminal) is { } kept
            ? [kept.Date, "", "", kept.Wind, kept.Label,
                .. kept.Pieces.SelectMany(piece => new[] { piece.Length, piece.Distance, piece.Time, piece.Effort }),
                kept.Soreness, kept.Notes]
            : start;
    }

    [Fact]
    public void A_new_outing_and_two_changes_are_kept_apart_also_over_a_crash()
    {
        SampleLog.Write(Logbook);
        using (AtTheTerminal before = Known())
        {
            before.Press(Key.Enter).Type("5:41").Type("").Press(new Key('3').WithAlt);
            before.Type("e").Press(Key.End).Type("9").Press(new Key('3').WithAlt);
            before.Press(Key.CursorDown).Type("e").Shows("changing 2026-11-19").Press(Key.End).Type("7");
        }

        using AtTheTerminal after = Known();
        after.Shows("half typed").Press(Key.Enter).Shows("5:41 /km").Press(new Key('3').WithAlt);
        after.Type("e").Shows("changing 2026-11-22").Shows("as you left it").Press(Key.Esc);
        after.Press(Key.CursorDown).Type("e").Shows("changing 2026-11-19").Shows("as you left it").Press(Key.Esc);
        Assert.Equal("5:41", Kept(after)!.Pieces[0].Time);
    }

    [Fact]
    public void A_form_is_whole_on_a_terminal_of_twelve_rows()
    {
        SampleLog.Write(Logbook);
        using var terminal = new AtTheTerminal(Logbook, 80, 12, analyses: SampleLog.Known);
        terminal.Press(Key.Enter).Shows("date").Shows("wind").Shows("▸  1 49.25").Shows("soreness").Shows("notes").Shows("Ctrl+S save");
        terminal.Press(Key.CursorDown, Key.CursorDown, Key.CursorDown).Shows("▸  4 49.25").Type("5:3x").Shows("✗ “5:3x” is not a time");
    }

    /// <summary>Each field stands on the row of its piece, also after pieces were added on a low terminal and it grew.</summary>
    [Fact]
    public void Fields_stand_beside_their_own_pieces_whatever_was_added_and_resized()
    {
        SampleLog.Write(Logbook);
        using var terminal = new AtTheTerminal(Logbook, 80, 12, analyses: SampleLog.Known);
        terminal.Press(Key.Enter).Press(Key.CursorDown).Press(Key.N.WithCtrl, Key.N.WithCtrl, Key.N.WithCtrl, Key.N.WithCtrl);
        terminal.Resize(80, 30);
        List<string> lengths = [.. Kept(terminal)!.Pieces.Select(piece => piece.Length)];
        Assert.Equal(8, lengths.Count);
        for (int piece = 0; piece < lengths.Count; piece++)
            terminal.Shows($"{piece + 1,3} {lengths[piece]}".TrimEnd());
        terminal.Resize(80, 12).Press(Key.CursorUp, Key.CursorUp, Key.CursorUp, Key.CursorUp, Key.CursorUp, Key.CursorUp, Key.CursorUp);
        terminal.Shows($"  1 {lengths[0]}").Shows($"  2 {lengths[1]}");
    }

    private AtTheTerminal Known() => new(Logbook, analyses: SampleLog.Known);

    private static OutingDraft? Kept(AtTheTerminal terminal) =>
        terminal.Workspace.Logbook.Draft($"outing:{Ilse}") is { } text
            ? JsonSerializer.Deserialize(text, OutingDraftJson.Default.OutingDraft) : null;

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
