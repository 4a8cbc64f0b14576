using System.Globalization;
using TrialLog.Application.Wording;
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

    [Fact]
    public void Segments_add_up_to_the_reach_by_the_surveys_own_definition()
    {
        ReachLine sum = Assert.Single(BodySurvey.Lines, line => line.SpreadInches == 0);
        Assert.All(sum.Terms, term => Assert.Equal(1, term.PerInch));
        Assert.Equal(
            Derived["SeatedReach mean alike"],
            sum.ReachInches(new()
            {
                SittingShoulderHeight = Length.FromInches(Derived["SittingShoulderHeight mean alike"]),
                ShoulderElbow = Length.FromInches(Derived["ShoulderElbow mean alike"]),
                ElbowGrip = Length.FromInches(Derived["ElbowGrip mean alike"]),
            }),
            0.0002);
    }

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
        Assert.InRange(start.Length.Inches, Derived["SeatedReach least at a stature of 68 in"], Derived["SeatedReach most at a stature of 68 in"]);
        Assert.InRange(Derived["SeatedReach most at a stature of 68 in"], start.Length.Inches + 2 * start.SpreadInches, start.Length.Inches + 3 * start.SpreadInches);
    }
}
