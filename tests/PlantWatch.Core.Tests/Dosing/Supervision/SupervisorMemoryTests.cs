using System.Text.Json;
using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Plant;

namespace PlantWatch.Core.Tests.Dosing.Supervision;

/// <summary>A supervisor is copied and written down with every state: nothing of what it knows may be lost or rounded.</summary>
public sealed class SupervisorMemoryTests
{
    [Fact]
    public void One_that_is_written_down_and_taken_up_again_every_so_often_says_and_knows_the_same()
    {
        var (whole, broken) = (new DosedPool(1) { AcidTank = 30 }, new DosedPool(1) { AcidTank = 30 });
        var (one, other) = (new PoolSupervisor(DosedPool.Plan), new PoolSupervisor(DosedPool.Plan));
        var said = 0;
        for (var minute = 0; minute < 12 * 1440; minute++)
        {
            if (minute == 10 * 1440) whole.AcidArrives = broken.AcidArrives = _ => 0;
            if (minute % 480 == 0) one.Test(1.5);
            if (minute % 480 == 0) other.Test(1.5);
            var here = one.Take(whole.Next()).ToArray();
            // Not only at the round five minutes.
            if (minute % 67 == 0) other = Again(other);
            Assert.Equal(here, other.Take(broken.Next()));
            said += here.Length;
        }

        Assert.True(said > 0, "nothing was said that could have differed");
        Assert.Equal(one.Memory(), other.Memory());
    }

    [Fact]
    public void A_copy_does_not_hear_what_the_other_is_told()
    {
        var pool = new DosedPool(2);
        var one = new PoolSupervisor(DosedPool.Plan);
        for (var minute = 0; minute < 600; minute++) one.Take(pool.Next());
        var copy = one.Copy();
        var before = copy.Memory();
        Assert.Equal(one.Memory(), before);

        for (var minute = 0; minute < 30; minute++) one.Take(pool.Next());

        Assert.Equal(before, copy.Memory());
        Assert.NotEqual(one.Memory(), copy.Memory());
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{"pool":null,"memory":"AAAAAAAAAAA="}""")]
    [InlineData("""{"pool":{"volumeCubicMetres":100,"alkalinity":100,"turnoverHours":3,"acid":{"millilitresPerStroke":0.4,"strength":7},"chlorine":{"millilitresPerStroke":0.6,"strength":120}},"memory":"AAAAAAAAAAA="}""")]
    public void What_is_no_memory_is_refused(string json) => Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<PoolSupervisor>(json, PlantJson.Options));

    [Fact]
    public void A_probe_that_reads_otherwise_is_no_trouble_of_a_pump()
    {
        var pool = new DosedPool(1);
        var supervisor = new PoolSupervisor(DosedPool.Plan);
        for (var minute = 0; minute < 12 * 1440; minute++)
        {
            if (minute == 10 * 1440) supervisor.ReadsOtherwise();
            var heard = pool.Next();
            // A buffer calibration took away a quarter of a unit; its controller was set to it too.
            Assert.Empty(supervisor.Take(minute < 10 * 1440 ? heard : heard with { Ph = heard.Ph - 0.25 }));
        }
    }

    private static PoolSupervisor Again(PoolSupervisor supervisor) =>
        JsonSerializer.Deserialize<PoolSupervisor>(JsonSerializer.SerializeToUtf8Bytes(supervisor, PlantJson.Options), PlantJson.Options)!;
}
