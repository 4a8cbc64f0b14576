namespace TrialLog.Screens.Imports;

/// <summary>The explanation of a recording's sheet.</summary>
internal static class ImportExplanation
{
    public const string Explanation =
        "The curve is the speed over ground from the start of the recording to its end. On the line below it lie the pieces that were " +
            "found, their numbers above; " +
        "dotted are those left out; ▲ is where the lap button was pressed. The table tells for each piece when it began and ended since " +
            "the start, its distance, time and pace, and how far " +
            "off its speed may be (one standard deviation). Times are the watch's: getting going and easing off are left out of " +
                "every piece " +
            "alike, which a stopwatch does not. v says it in words, with what else the recording knows. Nothing is saved until " +
                "Ctrl+S.\n\n" +
        "# What counts\n" +
        "Warm-up, easy paddling and cool-down are left out with the reason; x counts such a piece, or leaves out one that counts. " +
            "+ makes one " +
            "piece of this and the next, - makes two of it, at its turn if you leave the time as it stands. " +
        "← and → move its start by a second, [ and ] its end; e types both; a adds a piece that was not found. u takes back what " +
            "you did last. What cannot be is said in a sentence and changes nothing.\n\n" +
        "# Lengths\n" +
        "The pieces that count take the lengths of your open card, in order. Where their numbers differ you are asked, and nothing can " +
            "be saved before: which piece is missing or too many is never guessed. " +
        "Enter types the lengths; an empty line takes the card's again. Of a blind card letters are shown, and will do, until " +
            "the pieces are saved. " +
            "Beside them stand effort, one for all pieces or one a piece, soreness, wind and place.\n\n" +
        "# An outing that is in the log already\n" +
        "e lays the recording over it: its lengths, distances and times stay as typed; heart rate, stroke rate and when it began " +
            "come in. " +
            "y saves another outing beside it. e types when it began, where the watch's clock was wrong.\n\n" +
        "# Round trips\n" +
        "The speed of a piece out and back is the mean of the speeds over ground of its two legs, in which a steady current cancels. Its " +
            "time is its distance over that speed.\n\n" +
        "# What is kept\n" +
        "The pieces, a place name if you type one, and a number by which the file is known again. No positions. " +
        "Go to another screen and i in the logbook takes the recording up again; Esc leaves it without saving, and so does quitting.";
}
