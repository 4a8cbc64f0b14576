using TrialLog.Application.Reporting;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Reports.Coach;

/// <summary>What a report can be written as.</summary>
internal enum ReportFormat
{
    Html,
    Markdown,
    Csv,
}

/// <summary>Formats as they are spelled in commands and file names.</summary>
internal static class ReportFormats
{
    /// <summary>The format of that name; without a name the one that the file's name ends in, else HTML.</summary>
    /// <exception cref="InvalidValueException">There is no such format.</exception>
    public static ReportFormat Of(string? name, string? file) => name?.Trim().ToLowerInvariant() switch
    {
        null => Path.GetExtension(file)?.ToLowerInvariant() switch
        {
            ".md" or ".markdown" => ReportFormat.Markdown,
            ".csv" => ReportFormat.Csv,
            _ => ReportFormat.Html,
        },
        "html" => ReportFormat.Html,
        "md" or "markdown" => ReportFormat.Markdown,
        "csv" => ReportFormat.Csv,
        _ => throw new InvalidValueException($"“{Quoted.Brief(name)}” is not a format; it is html, md or csv."),
    };

    public static string Spelled(this ReportFormat format) => format switch
    {
        ReportFormat.Markdown => "md",
        ReportFormat.Csv => "csv",
        _ => "html",
    };

    public static string Write(this ReportFormat format, ReportContents contents) => format switch
    {
        ReportFormat.Markdown => PaddlerReport.ToMarkdown(contents),
        ReportFormat.Csv => PaddlerReport.ToCsv(contents),
        _ => PaddlerReport.ToHtml(contents),
    };
}
