using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Commands;
using PlantWatch.Server.Tests.PlantFile;

namespace PlantWatch.Server.Tests.Commands;

public sealed class CheckPlantCommandTests
{
    [Fact]
    public void A_good_file_is_summed_up_and_gives_0()
    {
        var output = new StringWriter();

        Assert.Equal(0, CheckPlantCommand.Run(Folders.DemoPlant, output));
        Assert.Contains("circuit main", output.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("no errors" + Environment.NewLine, output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_broken_file_is_listed_with_lines_and_gives_1()
    {
        var output = new StringWriter();

        Assert.Equal(1, CheckPlantCommand.Run(Path.Combine(Folders.Here, "bad", "twin-ids.yaml"), output));
        Assert.StartsWith("line 4, products[1].id: the id 'hypo' is taken", output.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("7 errors: this file would not come into force" + Environment.NewLine, output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_is_an_error_in_words()
    {
        var output = new StringWriter();

        Assert.Equal(1, CheckPlantCommand.Run("no-such-plant.yaml", output));
        Assert.StartsWith("line 1: the file cannot be read: ", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Bytes_that_are_no_text_are_named_with_their_line()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("plant.yaml", [.. "site:\n  name: "u8, 0xC3, 0x28]);

        Assert.Equal("line 2: expected text in UTF-8, found bytes that are none; save the file as UTF-8", Assert.Single(PlantFileSource.Read(path).Understand().Errors).ToString());
    }

    [Fact]
    public void A_byte_order_mark_is_passed_over()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("plant.yaml", [0xEF, 0xBB, 0xBF, .. File.ReadAllBytes(Folders.DemoPlant)]);

        Assert.Empty(PlantFileSource.Read(path).Understand().Errors);
    }
}
