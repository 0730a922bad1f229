using System.Text.Json.Serialization;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Core.Rules.Packs;
using PlantWatch.Server.History;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Tests.Commands;
using PlantWatch.Server.Tests.House;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.History;

/// <summary>A day on which people did everything that can be done, and the same day out of its record.</summary>
public sealed class RecordedActsTests : IDisposable
{
    private const string Plant = """
        site:
          name: Bramble Street Baths
          time_zone: Etc/UTC
        limit_pack: who-2006
        people:
          - { id: reed, name: A. Reed, role: administrator }
        circuits:
          - id: hall
            name: Hall
            filters:
              - { id: sand, name: Sand filter, backwash_every_days: 0.5 }
            pools:
              - id: main
                name: Main pool
                kind: swimming
                setting: indoor
                disinfectant: chlorine
                volume_m3: 400
                limits:
                  - { measurand: ph, high: 7.7, source: test, on_delay_seconds: 300 }
                checks:
                  - { what: [ph], at: ["03:00", "11:00", "18:00"] }
                laboratory:
                  limits:
                    - { organism: escherichia_coli, high: 0, source: test }
            probes:
              - { id: ph, name: pH, pool: main, measurand: ph, origin: raw, topic: hall/ph, format: number, range: [0, 14], every_seconds: 10 }
        """;

    // What these rows tell follows from the rest by itself, or nothing that alarms hang on follows from it.
    private static readonly string[] NoActs = ["judgement", "standing", "gap", "plan", "dose_response", "job_effect", "correction", "exception", "exception_closed", "chemical_use", "handover", "plant_round", "note"];

    private static readonly Instant Start = LivedRecord.Start;

