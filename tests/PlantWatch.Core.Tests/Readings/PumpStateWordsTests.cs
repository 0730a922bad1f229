using System.Text;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Core.Tests.Readings;

public class PumpStateWordsTests
{
    [Theory]
    [InlineData("stopped", 0, PumpActivity.Stopped)]
    [InlineData("running", 1, PumpActivity.Running)]
    [InlineData("fault", 2, PumpActivity.Fault)]
    [InlineData("0", 0, PumpActivity.Stopped)]
    [InlineData("1\n", 1, PumpActivity.Running)]
    [InlineData(" 2 ", 2, PumpActivity.Fault)]
    [InlineData("Running", 1, PumpActivity.Running)]
    [InlineData("FAULT", 2, PumpActivity.Fault)]
    public void A_word_or_code_is_a_sample_that_holds_the_code(string text, double code, PumpActivity activity)
    {
        var item = Decode(text);

        Assert.True(item.IsSample);
        Assert.Equal(code, item.Sample.Value);
        Assert.Equal(activity, PumpStateWords.ActivityOf(item.Sample.Value));
    }

    [Theory]
    [InlineData("3")]
    [InlineData("-1")]
    [InlineData("1.0")]
    [InlineData("01")]
    [InlineData("run")]
    [InlineData("running!")]
    [InlineData("stopped running")]
    public void Any_other_word_or_number_is_an_unknown_state(string text)
    {
        var item = Decode(text);

        Assert.Equal(RefusalReason.UnknownState, item.Refusal);
        Assert.Equal(text, item.Detail);
    }

    [Fact]
    public void Empty_oversized_and_broken_text_is_refused_by_its_own_name()
    {
        Assert.Equal(RefusalReason.Empty, Decode(" ").Refusal);
        Assert.Equal(RefusalReason.TooLarge, PumpStateWords.Decode(new byte[PayloadText.WorthKeeping]).Refusal);
        Assert.Equal(RefusalReason.InvalidUtf8, PumpStateWords.Decode([0x31, 0xfe]).Refusal);
    }

    [Fact]
    public void A_number_that_is_no_code_means_unknown() => Assert.Equal(PumpActivity.Unknown, PumpStateWords.ActivityOf(0.5));

    private static DecodedItem Decode(string text) => PumpStateWords.Decode(Encoding.UTF8.GetBytes(text));
}
