using System.CommandLine;
using TrialLog.Application.Setup;
using TrialLog.Application.Text;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Sizing;

/// <summary>The options for body measures, spelled alike wherever they are asked for.</summary>
internal sealed class BodyOptions
{
    private readonly Option<string?>
        _reach = PaddlerCommand.Text("--reach", "Seated reach, seat to the middle of the palm of the raised arm.", "L"),
        _stature = PaddlerCommand.Text("--stature", "Standing height, where the reach is not measured.", "L"),
        _start = PaddlerCommand.Text("--start", "Length of a paddle already known to suit in a solo canoe.", "L"),
        _shoulderHeight = PaddlerCommand.Text("--shoulder-height", "Seat to the bony tip of the shoulder.", "L"),
        _shoulderElbow = PaddlerCommand.Text("--shoulder-elbow", "Tip of the shoulder to the elbow.", "L"),
        _elbowGrip = PaddlerCommand.Text("--elbow-grip", "Elbow to the centre of a gripped rod.", "L"),
        _eyeHeight = PaddlerCommand.Text("--eye-height", "Seat to the eye, sitting upright.", "L"),
        _shoulderBreadth = PaddlerCommand.Text("--shoulder-breadth", "Between the bony tips of the shoulders.", "L"),
        _span = PaddlerCommand.Text("--span", "Fingertip to fingertip, arms stretched sideways.", "L"),
        _overhead = PaddlerCommand.Text("--overhead", "Seat to the fingertip of the raised arm.", "L"),
        _hand = PaddlerCommand.Text("--hand", "Wrist crease to the tip of the middle finger.", "L"),
        _palm = PaddlerCommand.Text("--palm", "Wrist crease to the root of the middle finger.", "L");

    /// <summary>In the order of the help.</summary>
    public IReadOnlyList<Option<string?>> All =>
        [_reach, _overhead, _hand, _palm, _stature, _span, _eyeHeight, _start, _shoulderHeight, _shoulderElbow, _elbowGrip,
            _shoulderBreadth];

    /// <summary>Whether any was given.</summary>
    public bool AnyGiven(ParseResult parsed) => All.Any(option => parsed.GetValue(option) is not null);

    /// <summary>What was given; the rest is null, and what was given as <c>none</c> is to be forgotten.</summary>
    /// <exception cref="InvalidValueException">One cannot be read as a length.</exception>
    public PaddlerDetails Read(ParseResult parsed, LengthUnit bare)
    {
        Length? Measure(Option<string?> option) =>
            Spelling.IsNone(parsed.GetValue(option)) ? null : TextForms.Length(bare).ReadIfAny(parsed.GetValue(option));
        (Option<string?> Option, BodyMeasure Measure)[] measures =
        [
            (_reach, BodyMeasure.SeatedReach), (_stature, BodyMeasure.Stature), (_shoulderHeight, BodyMeasure.SittingShoulderHeight),
            (_shoulderElbow, BodyMeasure.ShoulderElbow), (_elbowGrip, BodyMeasure.ElbowGrip), (_eyeHeight, BodyMeasure.EyeHeight),
            (_shoulderBreadth, BodyMeasure.ShoulderBreadth), (_span, BodyMeasure.ArmSpan), (_overhead, BodyMeasure.OverheadReach),
            (_hand, BodyMeasure.HandLength), (_palm, BodyMeasure.PalmLength),
        ];
        return new PaddlerDetails
        {
            SeatedReach = Measure(_reach),
            Stature = Measure(_stature),
            KnownLength = Measure(_start),
            SittingShoulderHeight = Measure(_shoulderHeight),
            ShoulderElbow = Measure(_shoulderElbow),
            ElbowGrip = Measure(_elbowGrip),
            EyeHeight = Measure(_eyeHeight),
            ShoulderBreadth = Measure(_shoulderBreadth),
            ArmSpan = Measure(_span),
            OverheadReach = Measure(_overhead),
            HandLength = Measure(_hand),
            PalmLength = Measure(_palm),
            Clear = [.. measures.Where(one => Spelling.IsNone(parsed.GetValue(one.Option))).Select(one => one.Measure)],
            ClearToo = Spelling.IsNone(parsed.GetValue(_start)) ? PaddlerFields.KnownLength : PaddlerFields.None,
        };
    }
}
