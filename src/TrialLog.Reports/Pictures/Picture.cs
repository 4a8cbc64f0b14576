using System.Xml.Linq;

namespace TrialLog.Reports.Pictures;

/// <summary>A picture and what it says to somebody who cannot see it.</summary>
/// <param name="Title">A short title.</param>
/// <param name="Description">What it shows, in sentences with the numbers that matter.</param>
/// <param name="Key">How to read its marks.</param>
/// <param name="Svg">The drawing.</param>
internal sealed record Picture(string Title, string Description, string Key, XElement Svg);
