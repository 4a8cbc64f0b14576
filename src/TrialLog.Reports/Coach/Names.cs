using TrialLog.Application.Reporting;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Reports.Coach;

/// <summary>What hulls, paddles and outings are called in a page.</summary>
internal sealed class Names(ReportContents contents)
{
    private readonly Dictionary<Guid, string> _hulls = contents.Hulls.DistinctBy(hull => hull.Id)
        .ToDictionary(hull => hull.Id, hull => PlainText.Line(hull.Name));
    private readonly Dictionary<Guid, string> _paddles = contents.Paddles.DistinctBy(paddle => paddle.Id)
        .ToDictionary(paddle => paddle.Id, paddle => PlainText.Line(paddle.Name));

    public string Hull(Guid id) => _hulls.GetValueOrDefault(id, "unknown hull");

    public string Paddle(Guid id) => _paddles.GetValueOrDefault(id, "unknown paddle");

    /// <summary>As <see cref="Of"/>, on two lines for a table.</summary>
    public static string OnTwoLines(Outing outing) =>
        outing.Label.Length == 0 ? Say.Day(outing.Date) : $"{Say.Day(outing.Date)}\n{PlainText.Line(outing.Label)}";

    /// <summary>The outing's date, and its label where it has one.</summary>
    public static string Of(Outing outing) =>
        outing.Label.Length == 0 ? Say.Day(outing.Date) : $"{Say.Day(outing.Date)}, {PlainText.Line(outing.Label)}";
}
