using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Text;

/// <summary>Courses as they are spelled in files and commands.</summary>
internal static class CourseText
{
    public static string Of(Course course) => course switch
    {
        Course.Out => "out",
        Course.Back => "back",
        Course.Loop => "loop",
        _ => "round-trip",
    };

    /// <exception cref="InvalidValueException">It is none of the four.</exception>
    public static Course Parse(string text) => text.Trim().ToLowerInvariant() switch
    {
        "round-trip" => Course.RoundTrip,
        "out" => Course.Out,
        "back" => Course.Back,
        "loop" => Course.Loop,
        _ => throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a course; it is round-trip, out, back or loop."),
    };
}
