using CsCheck;

namespace TrialLog.Tests.Reports;

/// <summary>Text that means harm, or only looks like it: markup, quotes, controls, other scripts.</summary>
internal static class HostileText
{
    public static readonly string[] Samples =
    [
        "<script>window.hit = 1</script>",
        "<img src=x onerror=\"window.hit=1\">",
        "\"><svg onload=window.hit=1>",
        "' onmouseover='window.hit=1",
        "</title><script>window.hit=1</script>",
        "</style><h1>no</h1>",
        "]]><!--",
        "&lt;b&gt; &amp; &#x3c;script&#x3e;",
        "<a href=\"javascript:window.hit=1\">x</a>",
        "[x](javascript:window.hit=1) ![y](http://127.0.0.1:9/z) `code` **b** | c | # d",
        "- - -\n# heading\n1. list\n> quote\n```\nfence",
        "=HYPERLINK(\"http://127.0.0.1:9\")",
        "\u202Eesrever\u202C \u2066iso",
        "אילזה <b>שלום</b>",
        "👩🏽‍🚀 zwj and 🏳️‍🌈",
        "nul\0 bell\a esc\u001b[31m del\u007f c1\u0085 nel",
        "\ud800 half a pair \udc00",
        "\ufffe\uffff not characters",
        "A" + new string('a', 79),
        "line one\r\nline two\u2028line three",
    ];

    /// <summary>One of the samples, a piece of one, or several run together.</summary>
    public static readonly Gen<string> Any = Gen.Frequency(
        (3, Gen.OneOf(Samples)),
        (1, Gen.String),
        (2, Gen.Select(Gen.OneOf(Samples), Gen.OneOf(Samples), (a, b) => a[..(a.Length / 2)] + b)));
}
