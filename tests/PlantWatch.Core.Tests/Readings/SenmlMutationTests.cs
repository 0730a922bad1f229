using System.Text;
using CsCheck;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>Whatever arrives, the decoders answer with items, never with an exception and never with a number that is none.</summary>
public class SenmlMutationTests
{
    private static readonly byte[][] Seeds = [.. new[]
    {
        """[{"n":"urn:dev:ow:10e2073a01080063","u":"Cel","v":23.1}]""",
        """[{"bn":"urn:dev:ow:10e2073a0108006:","bt":1.276020076001e+09,"bu":"A","bver":5,"n":"voltage","u":"V","v":120.1},{"n":"current","t":-5,"v":1.2},{"n":"current","v":1.7}]""",
        """[{"bn":"a:","bv":1e3,"bs":2,"n":"temp","u":"Cel","v":23.1,"s":3,"ut":60},{"n":"label","vs":"M\u0061ch\ud83d\ude00"},{"n":"open","vb":false},{"n":"r","vd":"aGkgCg"},{"n":"x","l":[{"y":[]}],"z_":1,"v":2}]""",
        "7.21", "-6.5e2", "running", "NaN",
    }.Select(Encoding.UTF8.GetBytes)];

    // Bytes that mean something to a JSON reader, beside all the others.
    private static readonly byte[] Telling = [.. "\"{}[],:\\-+.eE09tfnuvbs_ \0\n/"u8, 0x80, 0xbf, 0xc0, 0xe2, 0xed, 0xf0, 0xff];

    private static readonly Gen<(byte[] Seed, (int How, int At, byte With)[] Changes)> Mutants = Gen.Select(
        Choice(Seeds),
        Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4000], Gen.OneOf(Choice(Telling), Gen.Byte)).Array[1, 6]);

    private static Gen<T> Choice<T>(T[] all) => Gen.Int[0, all.Length - 1].Select(i => all[i]);

    [Fact]
    public void Mutated_payloads_never_throw_and_never_give_a_number_that_is_not_finite() =>
        Mutants.Sample(
            mutant => Check(Mutate(mutant.Seed, mutant.Changes)),
            iter: 300_000,
            print: mutant => Convert.ToHexString(Mutate(mutant.Seed, mutant.Changes)));

    [Fact]
    public void Any_double_that_is_printed_round_trips_through_both_decoders() =>
        Gen.Double.Where(double.IsFinite).Sample(
            value =>
            {
                var text = FormattableString.Invariant($"{value:R}");
                Assert.Equal(value, PlainNumber.Decode(Encoding.UTF8.GetBytes(text)).Sample.Value);
                Assert.Equal(value, Senml.Sample($$"""[{"n":"a","v":{{text}}}]""").Value);
            },
            iter: 20_000);

    [Fact]
    public void Splitting_a_pack_into_packs_of_one_resolved_record_gives_the_same_samples() =>
        Gen.Select(Gen.Int[268_435_456, 2_000_000_000], Gen.Int[-3600, 3600].Array[1, 20], Gen.Double[-1000, 1000]).Sample(
            (bt, ts, bv) =>
            {
                var packed = Senml.Samples(FormattableString.Invariant(
                    $$"""[{"bn":"p:","bt":{{bt + 3600}},"bv":{{bv:R}},"bu":"pH"},{{string.Join(',', ts.Select((t, i) => FormattableString.Invariant($$"""{"n":"x","t":{{t}},"v":{{i}}}""")))}}]"""));
                var single = ts.Select((t, i) => Senml.Sample(FormattableString.Invariant(
                    $$"""[{"n":"p:x","t":{{bt + 3600 + t}},"v":{{bv + i:R}},"u":"pH"}]""")));
                Assert.Equal(single, packed);
            },
            iter: 5_000);

    private static void Check(byte[] payload)
    {
        var items = Senml.Decode(payload);
        Assert.NotEmpty(items);
        items.Add(PlainNumber.Decode(payload));
        items.Add(PumpStateWords.Decode(payload));
        foreach (var item in items) Check(item, payload.Length);
    }

    private static void Check(DecodedItem item, int length)
    {
        _ = item.Bytes.GetOffsetAndLength(length);
        Assert.Equal(item.IsSample, item.Refusal == RefusalReason.None);
        Assert.DoesNotContain(item.Detail, char.IsControl);
        if (!item.IsSample) return;
        Assert.True(double.IsFinite(item.Sample.Value));
        Assert.True(item.Sample.Name.Length <= 256);
        Assert.True(item.Sample.DeviceTime == Instant.Never || item.Sample.DeviceTime.ToString().Length > 0);
    }

    private static byte[] Mutate(byte[] seed, (int How, int At, byte With)[] changes)
    {
        var bytes = new List<byte>(seed);
        foreach (var (how, at, with) in changes)
        {
            if (bytes.Count == 0) break;
            var place = at % bytes.Count;
            switch (how)
            {
                case 0: bytes[place] = with; break;
                case 1: bytes.Insert(place, with); break;
                case 2: bytes.RemoveAt(place); break;
                case 3: bytes.RemoveRange(place, Math.Min(with % 16, bytes.Count - place)); break;
                default: bytes.InsertRange(place, bytes.GetRange(place, Math.Min(with % 32, bytes.Count - place))); break;
            }
        }
        return [.. bytes];
    }
}
