using CsCheck;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Tests.PlantFile;

public sealed class PlantFileMutationTests
{
    private static readonly string Demo = File.ReadAllText(Folders.DemoPlant);

    // Bits that mean something to YAML, to a topic, to a number or to an encoder.
    private static readonly string[] Bits =
    [
        "\t", "\n", "  ", "- ", ": ", ":", "'", "\"", "[", "]", "{", "}", "&a ", "*a", "!!int ", "|", ">", "---\n", "...\n", "#", "%", "@", "`", "? ", "<<: ",
        "\0", "\u0007", "\uFEFF", "\uD800", "\\uD800", "\\x00", "\u2028", "é", "+", "-1", "1e999", ".nan", ".inf", "0x1F", "null", "~", "true", "id: main\n", "main-ph",
    ];

    private static readonly Gen<Func<string, string>> Cut =
        Gen.Select(Gen.Double[0, 1], Gen.Int[1, 60], (at, length) => (Func<string, string>)(text =>
        {
            var from = (int)(at * text.Length);
            return text.Remove(from, Math.Min(length, text.Length - from));
        }));

    private static readonly Gen<Func<string, string>> Put =
        Gen.Select(Gen.Double[0, 1], Gen.OneOf(Bits), (at, bit) => (Func<string, string>)(text => text.Insert((int)(at * text.Length), bit)));

    private static readonly Gen<Func<string, string>> Twice =
        Gen.Select(Gen.Double[0, 1], Gen.Int[1, 400], (at, length) => (Func<string, string>)(text =>
        {
            var from = (int)(at * text.Length);
            return text.Insert(from, text.Substring(from, Math.Min(length, text.Length - from)));
        }));

    [Fact]
    public void No_damage_to_the_demo_plant_makes_the_reader_throw() =>
        Gen.OneOf(Cut, Put, Twice).Array[1, 6].Sample(
            changes => OneOfPlanAndErrors(changes.Aggregate(Demo, (text, change) => change(text))), iter: 4000, threads: 2);

    [Fact]
    public void No_text_at_all_makes_the_reader_throw() =>
        Gen.OneOf(Gen.String, Gen.OneOf(Bits).Array[0, 60].Select(bits => string.Concat(bits)))
            .Sample(OneOfPlanAndErrors, iter: 10_000, threads: 2);

    [Theory]
    [InlineData("[", 100_000)]
    [InlineData("- ", 100_000)]
    [InlineData("{a: ", 100_000)]
    [InlineData("? ", 100_000)]
    [InlineData("a: &a [*a, *a]\n", 1000)]
    [InlineData("a", 1_000_000)]
    public void Neither_depth_nor_length_exhausts_the_reader(string part, int times) =>
        Assert.True(OneOfPlanAndErrors(string.Concat(Enumerable.Repeat(part, times))));

    private static bool OneOfPlanAndErrors(string yaml)
    {
        var result = PlantFileReader.Read(yaml);
        return result.Plan is null == result.Errors.Count > 0
            && result.Errors.All(error => error.Line >= 1 && error.Message.Length > 0 && !error.ToString().Contains('\n', StringComparison.Ordinal));
    }
}
