using System.Text;

namespace TrialLog.Domain.Values;

/// <summary>
/// Letters with their accents apart and as one character: Unicode's canonical decomposition, its order of marks and its composition
/// (Unicode 14, UAX 15, normalization forms D and C). Written out here because without the system's language data, which a
/// program in one file cannot count on, the library leaves text as it is. Characters that only stand for another one are kept.
/// </summary>
public static class Accents
{
    private sealed record Mark(char Character, byte Class, string Pairs);

    /// <summary>What each mark makes of a letter: the letter, then letter and mark as one; with the mark's combining class.</summary>
    private static readonly Mark[] Marks =
    [
        new('\u0300', 230, "AÀEÈIÌOÒUÙaàeèiìoòuùÜǛüǜNǸnǹЕЀИЍеѐиѝĒḔēḕŌṐōṑWẀwẁÂẦâầĂẰăằÊỀêềÔỒôồƠỜơờƯỪưừYỲyỳἀἂἁἃἈἊἉἋἐἒἑἓἘἚἙἛἠἢἡἣἨἪἩἫἰἲἱἳ"
            + "ἸἺἹἻὀὂὁὃὈὊὉὋὐὒὑὓὙὛὠὢὡὣὨὪὩὫαὰεὲηὴιὶοὸυὺωὼΑᾺΕῈΗῊ᾿῍ϊῒΙῚ῾῝ϋῢΥῪ¨῭ΟῸΩῺ"),
        new('\u0301', 230, "AÁEÉIÍOÓUÚYÝaáeéiíoóuúyýCĆcćLĹlĺNŃnńRŔrŕSŚsśZŹzźÜǗüǘGǴgǵÅǺåǻÆǼæǽØǾøǿ¨΅ΑΆΕΈΗΉΙΊΟΌΥΎΩΏϊΐαάεέηήιίϋΰοόυύωώϒϓ"
            + "ГЃКЌгѓкќÇḈçḉĒḖēḗÏḮïḯKḰkḱMḾmḿÕṌõṍŌṒōṓPṔpṕŨṸũṹWẂwẃÂẤâấĂẮăắÊẾêếÔỐôốƠỚơớƯỨưứἀἄἁἅἈἌἉἍἐἔἑἕἘἜἙἝἠἤἡἥἨἬἩἭἰἴἱἵἸἼἹἽ"
            + "ὀὄὁὅὈὌὉὍὐὔὑὕὙὝὠὤὡὥὨὬὩὭ᾿῎῾῞"),
        new('\u0302', 230, "AÂEÊIÎOÔUÛaâeêiîoôuûCĈcĉGĜgĝHĤhĥJĴjĵSŜsŝWŴwŵYŶyŷZẐzẑẠẬạậẸỆẹệỌỘọộ"),
        new('\u0303', 230, "AÃNÑOÕaãnñoõIĨiĩUŨuũVṼvṽÂẪâẫĂẴăẵEẼeẽÊỄêễÔỖôỗƠỠơỡƯỮưữYỸyỹ"),
        new('\u0304', 230, "AĀaāEĒeēIĪiīOŌoōUŪuūÜǕüǖÄǞäǟȦǠȧǡÆǢæǣǪǬǫǭÖȪöȫÕȬõȭȮȰȯȱYȲyȳИӢиӣУӮуӯGḠgḡḶḸḷḹṚṜṛṝαᾱΑᾹιῑΙῙυῡΥῩ"),
        new('\u0306', 230, "AĂaăEĔeĕGĞgğIĬiĭOŎoŏUŬuŭУЎИЙийуўЖӁжӂАӐаӑЕӖеӗȨḜȩḝẠẶạặαᾰΑᾸιῐΙῘυῠΥῨ"),
        new('\u0307', 230, "CĊcċEĖeėGĠgġIİZŻzżAȦaȧOȮoȯBḂbḃDḊdḋFḞfḟHḢhḣMṀmṁNṄnṅPṖpṗRṘrṙSṠsṡŚṤśṥŠṦšṧṢṨṣṩTṪtṫWẆwẇXẊxẋYẎyẏſẛ"),
        new('\u0308', 230, "AÄEËIÏOÖUÜaäeëiïoöuüyÿYŸΙΪΥΫιϊυϋϒϔЕЁІЇеёіїАӒаӓӘӚәӛЖӜжӝЗӞзӟИӤиӥОӦоӧӨӪөӫЭӬэӭУӰуӱЧӴчӵЫӸыӹHḦhḧÕṎõṏŪṺūṻWẄwẅXẌ"
            + "xẍtẗ"),
        new('\u0309', 230, "AẢaảÂẨâẩĂẲăẳEẺeẻÊỂêểIỈiỉOỎoỏÔỔôổƠỞơởUỦuủƯỬưửYỶyỷ"),
        new('\u030A', 230, "AÅaåUŮuůwẘyẙ"),
        new('\u030B', 230, "OŐoőUŰuűУӲуӳ"),
        new('\u030C', 230, "CČcčDĎdďEĚeěLĽlľNŇnňRŘrřSŠsšTŤtťZŽzžAǍaǎIǏiǐOǑoǒUǓuǔÜǙüǚGǦgǧKǨkǩƷǮʒǯjǰHȞhȟ"),
        new('\u030F', 230, "AȀaȁEȄeȅIȈiȉOȌoȍRȐrȑUȔuȕѴѶѵѷ"),
        new('\u0311', 230, "AȂaȃEȆeȇIȊiȋOȎoȏRȒrȓUȖuȗ"),
        new('\u0313', 230, "αἀΑἈεἐΕἘηἠΗἨιἰΙἸοὀΟὈυὐωὠΩὨρῤ"),
        new('\u0314', 230, "αἁΑἉεἑΕἙηἡΗἩιἱΙἹοὁΟὉυὑΥὙωὡΩὩρῥΡῬ"),
        new('\u031B', 216, "OƠoơUƯuư"),
        new('\u0323', 220, "BḄbḅDḌdḍHḤhḥKḲkḳLḶlḷMṂmṃNṆnṇRṚrṛSṢsṣTṬtṭVṾvṿWẈwẉZẒzẓAẠaạEẸeẹIỊiịOỌoọƠỢơợUỤuụƯỰưựYỴyỵ"),
        new('\u0324', 220, "UṲuṳ"),
        new('\u0325', 220, "AḀaḁ"),
        new('\u0326', 220, "SȘsșTȚtț"),
        new('\u0327', 202, "CÇcçGĢgģKĶkķLĻlļNŅnņRŖrŗSŞsşTŢtţEȨeȩDḐdḑHḨhḩ"),
        new('\u0328', 202, "AĄaąEĘeęIĮiįUŲuųOǪoǫ"),
        new('\u032D', 220, "DḒdḓEḘeḙLḼlḽNṊnṋTṰtṱUṶuṷ"),
        new('\u032E', 220, "HḪhḫ"),
        new('\u0330', 220, "EḚeḛIḬiḭUṴuṵ"),
        new('\u0331', 220, "BḆbḇDḎdḏKḴkḵLḺlḻNṈnṉRṞrṟTṮtṯZẔzẕhẖ"),
        new('\u0338', 1, "←↚→↛↔↮⇐⇍⇔⇎⇒⇏∃∄∈∉∋∌∣∤∥∦∼≁≃≄≅≇≈≉=≠≡≢≍≭<≮>≯≤≰≥≱≲≴≳≵≶≸≷≹≺⊀≻⊁⊂⊄⊃⊅⊆⊈⊇⊉⊢⊬⊨⊭⊩⊮⊫⊯≼⋠≽⋡⊑⋢⊒⋣⊲⋪⊳⋫⊴⋬⊵⋭"),
        new('\u0342', 230, "ἀἆἁἇἈἎἉἏἠἦἡἧἨἮἩἯἰἶἱἷἸἾἹἿὐὖὑὗὙὟὠὦὡὧὨὮὩὯαᾶ¨῁ηῆ᾿῏ιῖϊῗ῾῟υῦϋῧωῶ"),
        new('\u0345', 240, "ἀᾀἁᾁἂᾂἃᾃἄᾄἅᾅἆᾆἇᾇἈᾈἉᾉἊᾊἋᾋἌᾌἍᾍἎᾎἏᾏἠᾐἡᾑἢᾒἣᾓἤᾔἥᾕἦᾖἧᾗἨᾘἩᾙἪᾚἫᾛἬᾜἭᾝἮᾞἯᾟὠᾠὡᾡὢᾢὣᾣὤᾤὥᾥὦᾦὧᾧὨᾨὩᾩὪᾪὫᾫὬᾬὭᾭὮᾮὯᾯὰᾲαᾳάᾴᾶᾷ"
            + "ΑᾼὴῂηῃήῄῆῇΗῌὼῲωῳώῴῶῷΩῼ"),
        new('\u0653', 230, "\u0627\u0622"),
        new('\u0654', 230, "\u0627\u0623\u0648\u0624\u064A\u0626\u06D5\u06C0\u06C1\u06C2\u06D2\u06D3"),
        new('\u0655', 220, "\u0627\u0625"),
        new('\u093C', 7, "नऩरऱळऴ"),
        new('\u09BE', 0, "\u09C7\u09CB"),
        new('\u09D7', 0, "\u09C7\u09CC"),
        new('\u0B3E', 0, "\u0B47\u0B4B"),
        new('\u0B56', 0, "\u0B47\u0B48"),
        new('\u0B57', 0, "\u0B47\u0B4C"),
        new('\u0BBE', 0, "\u0BC6\u0BCA\u0BC7\u0BCB"),
        new('\u0BD7', 0, "ஒஔ\u0BC6\u0BCC"),
        new('\u0C56', 91, "\u0C46\u0C48"),
        new('\u0CC2', 0, "\u0CC6\u0CCA"),
        new('\u0CD5', 0, "\u0CBF\u0CC0\u0CC6\u0CC7\u0CCA\u0CCB"),
        new('\u0CD6', 0, "\u0CC6\u0CC8"),
        new('\u0D3E', 0, "\u0D46\u0D4A\u0D47\u0D4B"),
        new('\u0D57', 0, "\u0D46\u0D4C"),
        new('\u0DCA', 9, "\u0DD9\u0DDA\u0DDC\u0DDD"),
        new('\u0DCF', 0, "\u0DD9\u0DDC"),
        new('\u0DDF', 0, "\u0DD9\u0DDE"),
        new('\u102E', 0, "ဥဦ"),
        new('\u1B35', 0, "ᬅᬆᬇᬈᬉᬊᬋᬌᬍᬎᬑᬒ\u1B3A\u1B3B\u1B3C\u1B3D\u1B3E\u1B40\u1B3F\u1B41\u1B42\u1B43"),
        new('\u3099', 8, "かがきぎくぐけげこごさざしじすずせぜそぞただちぢつづてでとどはばひびふぶへべほぼうゔゝゞカガキギクグケゲコゴサザシジスズセゼソゾタダチヂツヅテデトドハバヒビフブヘベホボウヴワヷヰヸヱヹヲヺヽヾ"),
        new('\u309A', 8, "はぱひぴふぷへぺほぽハパヒピフプヘペホポ"),
    ];

