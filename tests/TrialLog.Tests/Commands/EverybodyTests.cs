namespace TrialLog.Tests.Commands;

/// <summary>What is written elsewhere than where the program was: commas in numbers, names from right to left, other line ends.</summary>
public class EverybodyTests
{
    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void A_spreadsheet_with_semicolons_and_decimal_commas_is_read_whatever_ends_its_lines(string end)
    {
        using TestProgram program = TestProgram.WithIlse();
        string file = program.File("komma.csv", string.Join(end,
            "date;paddler;hull;paddle;piece;length_in;distance_m;time", "2026-05-02;Ilse Maro;OC1;Reed;1;49,75;1000;5:32,5",
            "2026-05-02;Ilse Maro;OC1;Reed;2;50,25;1000;5:31", ""));
        program.Must("import", file);
        string csv = program.Must("export");
        Assert.Contains(",49.75,1000,5:32.5", csv);
        Assert.Contains(",50.25,1000,5:31", csv);
    }

    [Theory]
    [InlineData("נטע ברק")]
    [InlineData("ليلى حداد")]
    public void A_name_from_right_to_left_is_kept_and_shown_without_characters_that_turn_the_line(string name)
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("paddler", "add", name, "--reach", "126,4cm");
        program.Must("log", "--paddler", name, "--date", "2026-05-02", "50in,1km,5:32,6");
        foreach (string shown in (string[])[
            program.Must("paddler", "list"), program.Must("history", "--paddler", name), program.Must("export")])
        {
            Assert.DoesNotContain(shown, letter => letter is '\u200e' or '\u200f' or (>= '\u202a' and <= '\u202e')
                or (>= '\u2066' and <= '\u2069'));
        }

        Assert.Contains(name, program.Must("paddler", "list"));
        TestProgram.Outcome turned = program.Run("paddler", "add", "Ilse\u202eMaro");
        Assert.Equal(1, turned.Code);
    }
}
