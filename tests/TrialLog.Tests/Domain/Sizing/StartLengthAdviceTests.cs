using CsCheck;
using TrialLog.Application.Wording;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Sizing;

public class StartLengthAdviceTests
{
    [Fact]
    public void From_stature_alone_the_seated_reach_is_asked_for() =>
        Assert.Equal(
            "Measure your seated reach: it cuts the uncertainty from 1.2 to 0.8 in.",
            StartLengthAdvice.WhatNext(new() { Stature = Length.Parse("68") }, null, LengthUnit.Inches));

    [Fact]
    public void In_centimetres_the_same_is_said_in_centimetres() =>
        Assert.Equal(
            "Measure your seated reach: it cuts the uncertainty from 3.1 to 2 cm.",
            StartLengthAdvice.WhatNext(new() { Stature = Length.Parse("68") }, null, LengthUnit.Centimetres));

    [Fact]
    public void What_is_asked_for_delivers_what_was_promised() =>
        Gen.Select(Bodies.Some, Bodies.All).Sample((body, all) =>
        {
            foreach (Improvement improvement in StartLengthAdvice.Improvements(body, null))
            {
                StartLength then = StartLength.From(body.With(improvement.Measure, all[improvement.Measure]), null);
                Assert.Equal(improvement.ToInches, then.SpreadInches, 1e-12);
                Assert.True(then.SpreadInches < StartLength.From(body, null).SpreadInches);
            }
        });

    [Fact]
    public void Where_no_body_measure_helps_an_outing_is_asked_for() =>
        Assert.Contains("an outing", StartLengthAdvice.WhatNext(new() { SeatedReach = Length.Parse("50") }, null, LengthUnit.Inches));

    [Fact]
    public void Every_basis_is_explained_with_its_length() =>
        Gen.Select(Bodies.Some, Gen.Bool).Sample((body, suits) =>
        {
            Length? known = suits ? Length.Parse("50") : null;
            string said = StartLengthAdvice.Explain(body, known, LengthUnit.Inches);
            Assert.Contains(Say.Tenth(StartLength.From(body, known).Length, LengthUnit.Inches), said);
        });
}
