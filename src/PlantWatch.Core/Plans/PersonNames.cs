using System.Globalization;
using System.Text;

namespace PlantWatch.Core.Plans;

/// <summary>Whether two names that were typed by hand are the same person's.</summary>
/// <remarks>
/// Where two people are asked for, one of them must not pass as two by another spelling: capitals, spaces, stops, what is not seen, the order of first and last name, accents,
/// wide letters, and letters of another script that look the same. Two people whose names differ by no more write more of them.
/// </remarks>
public static class PersonNames
{
    // Letter for letter: what stands above looks like, or is in plain letters, what stands below it.
    private const string Marked = "ÀÁÂÃÄÅĀĂĄÇĆĈĊČĎĐÈÉÊËĒĔĖĘĚĜĞĠĢĤĦÌÍÎÏĨĪĬĮİĴĶĹĻĽĿŁÑŃŅŇÒÓÔÕÖØŌŎŐŔŖŘŚŜŞŠȘŢŤŦȚÙÚÛÜŨŪŬŮŰŲŴÝŶŸŹŻŽАВЕЅІЈКМНОРСТУХԚԜЁЇΑΒΕΖΗΙΚΜΝΟΡΤΥΧ";
    private const string Plainly = "AAAAAAAAACCCCCDDEEEEEEEEEGGGGHHIIIIIIIIIJKLLLLLNNNNOOOOOOOOORRRSSSSSTTTTUUUUUUUUUUWYYYZZZABESIJKMHOPCTYXQWEIABEZHIKMNOPTYX";

    /// <summary>True when both are one person's; false where either says nobody.</summary>
    public static bool AreSame(string? a, string? b)
    {
        var (one, other) = (Words(a), Words(b));
        return one.Count > 0 && (string.Concat(one) == string.Concat(other) || one.Order(StringComparer.Ordinal).SequenceEqual(other.Order(StringComparer.Ordinal)));
    }

    /// <summary>True when both were typed alike, but for capitals and spaces: what was asked of events that were taken before spellings were compared.</summary>
    public static bool AreTypedAlike(string a, string b) => string.Equals(Spaced(a), Spaced(b), StringComparison.OrdinalIgnoreCase);

    /// <summary>True when both have the same letters and digits, but for capitals: what was asked of rows of the stock book that were taken before spellings were compared.</summary>
    public static bool AreOfSameLetters(string a, string b) => string.Equals(Lettered(a), Lettered(b), StringComparison.OrdinalIgnoreCase);

    private static string Lettered(string name) => string.Concat(name.Where(char.IsLetterOrDigit));

    private static string Spaced(string name) => string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>True when there is a letter or a digit in it.</summary>
    public static bool SaysSomebody(string? name) => Words(name).Count > 0;

    private static List<string> Words(string? name)
    {
        var (words, word) = (new List<string>(), new StringBuilder());
        foreach (var letter in name ?? "")
            if (char.IsLetterOrDigit(letter)) word.Append(Plain(letter));
            else if (!IsUnseen(letter)) End(words, word);
        End(words, word);
        return words;
    }

    private static void End(List<string> words, StringBuilder word)
    {
        if (word.Length > 0) words.Add(word.ToString());
        word.Clear();
    }

    // A mark belongs to the letter before it, and what has no width parts no word.
    private static bool IsUnseen(char letter) =>
        char.GetUnicodeCategory(letter) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format or UnicodeCategory.Control && !char.IsWhiteSpace(letter);

    private static string Plain(char letter)
    {
        var wide = letter is >= '\uFF01' and <= '\uFF5E' ? (char)(letter - 0xFEE0) : letter;
        var large = char.ToUpperInvariant(wide);
        return Marked.IndexOf(large, StringComparison.Ordinal) is >= 0 and var at ? Plainly[at].ToString() : Long(large);
    }

    private static string Long(char letter) => letter switch
    {
        'ß' or 'ẞ' => "SS",
        'Æ' => "AE",
        'Œ' => "OE",
        'ı' => "I",
        'ﬀ' => "FF",
        'ﬁ' => "FI",
        'ﬂ' => "FL",
        _ => letter.ToString(),
    };
}
