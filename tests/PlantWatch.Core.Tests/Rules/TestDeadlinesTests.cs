using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Which doubt of a test stands after the next, and until when.</summary>
public sealed class TestDeadlinesTests
{
    private static readonly CircuitPlan Plan = new() { Id = "c", Name = "Circuit", TimeZone = "UTC", Pools = [new PoolPlan { Id = "main", Name = "Main" }] };
    private static readonly Instant Eight = Instant.FromUtc(2026, 5, 4, 8, 0);
    private static readonly TestResult Sound = new(Measurand.Ph, 7.4, TestMethod.Photometer);
    private static readonly ImmutableArray<TestDoubt> Doubted = After([], Checks.At(Eight, Sound), doubted: true, arrived: Eight);

    private static ImmutableArray<TestDoubt> After(ImmutableArray<TestDoubt> before, ManualCheck check, bool doubted, Instant arrived) =>
        TestDeadlines.After(Plan, before, check, _ => doubted, arrived);

    [Fact]
    public void A_doubted_test_is_to_be_repeated_within_an_hour_of_its_arrival() =>
        Assert.Equal(new TestDoubt(Measurand.Ph, Eight, Eight + TimeSpan.FromMinutes(75)), Assert.Single(After([], Checks.At(Eight, Sound), true, Eight + TimeSpan.FromMinutes(15))));

    [Fact]
    public void Without_a_memory_of_doubts_there_is_none() => Assert.Empty(After(default, Checks.At(Eight, Sound), false, Eight));

    [Fact]
    public void A_sound_test_of_a_later_sample_settles_it() => Assert.Empty(After(Doubted, Checks.At(Eight + TimeSpan.FromMinutes(1), Sound), false, Eight));

    [Fact]
    public void A_sound_test_of_the_same_instant_does_not() => Assert.Equal(Doubted, After(Doubted, Checks.At(Eight, Sound), false, Eight));

    [Fact]
    public void A_correction_of_the_doubted_test_settles_it() =>
        Assert.Empty(After(Doubted, Checks.At(Eight, Sound) with { Corrects = Guid.Parse("018f0000-0000-7000-8000-000000000001") }, false, Eight));

    [Fact]
    public void An_earlier_sample_that_comes_late_changes_nothing()
    {
        var before = Checks.At(Eight - TimeSpan.FromMinutes(1), Sound);
        Assert.Equal(Doubted, After(Doubted, before, false, Eight));
        Assert.Equal(Doubted, After(Doubted, before, true, Eight - TimeSpan.FromHours(2)));
        Assert.Equal(Doubted, After(Doubted, before with { Corrects = Guid.Parse("018f0000-0000-7000-8000-000000000001") }, false, Eight));
    }

    [Fact]
    public void A_doubted_repeat_is_the_newest_sample_and_leaves_the_time()
    {
        var later = Eight + TimeSpan.FromMinutes(30);
        Assert.Equal(Doubted[0] with { SampledAt = later }, Assert.Single(After(Doubted, Checks.At(later, Sound), true, later)));
        Assert.Equal(Doubted.ToArray(), After(Doubted, Checks.At(Eight, Sound), true, later).ToArray());
    }

    [Fact]
    public void A_doubted_repeat_that_would_close_the_pool_brings_the_time_forward()
    {
        var later = Eight + TimeSpan.FromMinutes(30);
        Assert.Equal(later + TimeSpan.FromMinutes(15), After(Doubted, Checks.At(later, Sound with { Value = 6.0 }), true, later)[0].By);
    }

    [Fact]
    public void Another_measurand_settles_nothing_and_has_a_doubt_of_its_own()
    {
        var later = Checks.At(Eight + TimeSpan.FromMinutes(1), new TestResult(Measurand.TotalAlkalinity, 90, TestMethod.Photometer));
        Assert.Equal(Doubted, After(Doubted, later, false, Eight));
        Assert.Equal([Measurand.Ph, Measurand.TotalAlkalinity], After(Doubted, later, true, Eight).Select(d => d.Measurand));
    }
}
