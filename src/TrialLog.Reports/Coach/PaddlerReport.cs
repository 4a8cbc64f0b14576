using TrialLog.Application.Reporting;
using TrialLog.Reports.Documents;

namespace TrialLog.Reports.Coach;

/// <summary>The coach's report of one paddler, in each of its formats.</summary>
public static class PaddlerReport
{
    /// <summary>
    /// One self-contained HTML page: no script, nothing loaded, style and pictures inside, fit for a phone, for A4 and
    /// for Letter.
    /// </summary>
    public static string ToHtml(ReportContents contents) => Html.Write(ReportDocument.Of(contents));

    /// <summary>The same in Markdown (CommonMark with pipe tables), each picture as its description.</summary>
    public static string ToMarkdown(ReportContents contents) => Markdown.Write(ReportDocument.Of(contents));

    /// <summary>The pieces as a table for a spreadsheet: RFC 4180, UTF-8, comma, header row; a piece a row.</summary>
    public static string ToCsv(ReportContents contents) => PiecesCsv.Write(contents);
}