    private readonly string _folder = Directory.CreateTempSubdirectory("plantwatch-acts-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Every_kind_of_row_is_done_again_or_known_to_follow_by_itself()
    {
        var all = typeof(EntryBody).GetCustomAttributes(typeof(JsonDerivedTypeAttribute), false).Cast<JsonDerivedTypeAttribute>().Select(a => (string)a.TypeDiscriminator!);
        Findings.None(all.Except(RecordedActs.Kinds).Except(NoActs), "a kind of row that a replay passes over");
    }

    [Fact]
    public async Task What_people_did_with_pool_pack_laboratory_filter_incident_and_alarms_gives_the_same_alarms_again()
    {
        var incident = TimeOrderedId.Derive(Start, "incident");
        await new LivedRecord(_folder, Plant)
        {
            Acts =
            [
                (1.0, (at, s) => Confirmed(at, s)),
                (2.0, (at, _) => new PoolStateSet(at, TimeOrderedId.Derive(at, "close"), "main", OperatingState.Closed, "A. Reed", "a crack in a tile", ForCause: true)),
                (4.0, (at, _) => new LabResultEntered(at, new LabResult
                {
                    Id = TimeOrderedId.Derive(at, "lab"), PoolId = "main", Point = SamplePoint.Pool, SampledAt = at - TimeSpan.FromHours(30), ReportedAt = at - TimeSpan.FromHours(1),
                    Laboratory = "Aldbrook", SampleNumber = "17", By = "A. Reed", Counts = [new(Organism.EscherichiaColi, 3, CountSense.Counted, 100)],
                }, [])),
                (5.0, (at, _) => new IncidentDeclared(at, new Incident { Id = incident, PoolId = "main", Kind = IncidentKind.FormedStool, Authority = IncidentAuthority.UsCdc, DeclaredBy = "A. Reed" })),
                (9.0, (at, _) => new IncidentClosed(at, incident, "A. Reed", "the hold is over")),
                (10.0, (at, _) => new AlarmTakenOutOfService(at, "R-011/ph", "A. Reed", "the probe is away")),
                (11.0, (at, s) => s.Alarms.GetValueOrDefault("R-012/main/ph") is { } a ? new AlarmAcknowledged(at, a.Id, "A. Reed", null) : null),
                (14.0, (at, _) => new BackwashBegun(at, TimeOrderedId.Derive(at, "wash"), "sand", "A. Reed")),
                (14.2, (at, _) => new FilterWashed(at, TimeOrderedId.Derive(at, "washed"), "sand", "A. Reed")),
                (16.0, (at, _) => new AlarmReturnedToService(at, "R-011/ph", "A. Reed", null)),
                (18.0, (at, s) => s.Alarms.GetValueOrDefault("R-011/ph") is { } a ? new AlarmShelved(at, a.Id, at + TimeSpan.FromHours(4), "A. Reed", "acid on its way", OneShot: true) : null),
            ],
        }.LiveAsync(24, hour => hour is >= 7 and < 20 ? 7.9 : 7.4, (3, 7.4), (8, 7.9), (21, 7.4));

        var (told, retold) = (Told(), Retold(0));
        // R-005 of the incident, R-011 and R-012 of the water, R-052 of the filter, R-060 of the laboratory: not one of them is missing.
        Assert.Superset(new HashSet<string> { "R-005", "R-011", "R-012", "R-052", "R-060" }, told.Select(t => t.Key[..5]).ToHashSet());
        Assert.Contains(told, t => t.Change == AlarmChange.TakenOutOfService);
        Assert.Contains(told, t => t.Change == AlarmChange.Shelved);
        Assert.Contains(told, t => t.Change == AlarmChange.Acknowledged);
        Assert.Equal(told.Select(t => (t.Key, t.Change)), retold.Select(t => (t.Key, t.Change)));
        Assert.All(told.Zip(retold), t => Assert.InRange((t.Second.At - t.First.At).TotalSeconds, -0.1, 20.1));
    }

    [Fact]
    public async Task What_was_done_before_the_start_and_holds_still_holds_at_the_start()
    {
        await new LivedRecord(_folder, Plant)
        {
            Acts =
            [
                (1.0, (at, s) => Confirmed(at, s)),
                (2.0, (at, _) => new PoolStateSet(at, TimeOrderedId.Derive(at, "close"), "main", OperatingState.Closed, "A. Reed")),
                (3.0, (at, _) => new AlarmTakenOutOfService(at, "R-011/ph", "A. Reed", "the probe is away")),
                (4.0, (at, _) => new FilterWashed(at, TimeOrderedId.Derive(at, "washed"), "sand", "A. Reed")),
            ],
        }.LiveAsync(12, hour => 7.4);
        var state = Replayed(8, []).Side.State;
        Assert.Equal(OperatingState.Closed, state.Pools[0].Operation.State);
        Assert.Single(state.Confirmations);
        Assert.True(state.Alarms["R-011/ph"].OutOfService);
        Assert.Equal(4, (state.Filters[0].WashedAt - Start).TotalHours, 0.01);
    }

    private static PackRowConfirmed Confirmed(Instant at, CircuitState state)
    {
        var row = state.Plan.Pack!.Rows.First(r => r.Quantity == PackQuantity.Ph && r.Grade == RowGrade.Operating && r.High is not null);
        return new(at, state.Plan.Pack.Id, row.Id, RowDigest.Of(row), "A. Reed", "the document");
    }

    private (string Key, AlarmChange Change, Instant At)[] Told()
    {
        using var archive = SqliteArchive.Open(Path.Combine(_folder, "record.db"));
        return Changes(archive.Entries(new PartitionKey("hall"), new EntryQuery(["alarm"], Limit: int.MaxValue)).OrderBy(e => e.At).ThenBy(e => e.Id));
    }

    private (string Key, AlarmChange Change, Instant At)[] Retold(int from)
    {
        var entries = new List<RecordEntry>();
        Replayed(from, entries);
        return Changes(entries);
    }

    private CircuitReplay Replayed(int from, List<RecordEntry> entries)
    {
        using var archive = SqliteArchive.Open(Path.Combine(_folder, "record.db"));
        var replay = new CircuitReplay(
            archive, new PartitionKey("hall"), PlantFileReader.Read(Plant).Plan!.Circuits[0], Start + TimeSpan.FromHours(from), Start + TimeSpan.FromHours(24), result => entries.AddRange(result.Entries));
        replay.Run(_ => { }, CancellationToken.None);
        return replay;
    }

    private static (string Key, AlarmChange Change, Instant At)[] Changes(IEnumerable<RecordEntry> entries) =>
        [.. entries.Where(e => e.Body is AlarmEntry).Select(e => (((AlarmEntry)e.Body).Alarm.Key, ((AlarmEntry)e.Body).Change, e.At)).OrderBy(c => c.Key, StringComparer.Ordinal)];
}
