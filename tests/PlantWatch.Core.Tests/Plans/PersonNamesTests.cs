using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Tests.Plans;

/// <summary>One person in two spellings is no second person. Letters by the Unicode character names.</summary>
public sealed class PersonNamesTests
{
    [Theory]
    [InlineData("R. Example", "r example")]
    [InlineData("R. Example", "R.Example ")]
    [InlineData("R. Example", "Example, R.")]
    [InlineData("R. Example", "R. Ex\u200Bample")]
    [InlineData("R. Example", "\uFF32. \uFF25xample")] // wide letters
    [InlineData("R. Example", "R. Ex\u0430mple")] // Cyrillic small letter a
    [InlineData("T. Nota", "\u03A4. \u039Dota")] // Greek tau and nu
    [InlineData("Ren\u00E9 Example", "Rene\u0301 Example")] // composed and decomposed
    [InlineData("Ren\u00E9 Example", "Rene Example")]
    [InlineData("\uFB01na Example", "Fina Example")] // the ligature of f and i
    [InlineData("J. Stra\u00DFe", "J. STRASSE")]
    [InlineData("\u0130nci Example", "inci Example")] // capital i with a dot
    public void One_person_in_two_spellings_is_one(string a, string b)
    {
        Assert.True(PersonNames.AreSame(a, b));
        Assert.True(PersonNames.AreSame(b, a));
    }

    [Theory]
    [InlineData("R. Example", "J. Sample")]
    [InlineData("R. Example", "S. Example")]
    [InlineData("\u5F20\u4F1F", "\u674E\u5A1C")]
    [InlineData("\u0418\u0432\u0430\u043D", "\u041F\u0435\u0442\u0440")]
    [InlineData("...", "R. Example")]
    [InlineData("!!!", "???")]
    public void Two_people_are_two(string a, string b) => Assert.False(PersonNames.AreSame(a, b));

    [Theory]
    [InlineData(null, false)]
    [InlineData(" . - ", false)]
    [InlineData("\u200B", false)]
    [InlineData("\0\0", false)]
    [InlineData("R", true)]
    [InlineData("\u5F20", true)]
    public void Signs_alone_say_nobody(string? name, bool says) => Assert.Equal(says, PersonNames.SaysSomebody(name));
}
