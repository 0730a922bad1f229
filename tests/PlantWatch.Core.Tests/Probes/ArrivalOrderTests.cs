using System.Text.Json;
using CsCheck;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Probes;

/// <summary>Checks are typed hours late and arrive in any order; what is believed in the end must not hang on it.</summary>
public class ArrivalOrderTests
{
    private static readonly Gen<(double Hour, double Test, double Probe)> Check =
        Gen.Select(Gen.Double[0, 240], Gen.Double[7.0, 7.8], Gen.Double[-0.5, 0.5], (hour, test, off) => (hour, test, test + off));

    [Fact]
    public void Trust_in_a_ph_probe_is_the_same_whatever_the_order_of_arrival() =>
        Gen.Select(Check.Array[1, ProbeTrust.Kept], Gen.Int).Sample((checks, seed) => Compare(new TestPool(Measurand.Ph), checks, seed,
            (pool, c) => pool.InputOf(pool.CheckOf(c.Hour, new TestResult(Measurand.Ph, c.Test, TestMethod.Photometer)), c.Probe)));

    [Fact]
    public void Trust_in_an_orp_probe_is_the_same_whatever_the_order_of_arrival() =>
        Gen.Select(Check.Array[1, ProbeTrust.Kept], Gen.Int).Sample((checks, seed) => Compare(new TestPool(Measurand.Orp), checks, seed,
            (pool, c) => pool.InputOf(pool.OrpCheckOf(c.Hour, 1 + Math.Abs(c.Probe - c.Test), c.Test), 700 + (100 * (c.Probe - c.Test)))));

    private static void Compare(
        TestPool pool, (double Hour, double Test, double Probe)[] checks, int seed, Func<TestPool, (double Hour, double Test, double Probe), ProbeCheck> make)
    {
        var service = new Calibration { Id = Guid.NewGuid(), ProbeId = "probe", Status = CalibrationStatus.Approved, Offset = 0.1, ProposedBy = "x", HoldsFrom = TestPool.After(120) };
        var inputs = checks.Select(c => make(pool, c) with { Now = TestPool.After(300), Calibrations = [service] }).ToArray();
        var shuffled = inputs.ToArray();
        new Random(seed).Shuffle(shuffled);
        Assert.Equal(Write(Fold(inputs)), Write(Fold(shuffled)));
        // Sent twice is taken once.
        Assert.Equal(Write(Fold(inputs)), Write(Fold([.. inputs, .. shuffled])));
    }

    private static ProbeTrust Fold(IEnumerable<ProbeCheck> inputs) =>
        inputs.Aggregate(ProbeTrust.New, (trust, input) => Reconciliation.Judge(trust, input)!.Trust);

    private static string Write(ProbeTrust trust) => JsonSerializer.Serialize(trust, PlantJson.Options);

    [Fact]
    public void What_is_kept_of_older_checks_is_all_that_counts_to_the_last_bit() =>
        Gen.Double[-0.3, 0.3].Array[2 * ProbeTrust.Kept, 3 * ProbeTrust.Kept].Sample(offs =>
        {
            var pool = new TestPool(Measurand.Ph);
            var read = ProbeTrust.New;
            for (var i = 0; i < offs.Length; i++)
            {
                var input = pool.InputOf(pool.CheckOf(8 * i, new TestResult(Measurand.Ph, 7.3 + (0.1 * offs[^(i + 1)]), TestMethod.Photometer)), 7.3 + offs[i]);
                pool.Judge(input);
                read = JsonSerializer.Deserialize<ProbeTrust>(Write(Reconciliation.Judge(read, input)!.Trust), PlantJson.Options)!;
            }

            Assert.NotNull(pool.Trust.Base);
            Assert.Equal(Write(pool.Trust), Write(read));
            Assert.Equal(Write(pool.Trust), Write(Reconciliation.Refold(pool.Trust, pool.Probe, [], TestPool.After(9 * offs.Length))));
        }, iter: 20);

    [Fact]
    public void Trust_and_signal_survive_being_written_and_read()
    {
        var pool = new TestPool(Measurand.Orp);
        for (var i = 0; i < 12; i++) pool.CheckOrp(i * 8, 1 + (0.1 * (i % 4)), 7.4, 720 + (i % 4));
        Assert.NotNull(pool.Trust.Line);
        var text = Write(pool.Trust);
        Assert.Equal(text, Write(JsonSerializer.Deserialize<ProbeTrust>(text, PlantJson.Options)!));

        var health = SignalHealth.New;
        for (var i = 0; i < 500; i++) health = SignalHealth.Next(pool.Probe, health, TestPool.After(i / 60.0), 720 + (i % 3), true);
        var signal = JsonSerializer.Serialize(health, PlantJson.Options);
        Assert.Equal(signal, JsonSerializer.Serialize(JsonSerializer.Deserialize<SignalHealth>(signal, PlantJson.Options), PlantJson.Options));
    }
}
