using System.Collections.Concurrent;
using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Core.Plans;
using PlantWatch.Server.Hosting;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.PlantFile;

namespace PlantWatch.Server.Tests.LimitPacks;

/// <summary>Limit packs of the plant's own, in the folder beside its plant file.</summary>
public sealed class OwnPackTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly HandClock _clock = new();

    private string Plant => Path.Combine(_folder.Root, "plant.yaml");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_pack_beside_the_plant_file_can_be_picked_as_one_that_comes_with_the_server()
    {
        Save("licence-2026", Pack("licence-2026", high: 3.5));
        var found = Read();
        Assert.Equal(3.5, Assert.Single(found.Plan!.Circuits[0].Pack!.Rows).High);
        Assert.Contains(found.Packs.InOrder, p => p.Id == "who-2006");
    }

    [Theory]
    [InlineData("licence-2026", "id: licence-2026\nauthority: a\nedition: e\nrows:\n  - { id: a, quantity: ph, low: 8, high: 7, says: s, source: s, provenance: published }", "packs/licence-2026.pack.yaml, line 5")]
    [InlineData("licence-2026", "id: licence-2026\nauthority: [", "packs/licence-2026.pack.yaml, line")]
    [InlineData("other", "id: licence-2026\nauthority: a\nedition: e\nrows:\n  - { id: a, quantity: ph, low: 7, says: s, source: s, provenance: published }", "expected the name of the file, 'other', found 'licence-2026'")]
    [InlineData("who-2006", "id: who-2006\nauthority: a\nedition: e\nrows:\n  - { id: a, quantity: ph, low: 7, says: s, source: s, provenance: published }", "'who-2006' is the id of a limit pack that comes with the server")]
    public void What_is_wrong_with_a_pack_is_told_with_its_file_and_line(string name, string text, string says)
    {
        Save(name, text);
        var result = Read();
        Assert.Null(result.Plan);
        Assert.Contains(result.Errors, e => e.ToString().Contains(says, StringComparison.Ordinal));
    }

    [Fact]
    public void Bytes_that_are_no_text_and_a_pack_that_is_not_there_are_told()
    {
        Assert.Contains(Read().Errors, e => e.ToString().Contains("licence-2026", StringComparison.Ordinal));
        Directory.CreateDirectory(PlantFileSource.PacksBeside(Plant));
        File.WriteAllBytes(Path.Combine(PlantFileSource.PacksBeside(Plant), "licence-2026.pack.yaml"), [0xff, 0xfe, 0x00]);
        Assert.Contains(Read().Errors, e => e.ToString() == "packs/licence-2026.pack.yaml, line 1: expected text in UTF-8 of at most 1 MiB");
    }

    [Fact]
    public async Task A_pack_that_changes_comes_into_force_without_a_restart_and_a_broken_one_leaves_the_old_in_force()
    {
        Save("licence-2026", Pack("licence-2026", high: 3.5));
        WritePlant();
        var taken = new ConcurrentQueue<double?>();
        await using var watcher = new PlantFileWatcher(Plant, Take, _clock, NullLogger<PlantFileWatcher>.Instance) { Listen = false };
        await watcher.StartAsync(default);

        Save("licence-2026", Pack("licence-2026", high: 3));
        await LookAsync(() => taken.Count == 2, "the changed pack came into force");
        Save("licence-2026", "id: licence-2026\n");
        await LookAsync(() => watcher.Errors.Count > 0, "the broken pack is told");
        Assert.All(watcher.Errors, e => Assert.Equal("packs/licence-2026.pack.yaml", e.File));
        Assert.Equal([3.5, 3], taken);
        Assert.Contains(watcher.Packs.InOrder, p => p.Id == "licence-2026");

        Task Take(PlantPlan plan, CancellationToken cancellation)
        {
            taken.Enqueue(plan.Circuits[0].Pack!.Rows[0].High);
            return Task.CompletedTask;
        }

        async Task LookAsync(Func<bool> there, string what)
        {
            _clock.Advance(watcher.Poll);
            // A quick look may come to wait while the clock is still being moved, and have waited by then.
            await Peer.UntilAsync(() => _clock.WaitingFor(watcher.Settle) == 1 || there(), "a look was taken");
            _clock.Advance(watcher.Settle);
            await Peer.UntilAsync(there, what);
        }
    }

    [Fact]
    public void The_last_good_plan_keeps_its_packs_and_forgets_those_that_went()
    {
        var options = new PlantWatchOptions { PlantFile = Plant, Data = Directory.CreateDirectory(Path.Combine(_folder.Root, "data")).FullName };
        Save("licence-2026", Pack("licence-2026", high: 3.5));
        Save("older", Pack("older", high: 5));
        WritePlant();
        LastGoodPlan.Keep(options);
        Save("licence-2026", "broken");
        Assert.Equal(3.5, LastGoodPlan.Find(options)!.Circuits[0].Pack!.Rows[0].High);
        Save("licence-2026", Pack("licence-2026", high: 3));
        File.Delete(Path.Combine(PlantFileSource.PacksBeside(Plant), "older.pack.yaml"));
        LastGoodPlan.Keep(options);
        Assert.Equal(3, LastGoodPlan.Find(options)!.Circuits[0].Pack!.Rows[0].High);
        Assert.DoesNotContain(LastGoodPlan.Source(options.Data).Understand().Packs.InOrder, p => p.Id == "older");
    }

    private PlantFileResult Read()
    {
        WritePlant();
        return PlantFileSource.Read(Plant).Understand();
    }

    private void WritePlant() => File.WriteAllText(Plant, """
        site: { name: North Quay Pool, time_zone: Europe/London }
        limit_pack: licence-2026
        circuits:
          - id: main
            name: Main circuit
            pools:
              - { id: main-pool, name: Main pool, kind: swimming, setting: indoor, disinfectant: chlorine, volume_m3: 425 }
        """);

    private void Save(string name, string text)
    {
        var folder = Directory.CreateDirectory(PlantFileSource.PacksBeside(Plant)).FullName;
        File.WriteAllText(Path.Combine(folder, name + ".pack.yaml"), text);
    }

    private static string Pack(string id, double high) =>
        FormattableString.Invariant($"id: {id}\nauthority: the local authority\nedition: \"2026\"\nrows:\n  - {{ id: fc, quantity: free_chlorine, high: {high}, says: s, source: s, provenance: published }}\n");
}
