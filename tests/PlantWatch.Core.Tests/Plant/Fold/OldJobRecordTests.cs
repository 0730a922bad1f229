using System.Text;
using System.Text.Json;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>Records and journals from before jobs had parts, minutes and effects are read as they stand.</summary>
public sealed class OldJobRecordTests
{
    private const string Note = """{"id":"0197a000-0000-7000-8000-000000000301","asset":"acid-pump","seen":"drips","done":null,"state":"in_hand","alarmId":null,"by":"M. Invented","at":"2026-05-05T08:00:00Z"}""";

    [Fact]
    public void A_row_of_the_record_that_was_a_fault_note_is_a_job()
    {
        var entry = Assert.IsType<JobEntry>(JsonSerializer.Deserialize<EntryBody>("{\"kind\":\"fault\",\"note\":" + Note + "}", PlantJson.Options));
        Assert.Equal(("acid-pump", JobState.InHand), (entry.Job.Asset, entry.Job.State));
        Assert.Empty(entry.Job.Parts);
        Assert.Equal("fault", entry.Kind);
    }

    [Fact]
    public void An_event_of_the_journal_that_noted_a_fault_writes_a_job()
    {
        var at = Instant.FromUtc(2026, 5, 5, 8);
        var read = JournalCodec.Read(JournalCodec.Write([new JobWritten(at, new Job(Guid.Empty, "acid-pump", "drips", null, JobState.Open, null, "M. Invented", at))]));
        Assert.Equal("drips", Assert.IsType<JobWritten>(Assert.Single(read)).Job.Seen);
        var old = JsonSerializer.Deserialize<JobWritten>("{\"at\":\"2026-05-05T08:00:00Z\",\"note\":" + Note + "}", PlantJson.Options);
        Assert.Equal("drips", old!.Job.Seen);
        Assert.Contains("\"note\"", Encoding.UTF8.GetString(JsonSerializer.SerializeToUtf8Bytes(old, PlantJson.Options)), StringComparison.Ordinal);
    }
}
