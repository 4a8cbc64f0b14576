using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Values;

public class CloseNamesTests
{
    private static readonly Gen<string> Letters = Gen.Char['a', 'z'].Array[4, 12].Select(letters => new string(letters));

    [Fact]
    public void One_letter_left_out_doubled_or_swapped_is_a_slip() =>
        Gen.Select(Letters, Gen.Int[0, 10], Gen.Int[0, 2]).Sample((name, place, kind) =>
        {
            int at = Math.Min(place, name.Length - 2);
            string slip = kind switch
            {
                0 => name.Insert(at, name[at].ToString()),
                1 when name.Length > 4 => name.Remove(at, 1),
                _ => name[..at] + name[at + 1] + name[at] + name[(at + 2)..],
            };
            Assert.Equal(string.Equals(slip, name, StringComparison.OrdinalIgnoreCase) ? null : name, new CloseNames([name]).To(slip));
        });

    [Theory]
    [InlineData("Zoe Lund", "Zoë Lund")]
    [InlineData("Bjorn", "Bjørn")]
    [InlineData("Tova  lind", "Tova Lind")]
    [InlineData("Marens adjustable", "Maren's adjustable")]
    public void Blanks_case_accents_and_signs_are_slips(string name, string known) =>
        Assert.Equal(known, new CloseNames(["Jory Pell", known]).To(name));

    [Theory]
    [InlineData("OC2", "OC1")]
    [InlineData("कि", "की")]
    [InlineData("V1", "OC1")]
    [InlineData("Reed 2", "Reed")]
    [InlineData("Tova L", "Tova M")]
    [InlineData("Ben", "Bea")]
    [InlineData("Tam Ekberg", "Kit Varga")]
    [InlineData("TOVA LIND", "Tova Lind")]
    [InlineData("🛶", "🏁")]
    [InlineData("", "Me")]
    [InlineData("\uD83D", "\uDEF6")]
    public void Numbers_initials_and_other_names_are_not(string name, string known) => Assert.Null(new CloseNames([known]).To(name));

    [Fact]
    public void A_name_that_is_known_is_never_taken_for_another() =>
        Assert.Null(new CloseNames(["Tova Lind", "Tova Lund"]).To("tova lund"));
}
