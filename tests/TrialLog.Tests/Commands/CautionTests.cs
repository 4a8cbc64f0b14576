using System.Text.Json;
using System.Text.RegularExpressions;
using TrialLog.Application.Wording;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Commands;

/// <summary>What is said for safety: once a page, whole; and while it hurts nothing beside it that tempts.</summary>
public class CautionTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_page_that_sends_somebody_afloat_has_the_water_caution_once(bool sore)
    {
        using TestProgram program = Ilse(sore);
        string In(string name) => Path.Combine(program.Folder, name);
        program.Must("next", "--squad", "--out", In("squad.html"), "--each", In("week"), "--calendar", In("squad.ics"));
        program.Must("plan", "--weeks", "2", "--paddles", "Reed", "--out", In("plan.html"));
        program.Must("report", "--out", In("report.html"));
        program.Must("report", "--out", In("report.md"));
        program.Must("order-sheet", "--out", In("order.md"));
        program.Must("next", "--blind", In("partner.txt"));
        Dictionary<string, string> pages = new()
        {
            ["next"] = program.Must("next"), ["next --squad"] = program.Must("next", "--squad"),
            ["plan"] = program.Must("plan", "--weeks", "2", "--paddles", "Reed"), ["order-sheet"] = program.Must("order-sheet"),
            ["steering"] = program.Must("steering", "--blade", "22in"),
        };
        foreach (string page in Directory.GetFiles(program.Folder, "*.*", SearchOption.AllDirectories)
            .Where(page => Path.GetExtension(page) is ".html" or ".md" || page == In("partner.txt")))
            pages[Path.GetFileName(page)] = File.ReadAllText(page);
        Assert.Equal(sore, !pages.ContainsKey("ilse-maro.html"));
        if (sore)
        {
            // Nobody is sent to a maker or to the steering seat while it hurts.
            foreach (string page in new[] { "order-sheet", "steering", "order.md" })
                Assert.DoesNotContain("ollow local rules", pages[page]);
            pages = pages.Where(page => page.Key is not ("order-sheet" or "steering" or "order.md")).ToDictionary();
        }

        Assert.All(pages, page => Assert.True(Regex.Count(Regex.Replace(page.Value, "\\s+", " "), "ollow local rules") == 1,
            $"{page.Key}: {page.Value}"));
    }

    [Fact]
    public void While_it_hurts_every_page_says_one_thing()
    {
        using TestProgram program = Ilse(sore: true);
        string report = Path.Combine(program.Folder, "report.md"), sheet = Path.Combine(program.Folder, "squad.md"),
            order = Path.Combine(program.Folder, "order.md");
        program.Must("report", "--out", report);
        program.Must("next", "--squad", "--out", sheet);
        program.Must("order-sheet", "--out", order);
        program.Must("decide", "--length", "51in", "--kept", "--on", "2026-05-20");
        string[] rested = [program.Must("curve"), program.Must("progress"), program.Must("check"), program.Must("transfer"),
            program.Must("order-sheet"), program.Must("start-length"), program.Must("steering", "--blade", "22in"),
            program.Must("technique", "--hand", "2in below"), File.ReadAllText(order)];
        string[] pages = [program.Must("next"), program.Must("next", "--squad"), File.ReadAllText(report), File.ReadAllText(sheet),
            .. rested];
        string[] tempting = ["utings to go", "teaches you most", "teach you most", "Cut to", "Order at", "Cut long first", "likely",
            "Keep testing", "Paddle a third", "Warning:", "ain left", "should gain", "worthwhile gain", "est length", "longer, so",
            "Compare the two", "an outing that compares"];
        // A sheet of a whole squad says under its table what “to win” means.
        foreach (string page in pages)
            Assert.All(tempting, words => Assert.DoesNotContain(words, Regex.Replace(page.Replace("true best length", ""), "\\s+", " ")));
        // Nothing longer than what is open, but where it was paddled, decided, or the paddle goes so far.
        Assert.All(rested, page =>
        {
            Assert.Contains("Rest first: you logged soreness of 6 on 1 June 2026, and nothing since", Regex.Replace(page, "\\s+", " "));
            Assert.Contains(RestFirst.Later.Replace(" ", ""), Regex.Replace(page, "\\s+", ""));
            // In a boat that sits higher a longer one is as open.
            if (!page.Contains("no longer than\n"))
                Assert.DoesNotMatch("(49|5[0-9])[¼½¾]? in", page.Replace("at 49 in", ""));
        });
        foreach (string command in new[] { "curve", "transfer", "order-sheet", "start-length" })
        {
            // Programs get the data all the same, and the standing with them.
            JsonElement data = JsonDocument.Parse(program.Must(command, "--json")).RootElement;
            Assert.True(data.EnumerateObject().Count() > 5 || command == "transfer");
            Assert.StartsWith("Rest first", data.GetProperty(command == "curve" ? "to_do" : "rest_first").GetString());
        }

        JsonElement facts = JsonDocument.Parse(program.Must("next", "--json")).RootElement;
        Assert.Equal("sore", facts.GetProperty("standing").GetString());
        Assert.Equal(JsonValueKind.Null, facts.GetProperty("outings_to_go").ValueKind);
    }

    private static TestProgram Ilse(bool sore)
    {
        TestProgram program = TestProgram.WithIlse();
        program.Must("paddle", "set", "Reed", "--club");
        program.Must("log", "49in,1km,5:30,6", "51in,1km,5:31,6", "51in,1km,5:32,6", "49in,1km,5:33,6", "--soreness", sore ? "6" : "0");
        return program;
    }
}
