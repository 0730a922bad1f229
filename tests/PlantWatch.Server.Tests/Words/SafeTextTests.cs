using System.Text;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Words;

/// <summary>Words of people in a table: a spreadsheet works nothing out of them.</summary>
public sealed class SafeTextTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData(" =1+1", "' =1+1")]
    [InlineData("\u00a0@sum", "'\u00a0@sum")]
    [InlineData("\tx", "'\tx")]
    [InlineData("-5 children", "'-5 children")]
    [InlineData("-5", "-5")]
    [InlineData("a = b", "a = b")]
    public void What_begins_as_a_formula_is_made_text_also_behind_blanks_and_a_number_stays_one(string said, string written)
    {
        var line = Encoding.UTF8.GetString(CsvText.Write(["what"], [[said]])).Split("\r\n")[1];
        Assert.Equal(written, line.Trim('"'));
        if (said != "-5") Assert.Equal(written, SafeText.Of(said));
    }
}
