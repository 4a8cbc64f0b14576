using CsCheck;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Domain.Sizing;

namespace TrialLog.Tests.Application;

public class StartWordsTests
{
    [Fact]
    public void From_stature_alone_the_seated_reach_is_asked_for() =>
        Assert.Equal(
            "Measure your seated reach: it cuts the uncertainty from 1.8 to 0.8 in. If no arm can be raised, your arm span and sitting " +
                "eye height cut it to 1.5 in.",
            StartWords.WhatNext(new() { Stature = Length.Parse("68") }, null, LengthUnit.Inches));

    [Fact]
    public void In_centimetres_the_same_is_said_in_centimetres() =>
        Assert.Equal(
            "Measure your seated reach: it cuts the uncertainty from 4.5 to 2 cm. If no arm can be raised, your arm span and sitting eye " +
                "height cut it to 3.8 cm.",
            StartWords.WhatNext(new() { Stature = Length.Parse("68") }, null, LengthUnit.Centimetres));

    [Fact]
    public void What_is_asked_for_delivers_what_was_promised() =>
        Gen.Select(Bodies.Some, Bodies.All).Sample((body, all) =>
        {
            foreach (Improvement improvement in StartLengthAdvice.Improvements(body, null))
            {
                BodyMeasures more = body.With(improvement.Measure, all[improvement.Measure]);
                if (BodyChecks.ReachTooFar(more) is not null)
                    continue;
                StartLength then = StartLength.From(more, null);
                Assert.Equal(improvement.ToInches, then.SpreadInches, 1e-12);
                Assert.True(then.SpreadInches < StartLength.From(body, null).SpreadInches);
            }
        });

    [Fact]
    public void Where_no_body_measure_helps_an_outing_is_asked_for() =>
        Assert.Contains(
            "an outing", StartWords.WhatNext(new() { SeatedReach = Length.Parse("50") }, null, LengthUnit.Inches),
            StringComparison.OrdinalIgnoreCase);

    [Fact]
    public void Every_basis_is_explained_with_its_length() =>
        Gen.Select(Bodies.Some, Gen.Bool).Sample((body, suits) =>
        {
            Length? known = suits ? Length.Parse("50") : null;
            string said = StartWords.Explain(body, known, LengthUnit.Inches);
            Assert.Contains(Say.Tenth(StartLength.From(body, known).Length, LengthUnit.Inches), said);
        });

    [Fact]
    public void Measures_are_listed_as_one_says_them()
    {
        Assert.StartsWith("Your arm span suggests a seated reach of about ",
            StartWords.Explain(new() { ArmSpan = Length.Parse("70") }, null, LengthUnit.Inches));
        Assert.StartsWith("Your sitting eye height and arm span suggest a seated reach of about ",
            StartWords.Explain(new() { ArmSpan = Length.Parse("70"), EyeHeight = Length.Parse("31") }, null, LengthUnit.Inches));
    }
}
