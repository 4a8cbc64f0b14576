using System.Text;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Screens.Shell;
using static TrialLog.TestData.Samples.InventedWater;

namespace TrialLog.TestData.Samples;

/// <summary>Wrong rows of every kind among good ones.</summary>
internal static class MessySample
{
    private const string Header =
        "paddler,date,outing,piece,hull,paddle,length_in,length_cm,distance_m,time,effort,heart_rate,wind,course,soreness,gloves,notes";

    /// <summary>Each wrong row, with what is wrong in its notes.</summary>
    private static readonly string[] Wrong =
    [
        "Jory Pell,2026-02-30,,,OC1,Plover,51,,1000,5:30,6,,2,round-trip,0,,30 February",
        "Jory Pell,2099-05-01,,,OC1,Plover,51,,1000,5:30,6,,2,round-trip,0,,in the future",
        "Jory Pell,03/04/2026,,,OC1,Plover,51,,1000,5:30,6,,2,round-trip,0,,which of the two is the month?",
        "Jory Pell,2026-04-03,,,OC1,Plover,-51,,1000,5:30,6,,2,round-trip,0,,negative length",
        "Jory Pell,2026-04-03,,,OC1,Plover,129.5,,1000,5:30,6,,2,round-trip,0,,centimetres in the column for inches",
        "Jory Pell,2026-04-03,,,OC1,Plover,51,125,1000,5:30,6,,2,round-trip,0,,two lengths that differ",
        "Jory Pell,2026-04-03,,,OC1,Plover,,,1000,5:30,6,,2,round-trip,0,,no length",
        "Jory Pell,2026-04-03,,,OC1,Plover,51,,0,5:30,6,,2,round-trip,0,,no distance",
        "Jory Pell,2026-04-03,,,OC1,Plover,51,,1000,1:23,6,,2,round-trip,0,,12 m/s",
        "Jory Pell,2026-04-03,,,OC1,Plover,51,,1000,5:30:00,6,,2,round-trip,0,,a spreadsheet made hours of minutes",
        "Jory Pell,2026-04-03,,,OC1,Plover,51,,1000,5:75,6,,2,round-trip,0,,75 seconds",
        "Jory Pell,2026-04-03,,,OC1,Plover,51,,1000,fast,6,,2,round-trip,0,,not a time",
        "Jory Pell,2026-04-03,,,OC1,Plover,51,,1000,5:31,11,,2,round-trip,0,,effort 11",
        "Jory Pell,2026-04-03,,,OC1,Plover,51,,1000,5:31,6,300,2,round-trip,0,,heart rate 300",
        "Jory Pell,2026-04-03,,,OC1,Plover,51,,1000,5:31,6,,13,round-trip,0,,wind 13",
        "Jory Pell,2026-04-03,,,OC1,Plover,51,,1000,5:31,6,,2,sideways,0,,no such course",
        "Jory Pell,2026-04-03,,,,Plover,51,,1000,5:31,6,,2,round-trip,0,,no hull",
        "Jory\u0007Pell,2026-04-03,,,OC1,Plover,51,,1000,5:31,6,,2,round-trip,0,,a control character in the name",
        "Jory \"J\" Pell,2026-04-03,,,OC1,Plover,51,,1000,5:31,6,,2,round-trip,0,,quotation marks inside a cell",
        "Jory Pell,2026-04-03,,,OC1,Plover,51,,1000,5:31,6,,2,round-trip,0,,windy, cold",
        "Jory Pell,2026-04-10,am,1,OC1,Plover,50,,1000,5:31,6,,2,round-trip,0,,",
        "Jory Pell,2026-04-10,am,1,OC1,Plover,52,,1000,5:33,6,,2,round-trip,0,,piece 1 again",
        "Jory Pell,2026-04-10,am,2,OC6,Plover,52,,1000,4:33,6,,2,round-trip,0,,another hull in the same outing",
        "Jory Pell,2026-04-17,,,OC1,Plover,51,,1000,5:31,6,,2,round-trip,0,,",
        "Jory Pell,2026-04-17,,,OC1,Plover,51,,1000,5:31,6,,2,round-trip,0,,the row before once more",
    ];

    public static byte[] Write(int stream)
    {
        InventedWater water = new(stream);
        Paddler jory = InventedLog.Paddler(water, "Jory Pell", 51);
        Paddle plover = InventedLog.Paddle(water, "Plover", 18.5, 48, 54);
        StringBuilder text = new(Header + "\n");
        for (int week = 0; week < 4; week++)
        {
            Outing outing = water.Paddle(new(51.25, 0.4, 3.05), jory, InventedLog.Solo, new DateOnly(2026, 3, 6).AddDays(7 * week),
                Mirrored(plover, 50, 52));
            foreach (Piece piece in outing.Pieces)
            {
                string notes = week == 0 && piece.Order == 1
                    ? "\"Shows wrong rows of every kind among good ones, each with what is wrong in its notes: nothing is imported, or " +
                        "with --skip-bad the good rows alone. Invented.\""
                    : week == 1 && piece.Order == 2 ? "\"a note of two lines,\nwith \"\"quotation marks\"\" and a 🛶\"" : "";
                string gloves = week == 2 ? "thin" : "";
                text.Append(
                    $"Jory Pell,{outing.Date:yyyy-MM-dd},,,OC1,Plover,{piece.Length.ToDecimalInches()},,1000,{piece.Time},{piece.Effort}," +
                        $"{piece.HeartRate},{outing.Wind},round-trip,0,{gloves},{notes}\n");
            }

            foreach (string row in Wrong.Skip(7 * week).Take(week < 3 ? 7 : Wrong.Length))
                text.Append(row).Append('\n');
        }

        return new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(text.ToString());
    }
}
