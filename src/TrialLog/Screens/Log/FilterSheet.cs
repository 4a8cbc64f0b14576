using TrialLog.Application.Logging;
using TrialLog.Application.Text;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Base;
using TrialLog.Screens.Forms;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Log;

/// <summary>Which outings to show.</summary>
internal static class FilterSheet
{
    public static FormSheet Of(Session session, OutingSelection now, Action<OutingSelection> chosen)
    {
        DateOnly today = session.Today;
        List<Hull> hulls = [.. session.State.Hulls];
        List<Paddle> paddles = [.. session.State.Paddles];
        var form = new Form(session.Look);
        ChoiceField hull = form.Row(
            "Hull",
            new ChoiceField(session.Look, ["any", .. hulls.Select(known => Quoted.Visible(known.Name))],
            1 + hulls.FindIndex(known => known.Id == now.HullId)), "← → to change");
        ChoiceField paddle = form.Row(
            "Paddle",
            new ChoiceField(session.Look, ["any", .. paddles.Select(known => Quoted.Visible(known.Name))],
            1 + paddles.FindIndex(known => known.Id == now.PaddleId)), "← → to change");
        Field from = form.Row("First day", new Field(now.From is { } first ? $"{first:yyyy-MM-dd}" : "", Problem),
            "2026-05-03; may stay empty");
        Field to = form.Row("Last day", new Field(now.To is { } last ? $"{last:yyyy-MM-dd}" : "", Problem), "may stay empty");
        return new FormSheet(session.Look, session.Shell, "Show which outings?", form,
            () => "The filter changes what you see here, not what the analyses use.",
            () => chosen(now with
            {
                HullId = hull.At == 0 ? null : hulls[hull.At - 1].Id,
                PaddleId = paddle.At == 0 ? null : paddles[paddle.At - 1].Id,
                From = Day(from),
                To = Day(to),
            }));

        DateOnly? Day(Field field) => field.IsEmpty ? null : TextForms.Date(today).Read(field.Text);

        string? Problem(string text)
        {
            try
            {
                TextForms.Date(today).Read(text);
                return null;
            }
            catch (InvalidValueException wrong)
            {
                return wrong.Message;
            }
        }
    }
}
