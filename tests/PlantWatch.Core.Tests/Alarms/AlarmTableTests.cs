using PlantWatch.Core.Alarms;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>The state table of IEC 62682 / ISA-18.2, letters A to I, over every combination of the independent facts (shape after OPC 10000-9, clause 4.8).</summary>
public sealed class AlarmTableTests
{
    public static TheoryData<int> Combinations => [.. Enumerable.Range(0, 64)];

    [Theory, MemberData(nameof(Combinations))]
    public void The_state_follows_from_the_facts(int facts)
    {
        bool active = Has(facts, 1), acknowledged = Has(facts, 2), latched = Has(facts, 4), shelved = Has(facts, 8), suppressed = Has(facts, 16), outOfService = Has(facts, 32);
        var alarm = new AlarmRecord
        {
            Key = "R-010/x", Rule = "R-010", Subject = "x", Cause = Reason.Of("limit.below"), Active = active, IsAcknowledged = acknowledged, LatchHeld = latched,
            ShelvedUntil = shelved ? Instant.FromUtc(2026, 5, 5, 16) : Instant.Never, Suppressed = suppressed, OutOfService = outOfService,
        };
        Assert.Equal(Letter(active, acknowledged, latched, shelved, suppressed, outOfService), Letters[alarm.State]);
    }

    [Fact]
    public void Every_state_of_the_table_can_be_reached() => Assert.Equal(Enum.GetValues<AlarmState>(), Letters.Keys);

    // Read straight from the table: process condition, acknowledgement, and the three ways of not being annunciated.
    private static char Letter(bool active, bool acknowledged, bool latched, bool shelved, bool suppressed, bool outOfService)
    {
        if (outOfService) return 'I';
        if (suppressed) return 'H';
        if (shelved) return 'G';
        if (active) return acknowledged ? 'C' : 'B';
        if (latched) return acknowledged ? 'F' : 'E';
        return acknowledged ? 'A' : 'D';
    }

    private static readonly Dictionary<AlarmState, char> Letters = new()
    {
        [AlarmState.Normal] = 'A', [AlarmState.Unacknowledged] = 'B', [AlarmState.Acknowledged] = 'C', [AlarmState.ReturnedUnacknowledged] = 'D',
        [AlarmState.LatchedUnacknowledged] = 'E', [AlarmState.LatchedAcknowledged] = 'F', [AlarmState.Shelved] = 'G', [AlarmState.SuppressedByDesign] = 'H',
        [AlarmState.OutOfService] = 'I',
    };

    private static bool Has(int facts, int fact) => (facts & fact) != 0;
}
