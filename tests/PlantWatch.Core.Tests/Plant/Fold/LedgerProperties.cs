using CsCheck;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>The sums close after any mixture of good and bad.</summary>
public sealed class LedgerProperties
{
    [Fact]
    public void Received_is_stored_and_duplicates_and_refused_and_each_is_really_there() =>
        Walk.Acts.Sample(acts =>
        {
            var bench = Walk.Live(acts);
            var ledger = bench.Ledger;
            Assert.Equal(ledger.Received, ledger.Stored + ledger.Duplicates + ledger.Refused);
            Assert.Equal(ledger.Stored, bench.Readings.Count);
            Assert.Equal(ledger.Refused, bench.Refusals.Count);
            Assert.Equal(ledger.Messages, bench.Events.OfType<Core.Plant.MessageArrived>().Count());
            Assert.Equal(bench.Entries.Count + bench.Refusals.Count, bench.Entries.Select(e => e.Id).Concat(bench.Refusals.Select(r => r.Id)).Distinct().Count());
        }, iter: 300);
}
