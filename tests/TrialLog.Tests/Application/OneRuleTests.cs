using System.Text.Json;
using TrialLog.Application.Logging;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Commands;

namespace TrialLog.Tests.Application;

/// <summary>Rules that stood twice, each now once: what one surface refuses or gives, every other does.</summary>
public class OneRuleTests
{
    private static TestProgram WithTwoPaddles()
    {
        TestProgram program = TestProgram.WithIlse();
        program.Must("paddle", "add", "Heron", "--blade", "19in", "--range", "48in..54in");
        return program;
    }

    [Fact]
    public void An_outing_with_another_paddle_leaves_a_card_open_and_the_cards_own_paddle_finds_it()
    {
        using TestProgram program = WithTwoPaddles();
        program.Must("next", "--paddle", "Reed", "--pieces", "4");
        program.Must("log", "--paddle", "Heron", "50in,1km,5:30,6", "51in,1km,5:31,6");
        string logged = program.Must("log", "--paddle", "Reed", "5:32,6", "5:33,6", "5:34,6", "5:35,6");
        Assert.Contains("5:35", logged);
        JsonElement advice = JsonDocument.Parse(program.Must("history", "--advice", "--json")).RootElement;
        Assert.Equal("2026-06-01:2", advice.EnumerateArray().Single(card => card.GetProperty("paddle").GetString() == "Reed")
            .GetProperty("paddled_outing").GetString());
    }

    [Fact]
    public void A_card_that_was_paddled_is_not_open_again()
    {
        using TestProgram program = WithTwoPaddles();
        program.Must("next", "--paddle", "Reed", "--pieces", "4");
        program.Must("log", "--paddle", "Reed", "5:32,6", "5:33,6", "5:34,6", "5:35,6");
        Assert.Contains("No card was open", program.Run("log", "--paddle", "Reed", "5:32,6", "5:33,6", "5:34,6", "5:35,6").Error);
    }

    [Fact]
    public void Nobody_is_given_anothers_paddle_by_a_command_or_by_a_screen()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("log", "50in,1km,5:30,6", "51in,1km,5:31,6");
        program.Must("paddler", "add", "Bram Okello", "--reach", "52in");
        TestProgram.Outcome refused = program.Run("next", "--paddler", "Bram Okello");
        Assert.Equal(1, refused.Code);
        Assert.Contains("--paddle", refused.Error);
        using (LogbookFile logbook = LogbookFile.Open(program.Store))
        {
            var workspace = new Workspace(logbook, program.Clock);
            Assert.Null(UsualChoice.Of(workspace, workspace.PaddlerNamed("Bram Okello")));
            Assert.Equal("Reed", UsualChoice.Of(workspace, workspace.PaddlerNamed("Ilse Maro"))!.Paddle.Name);
        }

        program.Must("paddle", "set", "Reed", "--club");
        Assert.Contains("Reed", program.Must("next", "--paddler", "Bram Okello"));
    }

    [Fact]
    public void A_paddle_that_has_an_owner_is_not_given_to_whoever_borrowed_it_once()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("paddler", "add", "Bram Okello", "--reach", "52in");
        program.Must("log", "--paddler", "Bram Okello", "--paddle", "Reed", "50in,1km,5:30,6", "51in,1km,5:31,6");
        Assert.Equal(0, program.Run("next", "--paddler", "Bram Okello").Code);
        program.Must("paddle", "set", "Reed", "--owner", "Ilse Maro");
        Assert.Equal(1, program.Run("next", "--paddler", "Bram Okello").Code);
        Assert.Equal(0, program.Run("next", "--paddler", "Ilse Maro").Code);
    }

    [Fact]
    public void A_changed_outing_is_held_to_what_a_new_one_is_held_to()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("log", "50in,1km,5:30,6");
        using LogbookFile logbook = LogbookFile.Open(program.Store);
        var workspace = new Workspace(logbook, program.Clock);
        Paddler ilse = workspace.PaddlerNamed("Ilse Maro");
        Outing outing = logbook.Outings(ilse.Id).Single();
        Piece piece = outing.Pieces[0];
        Outing[] wrong =
        [
            outing with { Pieces = [] },
            outing with { Pieces = [.. Enumerable.Range(1, 201).Select(order => piece with { Id = Guid.NewGuid(), Order = order })] },
            outing with { Label = "bell\a" },
            outing with { Notes = "bell\a" },
            outing with { Date = workspace.Today.AddDays(3) },
            outing with { Pieces = [piece with { Length = Length.FromInches(60) }] },
            outing with { Pieces = [piece with { Time = PieceTime.FromSeconds(10) }] },
        ];
        foreach (Outing one in wrong)
        {
            Assert.Throws<RequestException>(() => CorrectOuting.Replace(workspace, one));
            var entry = new OutingEntry
            {
                Paddler = ilse,
                Hull = workspace.HullNamed("OC1"),
                Date = one.Date,
                Label = one.Label,
                Notes = one.Notes,
                Pieces = [
                    .. one.Pieces.Select(some => new PieceEntry(workspace.PaddleNamed("Reed"), some.Length, some.Distance, some.Time))],
            };
            Assert.NotEmpty(LogOuting.Problems(workspace, entry));
        }
    }

    [Fact]
    public void Wind_typed_with_its_letter_is_wind()
    {
        using TestProgram program = TestProgram.WithIlse();
        Assert.Contains("wind 4", program.Must("log", "--wind", "F4", "50in,1km,5:30,6"));
    }

    [Fact]
    public void A_word_that_begins_with_an_at_sign_is_a_word()
    {
        using TestProgram program = TestProgram.WithIlse();
        string secret = program.File("secret.txt", "never shown");
        program.Must("log", "--notes", "@" + secret, "50in,1km,5:30,6");
        Assert.Contains("@" + secret, program.Must("history", "--json"));
    }

    [Fact]
    public void No_escape_reaches_the_terminal()
    {
        using TestProgram program = TestProgram.WithIlse();
        const string escape = "\u001b[2J\u009b2J";
        foreach (
            string[] line in new string[][] { ["next", "--paddle", escape], [escape], ["log", escape], ["history", "--since", escape],
            ["edit", "last", "--label", escape], ["import", escape], ["next", "--paddler", escape, "--json"] })
        {
            TestProgram.Outcome outcome = program.Run(line);
            Assert.NotEqual(0, outcome.Code);
            Assert.DoesNotContain(outcome.Output + outcome.Error, c => c is '\u001b' or '\u009b');
        }
    }

    [Fact]
    public void An_error_is_JSON_where_JSON_was_asked_for()
    {
        using TestProgram program = TestProgram.WithIlse();
        TestProgram.Outcome unknown = program.Run("next", "--paddle", "Reeds", "--json");
        Assert.Equal(1, unknown.Code);
        Assert.Empty(unknown.Output);
        JsonElement said = JsonDocument.Parse(unknown.Error).RootElement;
        Assert.Contains("Reeds", said.GetProperty("error").GetString());
        Assert.Contains("Reed", said.GetProperty("hint").GetString());
        TestProgram.Outcome usage = program.Run("next", "--jsonn", "--json");
        Assert.Equal(2, usage.Code);
        Assert.Contains("--help", JsonDocument.Parse(usage.Error).RootElement.GetProperty("hint").GetString());
    }
}
