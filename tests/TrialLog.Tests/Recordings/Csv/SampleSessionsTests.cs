using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Samples;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Recordings.Csv;

public class SampleSessionsTests
{
    public static TheoryData<string> Names => [.. SampleSession.All.Select(sample => sample.FileName)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_file_is_made_byte_for_byte_from_its_random_stream(string file)
    {
        SampleSession sample = SampleSession.All.Single(one => one.FileName == file);
        Assert.Equal(File.ReadAllText(PathOf(file)), System.Text.Encoding.UTF8.GetString(sample.Bytes()));
        Assert.Contains($"| `{file}` | {sample.Stream} |", File.ReadAllText(PathOf("README.md")), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_file_says_in_its_first_row_what_it_shows(string file) =>
        Assert.StartsWith("Shows ", Read(file).Rows[0].Piece!.Notes, StringComparison.Ordinal);

    [Fact]
    public void The_season_that_settles_settles_near_the_true_best_length()
    {
        Analysis analysis = Analyse(Import("settles.csv"));
        Assert.True(analysis.DiminishingReturns, Verdict.Of(analysis));
        Assert.True(Math.Abs(analysis.Best.Length.Inches - SettlesSample.BestInches) <= 0.5, Verdict.Of(analysis));
    }

    [Fact]
    public void Two_years_of_one_length_an_outing_do_not_settle()
    {
        Analysis analysis = Analyse(Import("one-length.csv"));
        Assert.False(analysis.DiminishingReturns, Verdict.Of(analysis));
        Assert.True(analysis.Best.LikelyHigh.InchesMoreThan(analysis.Best.LikelyLow) > 2, Verdict.Of(analysis));
    }

    [Fact]
    public void The_fleet_has_three_hulls_and_two_blades()
    {
        KnownLog log = Import("fleet.csv");
        Assert.Equal(
            (3, 2),
            (log.Outings.Select(outing => outing.HullId).Distinct().Count(),
            log.Paddles.Select(paddle => paddle.Blade).Distinct().Count()));
    }

    [Fact]
    public void The_squad_has_eight_paddlers_in_different_states()
    {
        KnownLog log = Import("squad.csv");
        Assert.Equal([0, 1, 4, 5, 6, 8, 9, 10],
            log.Paddlers.Select(paddler => log.Outings.Count(outing => outing.PaddlerId == paddler.Id)).Order());
        Assert.Contains(log.Paddlers, paddler => !paddler.SwapsOnWater);
        Assert.True(Analyse(log, "Maren Holt").DiminishingReturns);
        Assert.Contains(Analyse(log, "Kit Varga").Checks, check => check.Name == "order-tangled");
    }

    [Fact]
    public void Heart_rate_and_hidden_lengths_bring_the_paddler_who_leans_nearer_to_the_true_best_length()
    {
        KnownLog log = Import("lean.csv");
        double by = LeanSample.BestInches, told = Math.Abs(Best(heart: false, blind: false) - by),
            heart = Math.Abs(Best(heart: true, blind: false) - by), both = Math.Abs(Best(heart: true, blind: true) - by);
        Assert.True(told >= 1, $"{told}");
        Assert.True(heart < told && both < told, $"{told} {heart} {both}");
        Assert.InRange(by, Analyse(log).Best.LikelyLow.Inches, Analyse(log).Best.LikelyHigh.Inches);

        double Best(bool heart, bool blind) => Analyse(log with
        {
            Outings = [.. log.Outings.Select(outing => outing with
            {
                Blind = blind && outing.Blind,
                Pieces = [.. outing.Pieces.Select(piece => heart ? piece : piece with { HeartRate = null })],
            })],
        }).Best.Length.Inches;
    }

    [Fact]
    public void Pieces_too_short_for_the_race_cannot_tell_and_the_card_has_longer_ones()
    {
        Analysis analysis = Analyse(Import("long-race.csv"));
        Assert.Equal(Standing.CannotTell, analysis.Standing);
        Assert.Contains(StandingReason.PiecesTooShort, analysis.Why);
        Assert.True(analysis.Card.Distance.Metres > 1000, Verdict.Of(analysis));
    }

    [Fact]
    public void The_messy_file_is_refused_whole_and_its_good_rows_are_taken_when_asked()
    {
        CsvAdditions strict = CsvAssembly.Assemble(Read("messy.csv"), KnownLog.Fresh, Files.Options);
        CsvAdditions skipping = CsvAssembly.Assemble(Read("messy.csv"), KnownLog.Fresh, Files.Options with { SkipBad = true });
        Assert.True(strict.AddsNothing);
        Assert.Equal((23, 18), (skipping.RefusedRows, skipping.PiecesAdded));
        Assert.Equal(23, skipping.Problems.Select(problem => problem.Line).Distinct().Count());
    }

    [Fact]
    public void All_samples_fit_into_one_logbook_without_meeting()
    {
        KnownLog log = KnownLog.Fresh;
        foreach (SampleSession sample in SampleSession.All)
        {
            CsvAdditions additions = CsvAssembly.Assemble(Read(sample.FileName), log, Files.Options with { SkipBad = true });
            Assert.DoesNotContain(additions.Warnings, warning => warning.Contains("left aside", StringComparison.Ordinal));
            Assert.Empty(additions.GrownOutings);
            log = log.Plus(additions);
        }

        Assert.Equal(34, log.Paddlers.Count);
    }

    private static KnownLog Import(string file)
    {
        CsvAdditions additions = CsvAssembly.Assemble(Read(file), KnownLog.Fresh, Files.Options);
        Assert.Empty(additions.Problems);
        return KnownLog.Fresh.Plus(additions);
    }

    private static CsvLogContents Read(string file)
    {
        using FileStream stream = File.OpenRead(PathOf(file));
        return CsvLog.Read(stream, Files.Options);
    }

    private static Analysis Analyse(KnownLog log, string? name = null)
    {
        Paddler paddler = log.Paddlers.First(one => name is null || one.Name == name);
        List<Outing> outings = [.. log.Outings.Where(outing => outing.PaddlerId == paddler.Id)];
        return Tuner.Analyse(new AnalysisInput
        {
            Paddler = paddler,
            Hull = log.Hulls.First(hull => hull.Id == outings[0].HullId),
            Paddle = log.Paddles.First(paddle => paddle.Id == outings[0].Pieces[0].PaddleId),
            Hulls = log.Hulls,
            Paddles = log.Paddles,
            Outings = outings,
            Today = Files.Today,
        });
    }

    private static string PathOf(string file) => Repository.File("sample-sessions/" + file);
}