    private static readonly Dictionary<char, byte> Classes = Marks.ToDictionary(mark => mark.Character, mark => mark.Class);

    private static readonly Dictionary<(char Letter, char Mark), char> Together = new(
        from mark in Marks
        from i in Enumerable.Range(0, mark.Pairs.Length / 2)
        select KeyValuePair.Create((mark.Pairs[2 * i], mark.Character), mark.Pairs[2 * i + 1]));

    private static readonly Dictionary<char, (char Letter, char Mark)> Apart = Together.ToDictionary(pair => pair.Value, pair => pair.Key);

    // Hangul syllables are made by counting: 19 leads, 21 vowels, 27 tails or none.
    private const int FirstSyllable = 0xAC00, FirstLead = 0x1100, FirstVowel = 0x1161, BeforeTails = 0x11A7;
    private const int Vowels = 21, Tails = 28, Syllables = 19 * Vowels * Tails;

    /// <summary>Every letter apart from its marks, the marks in their canonical order.</summary>
    public static string Decompose(string text)
    {
        if (text.All(char.IsAscii))
            return text;
        var apart = new StringBuilder(text.Length * 2);
        foreach (char c in text)
            Decompose(c, apart);
        // Marks of different classes may be typed in any order; those of one class keep theirs.
        for (int i = 1; i < apart.Length; i++)
        {
            for (int j = i; j > 0 && ClassOf(apart[j]) is > 0 and var later && ClassOf(apart[j - 1]) > later; j--)
                (apart[j - 1], apart[j]) = (apart[j], apart[j - 1]);
        }

        return apart.ToString();
    }

