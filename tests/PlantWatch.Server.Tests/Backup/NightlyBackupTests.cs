using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Backup;
using PlantWatch.Server.Tests.PlantFile;

namespace PlantWatch.Server.Tests.Backup;

/// <summary>A backup each night, made up for where it was missed, and the old ones only let go when a new one is whole.</summary>
public sealed class NightlyBackupTests
{
    private static readonly TimeZoneInfo London = TimeZoneInfo.FindSystemTimeZoneById("Europe/London");

    private readonly HandClock _clock = new();

    [Theory]
    [InlineData("2026-03-02T12:00:00Z", 3, "2026-03-02T03:00:00Z")]
    [InlineData("2026-03-02T02:59:59Z", 3, "2026-03-01T03:00:00Z")]
    [InlineData("2026-06-02T02:00:00Z", 3, "2026-06-02T02:00:00Z")] // Summer time: 03:00 is 02:00 UTC.
    [InlineData("2026-03-29T12:00:00Z", 1, "2026-03-29T01:00:00Z")] // The hour that the clocks leave out.
    [InlineData("2026-10-25T12:00:00Z", 1, "2026-10-25T01:00:00Z")] // The hour that comes twice.
    public void It_is_due_at_an_hour_of_the_sites_clock(string now, int hour, string due)
    {
        Assert.True(Instant.TryParse(now, out var at));
        Assert.Equal(due, BackupSchedule.LastDue(at, London, hour).ToString());
    }

    [Fact]
    public async Task One_is_made_a_night_and_as_many_are_kept_as_wanted()
    {
        using var data = await KnownBackup.MakeAsync(backUp: false);
        using var nightly = Nightly(data);
        Assert.Null(nightly.Age);

        Assert.True(nightly.Look(default));
        Assert.False(nightly.Look(default));
        Assert.Equal(TimeSpan.Zero, nightly.Age);
        for (var night = 0; night < 3; night++)
        {
            _clock.Advance(TimeSpan.FromHours(14));
            Assert.False(nightly.Look(default));
            _clock.Advance(TimeSpan.FromHours(10));
            Assert.True(nightly.Look(default));
        }

        Assert.Equal(["plantwatch-20260305T120000Z", "plantwatch-20260304T120000Z"], BackupFolder.In(data.Into).Select(b => Path.GetFileName(b.Path)));
        new BackupCheck(_ => { }).Prove(BackupFolder.In(data.Into)[0].Path);
    }

    [Fact]
    public async Task A_restarted_server_knows_the_newest_and_makes_none_too_many()
    {
        using var data = await KnownBackup.MakeAsync(backUp: false);
        using (var before = Nightly(data)) before.Look(default);
        _clock.Advance(TimeSpan.FromHours(1));
        using var nightly = Nightly(data);

        Assert.False(nightly.Look(default));

        Assert.Equal(TimeSpan.FromHours(1), nightly.Age);
    }

    [Fact]
    public async Task One_that_fails_is_said_and_tried_again_while_the_older_ones_stay()
    {
        using var data = await KnownBackup.MakeAsync(backUp: false);
        using var nightly = Nightly(data, keep: 1);
        nightly.Look(default);
        _clock.Advance(TimeSpan.FromDays(1));
        var record = Path.Combine(data.Data, "record.db");
        File.Move(record, record + ".gone");

        Assert.False(nightly.Look(default));

        Assert.Contains("there is no record", nightly.Trouble, StringComparison.Ordinal);
        Assert.Single(BackupFolder.In(data.Into));
        File.Move(record + ".gone", record);
        Assert.False(nightly.Look(default));
        _clock.Advance(NightlyBackup.Pause);
        Assert.True(nightly.Look(default));
        Assert.Null(nightly.Trouble);
        Assert.Equal("plantwatch-20260303T121000Z", Path.GetFileName(BackupFolder.In(data.Into).Single().Path));
    }

    [Fact]
    public async Task A_damaged_record_is_not_put_in_the_place_of_a_good_backup()
    {
        using var data = await KnownBackup.MakeAsync(backUp: false);
        using var nightly = Nightly(data, keep: 1);
        nightly.Look(default);
        _clock.Advance(TimeSpan.FromDays(1));
        var record = Path.Combine(data.Data, "record.db");
        var bytes = await File.ReadAllBytesAsync(record);
        bytes.AsSpan(bytes.Length / 2, 16 << 10).Fill(0xA5);
        await File.WriteAllBytesAsync(record, bytes);

        Assert.False(nightly.Look(default));

        Assert.Contains("damaged", nightly.Trouble, StringComparison.Ordinal);
        new BackupCheck(_ => { }).Prove(BackupFolder.In(data.Into).Single().Path);
        Assert.Empty(BackupFolder.Leftovers(data.Into));
    }

    [Fact]
    public async Task What_a_killed_one_left_goes_with_the_next_and_nothing_else_is_touched()
    {
        using var data = await KnownBackup.MakeAsync(backUp: false);
        foreach (var name in (string[])["plantwatch-20260301T030000Z.part", "holiday pictures", "plantwatch-spares.part"]) Directory.CreateDirectory(Path.Combine(data.Into, name));
        using var nightly = Nightly(data);

        nightly.Look(default);

        Assert.Equal(["holiday pictures", "plantwatch-20260302T120000Z", "plantwatch-spares.part"], Directory.GetDirectories(data.Into).Select(p => Path.GetFileName(p)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Without_a_folder_there_is_none()
    {
        using var data = await KnownBackup.MakeAsync(backUp: false);
        using var nightly = new NightlyBackup(new PlantWatchOptions { Data = data.Data }, () => London, _clock, NullLogger<NightlyBackup>.Instance);

        Assert.False(nightly.Look(default));
    }

    private NightlyBackup Nightly(KnownBackup data, int keep = 2) => new(
        new PlantWatchOptions { Data = data.Data, Backup = { Folder = data.Into, Keep = keep } }, () => London, _clock, NullLogger<NightlyBackup>.Instance);
}
