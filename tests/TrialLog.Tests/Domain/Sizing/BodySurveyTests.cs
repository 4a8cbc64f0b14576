using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Sizing;

public class BodySurveyTests
{
    // Derived from ANSUR II (Gordon et al. 2014, NATICK/TR-15/007) by tests/reference/sizing/ansur-ii.R.
    private static readonly Dictionary<string, double> Derived =
        File.ReadLines(Repository.File("tests/reference/sizing/ansur-ii.csv")).Skip(1)
            .Select(line => line.Split(',')).ToDictionary(cells => cells[0], cells => double.Parse(cells[1], CultureInfo.InvariantCulture));

    [Fact]
    public void Every_line_has_the_coefficients_and_the_spread_that_the_survey_gives()
    {
        foreach (ReachLine line in BodySurvey.Lines.Where(line => line.SpreadInches > 0))
        {
            string name = "line " + string.Join('+', line.Terms.Select(term => term.Measure));
            Assert.Equal(Derived[name + " intercept"], line.InterceptInches, 4);
            foreach ((BodyMeasure measure, double perInch) in line.Terms)
                Assert.Equal(Derived[$"{name} {measure}"], perInch, 4);
            Assert.Equal(Derived[name + " spread"], line.SpreadInches, 0.0006);
        }
    }

    // Of the survey's people, women and men apart: had each a best length around the true reach, read their measures off a tape, and
    // gone by the line. 90 % is what is said.
    [Fact]
    public void The_range_from_every_line_holds_nine_in_ten_women_and_nine_in_ten_men()
    {
        foreach (ReachLine line in BodySurvey.Lines.Where(line => line.SpreadInches > 0))
        {
            string name = "line " + string.Join('+', line.Terms.Select(term => term.Measure));
            BodyMeasures body = line.Terms.Aggregate(
                BodyMeasures.Unknown, (known, term) => known.With(term.Measure, Length.FromInches(30)));
            Assert.Equal(Derived[name + " start spread"], StartLength.From(body, null).SpreadInches, 0.001);
            Assert.InRange(Derived[name + " holds women"], 0.88, 0.92);
            Assert.InRange(Derived[name + " holds men"], 0.88, 0.92);
        }

        Assert.Equal(Derived["nothing start spread"], StartLength.From(BodyMeasures.Unknown, null).SpreadInches, 0.005);
        Assert.InRange(Derived["nothing holds women"], 0.88, 0.92);
        Assert.InRange(Derived["nothing holds men"], 0.88, 0.92);
    }

    // Independent errors add as squares: the line's own with the tape, and that of the arm raised a second time.
    [Fact]
    public void A_line_from_the_fingertip_allows_for_the_arm_raised_twice()
    {
        foreach (ReachLine line in BodySurvey.Lines)
        {
            double more = line.Terms.Any(term => term.Measure == BodyMeasure.OverheadReach) ? 0.25 : 0;
            Assert.Equal(Math.Pow(line.SpreadWithReadingsInches, 2) + more, Math.Pow(line.SpreadAgainstReachInches, 2), 1e-9);
        }
    }

    [Fact]
    public void No_line_gives_a_longer_body_a_shorter_paddle() =>
        Assert.All(BodySurvey.Lines.SelectMany(line => line.Terms),
            term => Assert.True(term.PerInch > 0 || term.Measure == BodyMeasure.HandLength));

    [Fact]
    public void The_fingertip_less_the_hand_and_half_the_palm_is_the_reach_as_the_survey_has_it() =>
        Assert.Equal(
            Derived["SeatedReach mean alike"],
            StartLength.From(new()
            {
                OverheadReach = Length.FromInches(Derived["OverheadReach mean alike"]),
                HandLength = Length.FromInches(Derived["HandLength mean alike"]),
                PalmLength = Length.FromInches(Derived["PalmLength mean alike"]),
            }, null).Length.Inches,
            0.0002);

    [Fact]
    public void The_smallest_of_each_measure_is_the_surveys() =>
        Assert.All(Enum.GetValues<BodyMeasure>(),
            measure => Assert.Equal(Derived[$"{measure} least"], BodySurvey.SmallestInches[measure], 0.005));

    [Fact]
    public void What_is_said_of_people_of_whom_nothing_is_known_is_what_the_survey_gives()
    {
        Assert.Equal(BodySurvey.MeanReachInches, Derived["SeatedReach mean alike"], 0.005);
        Assert.Equal(BodySurvey.ReachSpreadInches, Derived["SeatedReach sd alike"], 0.005);
        Assert.Equal(BodySurvey.CrownAboveEyeInches, Derived["CrownAboveEye mean alike"], 0.005);
    }

    // The range that the survey's 331 people of one height had: a start length from stature must allow for it.
    [Fact]
    public void The_line_from_stature_leaves_room_for_the_people_of_one_height()
    {
        var start = StartLength.From(new() { Stature = Length.FromInches(68) }, null);
        (double least, double most) = (
            Derived["SeatedReach at a stature of 68 in least"], Derived["SeatedReach at a stature of 68 in most"]);
        Assert.Equal(9.4, most - least, 0.05);
        Assert.InRange(start.Length.Inches - least, 2 * start.SpreadInches, 3 * start.SpreadInches);
        Assert.InRange(most - start.Length.Inches, 2 * start.SpreadInches, 3 * start.SpreadInches);
    }
}
