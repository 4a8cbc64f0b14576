using Dapper;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Rows;

namespace TrialLog.Logbook;

/// <summary>Reads all of a logbook to see whether it is sound.</summary>
internal static class LogbookCheck
{
    public static IReadOnlyList<string> Problems(LogbookFile logbook)
    {
        var problems = new List<string>();
        try
        {
            logbook.Copying(connection =>
            {
                problems.AddRange(connection.Query<string>("PRAGMA integrity_check(20)").Where(line => line != "ok")
                    .Select(line => $"The file's structure is damaged: {line}."));
                problems.AddRange(connection.Query<LostReferenceRow>("PRAGMA foreign_key_check").Take(20)
                    .Select(row => $"A row of {row.Table} refers to a row of {row.Parent} that is not there."));
                if (!connection.ExecuteScalar<bool>(
                    "SELECT NOT EXISTS (SELECT 1 FROM journal WHERE before IS NOT NULL AND NOT json_valid(before))"))
                    problems.Add("The journal of changes holds what is no record.");
            });
            LogbookSnapshot log = logbook.Everything();
            Each(log.Paddlers, paddler => RecordRules.Checked(paddler), paddler => $"the paddler “{paddler.Name}”");
            Each(log.Hulls, hull => RecordRules.Checked(hull), hull => $"the hull “{hull.Name}”");
            Each(log.Paddles, paddle => RecordRules.Checked(paddle), paddle => $"the paddle “{paddle.Name}”");
            Each(log.Outings, outing => RecordRules.Checked(outing), outing => $"the outing of {outing.Date:yyyy-MM-dd}");
            Each(log.Cards, card => RecordRules.Checked(card), card => $"the trial card of {card.GivenAt:yyyy-MM-dd}");
            Each(log.TechniqueChecks, check => RecordRules.Checked(check), check => $"the technique check of {check.Date:yyyy-MM-dd}");
            Each(log.Decisions, decision => RecordRules.Checked(decision), decision => $"the decision of {decision.Date:yyyy-MM-dd}");
            Each(log.Notes, note => RecordRules.Checked(note), note => $"the note of {note.WrittenAt:yyyy-MM-dd}");
        }
        catch (LogbookException e)
        {
            problems.Add(e.Message);
        }

        return problems;

        void Each<T>(IEnumerable<T> records, Action<T> check, Func<T, string> what)
        {
            foreach (T record in records)
            {
                try
                {
                    check(record);
                }
                catch (InvalidValueException e)
                {
                    problems.Add($"In {what(record)}: {e.Message}");
                }
            }
        }
    }
}