    /// <summary>Every letter and its marks as one character where there is such a character.</summary>
    public static string Compose(string text)
    {
        if (text.All(char.IsAscii))
            return text;
        var composed = new StringBuilder(text.Length);
        int letter = -1;
        byte before = 0;
        foreach (char c in Decompose(text))
        {
            byte its = ClassOf(c);
            // A mark joins the letter unless one of its own class, which it cannot pass, stands between.
            bool next = letter == composed.Length - 1;
            if (letter >= 0 && (next || before < its && before != 0) && TryJoin(composed[letter], c) is { } one)
            {
                composed[letter] = one;
                continue;
            }

            if (its == 0)
                letter = composed.Length;
            before = its;
            composed.Append(c);
        }

        return composed.ToString();
    }

    private static byte ClassOf(char c) => Classes.GetValueOrDefault(c);

    private static void Decompose(char c, StringBuilder to)
    {
        if (c - FirstSyllable is >= 0 and < Syllables and var syllable)
        {
            to.Append((char)(FirstLead + syllable / (Vowels * Tails))).Append((char)(FirstVowel + syllable % (Vowels * Tails) / Tails));
            if (syllable % Tails != 0)
                to.Append((char)(BeforeTails + syllable % Tails));
        }
        else if (Apart.TryGetValue(c, out (char Letter, char Mark) parts))
        {
            Decompose(parts.Letter, to);
            to.Append(parts.Mark);
        }
        else
        {
            to.Append(c);
        }
    }

    private static char? TryJoin(char letter, char mark) =>
        letter - FirstLead is >= 0 and < 19 and var lead && mark - FirstVowel is >= 0 and < Vowels and var vowel
            ? (char)(FirstSyllable + (lead * Vowels + vowel) * Tails)
        : letter - FirstSyllable is >= 0 and < Syllables and var open && open % Tails == 0
            && mark - BeforeTails is > 0 and < Tails and var tail
            ? (char)(letter + tail)
        : Together.TryGetValue((letter, mark), out char one) ? one : null;
}
