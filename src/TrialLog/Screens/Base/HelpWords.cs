using TrialLog.Application.Wording;

namespace TrialLog.Screens.Base;

/// <summary>Words that every screen's explanation ends with.</summary>
internal static class HelpWords
{
    public const string KeysEverywhere =
        "  1…7      the screens by number; Alt with the number while you type\n" +
        "  F1 or ?  this explanation\n" +
        "  F2       every action by name, with its key\n" +
        "  /        find on this screen\n" +
        "  q        quit; Ctrl+Q while you type. What was typed comes back next time\n" +
        "\n" +
        "# Cautions\n" +
        Cautions.Pain + " " + Cautions.Water + " This program is no medical or coaching advice: a clinician and a qualified coach decide.";
}
