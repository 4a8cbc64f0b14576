using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace TrialLog.Tests.Reports;

/// <summary>What every page must hold to, whatever it says.</summary>
internal static partial class PageLaws
{
    private const string A4 = "A4", Letter = "Letter";

    private static (double Width, double Height) Inches(string paper) => paper == A4 ? (8.27, 11.69) : (8.5, 11);

    public static async Task Holds(BrowserPage page)
    {
        Assert.Empty(page.Complaints);
        Assert.Single(page.Requests);
        Assert.Equal("", await page.Evaluate("String(window.hit ?? '')"));
        Assert.Equal(
            "0", await page.Evaluate(
            "document.querySelectorAll('script,iframe,object,embed,img,a:not([href^=\"#\"]),form,link,base').length"));

        int[] levels = await Numbers(page, "[...document.querySelectorAll('h1,h2,h3,h4,h5,h6')].map(h => +h.tagName[1])");
        Assert.Equal(1, levels[0]);
        Assert.Single(levels, 1);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1, "a heading level is left out"));

        Assert.Equal("true", await page.Evaluate("""
            [...document.querySelectorAll('svg')].every(s => s.getAttribute('role') === 'img'
                && s.getAttribute('aria-labelledby').split(' ').every(id => document.getElementById(id)?.textContent.length > 5))
            """));
        Assert.Equal("0", await page.Evaluate("""
            (ids => ids.length - new Set(ids).size)([...document.querySelectorAll('[id]')].map(e => e.id))
            """));
        Assert.Equal(
            "true",
            await page.Evaluate(
            "[...document.querySelectorAll('th')].every(t => t.scope) && [...document.querySelectorAll('table')].every(t => t.caption)"));
        await page.Evaluate("document.querySelectorAll('details').forEach(d => d.open = true)");
        await IsReadable(page);
        foreach (int width in new[] { 1200, 390, 320 })
        {
            await page.Resize(width, 900);
            Assert.Equal("true", await page.Evaluate("document.scrollingElement.scrollWidth <= window.innerWidth"));
            int[] sizes = await Numbers(page, "[...document.querySelectorAll('svg')].flatMap(s => { const r = s.getBoundingClientRect(); " +
                "return [r.width, r.height]; }).map(Math.round)");
            Assert.All(sizes, size => Assert.True(size >= 150, $"a picture is {size} px at {width} px"));
        }

        await page.Evaluate("document.querySelectorAll('details').forEach(d => d.open = false)");
    }

    // WCAG 2.1, success criterion 1.4.3: relative luminance and contrast as defined there. The smallest text is held to it too.
    private static async Task IsReadable(BrowserPage page)
    {
        string least = await page.Evaluate("""
            (() => {
              const rgb = c => (c.match(/[\d.]+/g) ?? [0, 0, 0, 0]).map(Number);
              const light = ([r, g, b]) => [r, g, b].map(v => v / 255).map(v => v <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
                  .reduce((sum, v, i) => sum + v * [0.2126, 0.7152, 0.0722][i], 0);
              const back = e => {
                for (; e; e = e.parentElement) {
                  const c = rgb(getComputedStyle(e).backgroundColor);
                  if (c[3] !== 0) return c;
                }
                return [255, 255, 255];
              };
              let least = 99;
              for (const e of document.querySelectorAll('body *')) {
                if (![...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim())) continue;
                if (['title', 'desc'].includes(e.tagName)) continue;
                const fore = e.tagName === 'text' ? rgb(getComputedStyle(e).fill) : rgb(getComputedStyle(e).color);
                const [a, b] = [light(fore), light(e.tagName === 'text' ? [255, 255, 255] : back(e))];
                least = Math.min(least, (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05));
              }
              return least;
            })()
            """);
        Assert.InRange(double.Parse(least, CultureInfo.InvariantCulture), 4.5, 21);
    }

    /// <summary>
    /// Printed on either paper, what is to be read fills two sheets and no more, each of them by half at least; the list of what follows
    /// begins the third.
    /// </summary>
    public static async Task ReadsOnTwoSheets(BrowserPage page, string[] first, string[] second)
    {
        Assert.SkipUnless(File.Exists("/usr/bin/pdftotext"),
            "No pdftotext found: the print was NOT checked. Install Debian's poppler-utils to run this.");
        foreach (string paper in new[] { A4, Letter })
        {
            (double width, double height) = Inches(paper);
            string file = Path.GetTempFileName();
            try
            {
                await File.WriteAllBytesAsync(file, await page.Print(width, height));
                string[] sheets = [.. (await Run("pdftotext", "-bbox", file, "-")).Split("<page ").Skip(1)];
                string Words(int sheet) => string.Join(' ', Word().Matches(sheets[sheet]).Select(word => word.Groups["word"].Value));
                Assert.All(first, words => Assert.Contains(words, Words(0)));
                Assert.All(second, words => Assert.Contains(words, Words(1)));
                Assert.StartsWith("Contents", Words(2));
                foreach (int sheet in new[] { 0, 1 })
                    Assert.True(Regex.Matches(sheets[sheet], "yMax=\"([0-9.]+)\"")
                        .Max(end => double.Parse(end.Groups[1].Value, CultureInfo.InvariantCulture)) > 0.6 * 72 * height,
                        $"sheet {sheet + 1} of {paper} is half empty");
            }
            finally
            {
                File.Delete(file);
            }
        }
    }

    /// <summary>Printed on either paper, every word of the page is inside the margins of some sheet.</summary>
    public static async Task PrintsWhole(BrowserPage page, params string[] mustShow)
    {
        Assert.SkipUnless(File.Exists("/usr/bin/pdftotext"),
            "No pdftotext found: the print was NOT checked. Install Debian's poppler-utils to run this.");
        foreach (string paper in new[] { A4, Letter })
        {
            (double width, double height) = Inches(paper);
            await Fits(page, paper, width);
            string file = Path.GetTempFileName();
            try
            {
                await File.WriteAllBytesAsync(file, await page.Print(width, height));
                string boxes = await Run("pdftotext", "-bbox", file, "-");
                foreach (Match word in Word().Matches(boxes))
                {
                    double left = Number(word, "left"), right = Number(word, "right");
                    Assert.True(left >= 12 && right <= 72 * width - 12,
                        $"“{word.Groups["word"].Value}” is cut off on {paper}: {left:0} to {right:0} of {72 * width:0} points");
                }

                string[] sheets = (await Run("pdftotext", "-layout", file, "-")).Split('\f', StringSplitOptions.RemoveEmptyEntries);
                Assert.True(sheets[^1].Split('\n').Count(line => line.Trim().Length > 0) > 2,
                    $"the last sheet of {paper} has next to nothing on it");
                string text = Spaces().Replace(await Run("pdftotext", "-layout", file, "-"), " ");
                Assert.All(mustShow, shown => Assert.Contains(shown, text));
            }
            finally
            {
                File.Delete(file);
            }
        }
    }

    // Laid out for print on the sheet's own width, nothing may stick out: a browser that prints would cut it off or shrink the page.
    private static async Task Fits(BrowserPage page, string paper, double width)
    {
        const double margins = 2 * 14 / 25.4;
        await page.AsPrinted(true);
        await page.Resize((int)Math.Floor(96 * (width - margins)), 900);
        string widest = await page.Evaluate("""
            [...document.querySelectorAll('body *')].map(e => [e.getBoundingClientRect().right, e])
                .filter(([right, e]) => right > window.innerWidth + 1 && !e.closest('svg'))
                .map(([right, e]) =>
                  `${e.tagName} “${e.textContent.slice(0, 40)}” ends at ${Math.round(right)} of ${window.innerWidth}`)[0] ?? ''
            """);
        await page.AsPrinted(false);
        Assert.True(widest.Length == 0, $"On {paper}, {widest}");
    }

    private static double Number(Match word, string name) => double.Parse(word.Groups[name].Value, CultureInfo.InvariantCulture);

    private static async Task<int[]> Numbers(BrowserPage page, string script) =>
        JsonSerializer.Deserialize<int[]>(await page.Evaluate($"JSON.stringify({script})"))!;

    private static async Task<string> Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
        string output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
        return output;
    }

    [GeneratedRegex("<word xMin=\"(?<left>[-0-9.]+)\" yMin=\"[-0-9.]+\" xMax=\"(?<right>[-0-9.]+)\" yMax=\"[-0-9.]+\">(?<word>[^<]*)<")]
    private static partial Regex Word();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
