using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;
using PlantWatch.Fuzz;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>The short form of the campaign <c>tests/campaign/fuzz</c>: whatever bytes come, a decoder gives readings or a refusal of its list, costs what its length allows, and the sums close.</summary>
public sealed class PayloadFuzzTests
{
    private const int Mutations = 75_000;

    public static TheoryData<string> Decoders { get; } = [.. Target.All.Select(t => t.Name)];

    [Theory, MemberData(nameof(Decoders))]
    public void Mutated_payloads_become_readings_or_named_refusals_and_the_sums_close(string decoder)
    {
        var target = Target.All.Single(t => t.Name == decoder);
        var found = new Hunt(target, seed: 8428).Run(Mutations);

        Assert.True(found.Broken == 0, string.Join('\n', found.Samples));
        // It went everywhere: readings, every reason of the list, payloads up to the largest.
        Assert.True(found.Readings > 500, $"{found.Readings} readings");
        Assert.Equal(target.Refusals.Order(), found.Refused.Keys.Order());
        Assert.True(found.Large > 10, $"{found.Large} large payloads");
        Assert.Equal(Mutations + target.Seeds.Count, found.Ledger.Messages);
        Assert.Equal(found.Readings + found.Refused.Values.Sum(), found.Ledger.Received);
        Assert.Equal(found.Ledger.Received, found.Ledger.Stored + found.Ledger.Duplicates + found.Ledger.Refused);
        Assert.True(found.Ledger is { Stored: > 100, Refused: > 1000 }, $"{found.Ledger}");
    }

    [Fact]
    public void A_decoder_that_throws_lies_or_wastes_is_found()
    {
        Assert.Contains("threw InvalidOperationException", Broken((_, _) => throw new InvalidOperationException("on purpose")), StringComparison.Ordinal);
        Assert.Contains("gave no item", Broken((_, _) => { }), StringComparison.Ordinal);
        Assert.Contains("gave NaN", Broken((_, items) => items.Add(DecodedItem.Of(new RawSample("", default, double.NaN, null), Range.All))), StringComparison.Ordinal);
        Assert.Contains("not in its list", Broken((_, items) => items.Add(DecodedItem.Refused(RefusalReason.Defect, "", Range.All))), StringComparison.Ordinal);
        Assert.Contains("bytes that are not there", Broken((p, items) => items.Add(DecodedItem.Refused(RefusalReason.Empty, "", ..(p.Length + 1)))), StringComparison.Ordinal);
        Assert.Contains("allocated", Broken((p, items) => items.Add(DecodedItem.Refused(RefusalReason.Empty, new string('x', p.Length * 4096), Range.All))), StringComparison.Ordinal);
        var calls = 0;
        Assert.Contains("something else the second time", Broken((_, items) => items.Add(DecodedItem.Refused(RefusalReason.Empty, $"{calls++}", Range.All))), StringComparison.Ordinal);

        static string Broken(Action<byte[], List<DecodedItem>> decode)
        {
            var found = new Hunt(Target.Number with { Decode = decode }, seed: 1).Run(2000);
            Assert.True(found.Broken > 0, "nothing was found");
            return string.Join('\n', found.Samples);
        }
    }

    [Fact]
    public void The_same_seed_gives_the_same_bytes_and_another_does_not()
    {
        Assert.Equal(Bytes(1), Bytes(1));
        Assert.NotEqual(Bytes(1), Bytes(2));

        static byte[] Bytes(int seed)
        {
            var mutator = new Mutator(seed, Target.SenmlCbor.Dictionary, 4096);
            return [.. Enumerable.Range(0, 200).SelectMany(i => mutator.Mutate(Target.SenmlCbor.Seeds[i % 5], Target.SenmlCbor.Seeds[2]).ToArray())];
        }
    }

    // The dearest that a person could think of: records of one byte, records that are each refused with a long word, each with a name of its own that grows from a base name.
    [Theory]
    [InlineData("9f", "a0")]
    [InlineData("9f", "a104f5")]
    [InlineData("9f a1 21 78 c8", "a104f5")]
    [InlineData("9f a2 24 01 21 78 c8", "a1006161 a1006162")]
    public void The_largest_packs_cost_no_more_than_their_length_allows(string head, string record)
    {
        List<byte> pack = [.. SenmlC.Bytes(head)];
        if (pack.Count > 1) pack.AddRange(Enumerable.Repeat((byte)(record.Length > 6 ? 'n' : '#'), 0xc8));
        var one = SenmlC.Bytes(record);
        var records = 0;
        while (pack.Count + one.Length < PayloadText.Largest && records < PayloadText.Largest / 3 - 8)
        {
            pack.AddRange(one);
            records += record.Length > 6 ? 2 : 1;
        }

        pack.Add(0xff);
        var examination = new Examination();
        Assert.Null(examination.Fault(Target.SenmlCbor, [.. pack]));
        Assert.True(examination.Items.Count > 10_000, $"{examination.Items.Count} items");
        Assert.InRange(examination.Allocated, 1_000_000, 24L << 20);
    }
}
