using System.Globalization;
using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Values;

public class NameTests
{
    // Python's unicodedata: tests/reference/names/normal-forms.py.
    [Fact]
    public void Accents_join_and_part_as_unicode_has_it()
    {
        string[][] rows = [
            .. File.ReadLines(Repository.File("tests/reference/names/normal-forms.csv")).Skip(1).Select(line => line.Split(','))];
        Assert.Equal(2428, rows.Length);
        foreach (string[] row in rows)
        {
            Assert.Equal(Text(row[1]), Accents.Compose(Text(row[0])));
            Assert.Equal(Text(row[2]), Accents.Decompose(Text(row[0])));
        }

        static string Text(string hexadecimal) =>
            string.Concat(hexadecimal.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Select(unit => (char)int.Parse(unit, NumberStyles.HexNumber, CultureInfo.InvariantCulture)));
    }

    [Theory]
    [InlineData("Ren\u0065\u0301e Vael", "Ren\u00e9e Vael")]
    [InlineData("\u200bOC\ufeff1\u200b ", "OC1")]
    [InlineData("نی\u200cلا", "نی\u200cلا")]
    [InlineData("  Ilse  Maro ", "Ilse  Maro")]
    public void Names_that_look_alike_are_alike(string typed, string name) => Assert.Equal(name, NameRule.Checked(typed, "paddler"));

    [Theory]
    [InlineData("\u200b")]
    [InlineData("\u200d\u200c")]
    [InlineData(" \u3164 \u200b")]
    [InlineData("")]
    [InlineData(null)]
    public void A_name_has_something_to_be_seen(string? typed)
    {
        Assert.False(NameRule.TryCheck(typed, "paddler", out _, out string? problem));
        Assert.Contains("needs a name", problem);
    }

    [Theory]
    [InlineData("Il\u0007se", "control characters")]
    [InlineData("Il\u202ese", "control characters")]
    [InlineData("0123456789012345678901234567890123456789012345678901234567890123456789012345678901", "longer than 80")]
    public void A_name_cannot_drive_a_terminal_nor_fill_a_page(string typed, string says)
    {
        Assert.False(NameRule.TryCheck(typed, "paddler", out _, out string? problem));
        Assert.Contains(says, problem);
    }

    [Fact]
    public void A_name_that_was_checked_is_left_as_it_is() =>
        Gen.String[Gen.Char, 0, 90].Sample(typed =>
        {
            if (NameRule.TryCheck(typed, "hull", out string? name, out _))
                Assert.Equal(name, NameRule.Checked(name, "hull"));
        }, iter: 10_000);

    [Theory]
    [InlineData("Renee Vael", "Renée Vael")]
    [InlineData("Re\u0300n", "Ren")]
    [InlineData("Re\u036Fn", "Ren")]
    public void Accents_do_not_make_another_name(string typed, string known) => Assert.Equal(known, new CloseNames([known]).To(typed));
}
