using System.Text;
using Microsoft.Data.Sqlite;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Storage;

/// <summary>Single readings and minutes may go; what was reckoned from them, entries, refusals and journal stay as they were, and nothing is counted twice or lost in silence.</summary>
public sealed class RetentionTests : IAsyncLifetime
{
    private static readonly CancellationToken None = CancellationToken.None;
    private static readonly Instant Start = Instant.FromUtc(2026, 6, 1);
    private static readonly Instant Cut = Start + TimeSpan.FromHours(12);
    private static readonly string[] Coarser = ["rollup_minute", "rollup_quarter", "rollup_hour", "rollup_day"];
    private readonly DatabaseFile _file = new();
    private SqliteStore _store = null!;

    // A day, a reading each ten seconds but for 03:00 to 03:30, of two series.
    public async Task InitializeAsync()
    {
        _store = Open();
        IEnumerable<Reading> Series(string key) => Enumerable.Range(0, 8640).Where(i => i is < 1080 or >= 1260)
            .Select(i => Batch.Ph(Start + TimeSpan.FromSeconds(10 * i), 7 + (i % 50 / 100.0), i % 7 == 0 ? Quality.Received | Quality.Late : Quality.Received, key));
        await _store.CommitAsync([Batch.Of(1, Series("main-ph")).With(entries: [Batch.Gap(Start, "a")]), Batch.Of(2, Series("main-orp"))], None);
    }

    public async Task DisposeAsync()
    {
        await _store.DisposeAsync();
        _file.Remove();
    }

    [Fact]
    public async Task Single_readings_go_in_pieces_and_all_that_is_coarser_stays_as_it_was()
    {
        var before = Coarser.Select(Contents).ToArray();
        var kept = Contents("reading", $"t >= {Cut.UnixMicroseconds}");
        var others = (Contents("entry"), Contents("journal"), Contents("refusal"));

        var pieces = await RoundAsync(Cut, most: 500);

        Assert.True(pieces.Count > 10);
        Assert.All(pieces, p => Assert.InRange(p.Rows, 1, 512));
        Assert.Equal(2 * (4320 - 180), pieces.Sum(p => p.Rows));
        Assert.Equal(before, Coarser.Select(Contents));
        Assert.Equal(kept, Contents("reading"));
        Assert.Equal(others, (Contents("entry"), Contents("journal"), Contents("refusal")));
        Assert.Equal(Cut, await _store.RawFromAsync(Batch.Main, "main-ph", None));
        Assert.Equal(Cut, await _store.RawFromAsync(Batch.Main, null, None));
        Assert.Equal("ok", Text("PRAGMA integrity_check"));
    }

    [Fact]
    public async Task What_asks_for_single_readings_that_went_is_answered_by_minutes()
    {
        var query = new SeriesQuery("main-ph", Start + TimeSpan.FromHours(1), Start + TimeSpan.FromHours(2), 600, TimeSpan.FromSeconds(10));
        Assert.Equal(Tier.Raw, (await _store.SeriesAsync(Batch.Main, query, None)).Tier);

        await RoundAsync(Cut);

        var answer = await _store.SeriesAsync(Batch.Main, query, None);
        Assert.Equal((Tier.Minute, 60, 360), (answer.Tier, answer.Points.Count, answer.Points.Sum(p => p.Count)));
        Assert.Equal(Tier.Raw, (await _store.SeriesAsync(Batch.Main, query with { From = Cut, To = Cut + TimeSpan.FromHours(1) }, None)).Tier);
        Assert.Empty(await _store.RawAsync(Batch.Main, "main-ph", query.From, query.To, 10, None));
    }

    [Fact]
    public async Task Only_whole_minutes_go()
    {
        await RoundAsync(Cut + TimeSpan.FromSeconds(35));

        Assert.Equal(Cut, await _store.RawFromAsync(Batch.Main, null, None));
        Assert.Equal(6, (await _store.RawAsync(Batch.Main, "main-ph", Cut, Cut + TimeSpan.FromMinutes(1), 10, None)).Count);
    }

    [Fact]
    public async Task A_late_reading_into_a_minute_that_went_is_refused_with_its_value_and_harms_nothing()
    {
        await RoundAsync(Cut);
        var before = Coarser.Select(Contents).ToArray();
        var late = Start + TimeSpan.FromHours(2);

        var receipt = await _store.CommitAsync([Batch.Of(3, Batch.Late(late, 7.0), Batch.Late(late + TimeSpan.FromSeconds(3), 9.5))], None);

        Assert.Equal(new BackFillTally(0, 2), receipt[0].BackFills);
        Assert.Equal(before, Coarser.Select(Contents));
        var refused = await _store.RefusalsAsync(Batch.Main, 10, None);
        Assert.All(refused, r => Assert.Equal(RefusalReason.ClockBehind, r.Reason));
        Assert.Contains("9.5", refused.Select(r => Encoding.UTF8.GetString(r.Payload.Span)));
    }

    [Fact]
    public async Task A_late_reading_into_a_minute_that_was_always_empty_is_taken_once_and_goes_in_its_turn()
    {
        await RoundAsync(Cut);
        var late = Start + new TimeSpan(3, 10, 5);

        await _store.CommitAsync([Batch.Of(3, Batch.Late(late, 7.5), Batch.Late(late + TimeSpan.FromSeconds(10), 7.7))], None);
        var again = await _store.CommitAsync([Batch.Of(4, Batch.Late(late, 7.5), Batch.Late(late + TimeSpan.FromSeconds(20), 7.9))], None);

        Assert.Equal(new BackFillTally(1, 0), again[0].BackFills);
        var hour = (await _store.SeriesAsync(Batch.Main, new SeriesQuery("main-ph", Start + TimeSpan.FromHours(3), Start + TimeSpan.FromHours(4), 1, default), None)).Points.Single();
        Assert.Equal(183, hour.Count);
        Assert.Equal(3, (await RoundAsync(Cut)).Sum(p => p.Rows));
        Assert.Equal(new BackFillTally(0, 1), (await _store.CommitAsync([Batch.Of(5, Batch.Late(late, 7.5))], None))[0].BackFills);
    }

    [Fact]
    public async Task It_is_known_after_opening_again_too_even_where_no_reading_is_left()
    {
        await RoundAsync(Start + TimeSpan.FromDays(2));
        await _store.DisposeAsync();
        _store = Open();

        var receipt = await _store.CommitAsync([Batch.Of(3, Batch.Ph(Start + TimeSpan.FromHours(2), 7.0), Batch.Ph(Start + TimeSpan.FromDays(3), 7.4))], None);

        Assert.Equal(new BackFillTally(0, 1), receipt[0].BackFills);
        Assert.Single(await _store.RawAsync(Batch.Main, "main-ph", Start, Start + TimeSpan.FromDays(9), 10, None));
    }

    [Fact]
    public async Task Minutes_go_where_the_single_readings_went_and_quarters_answer()
    {
        var before = Coarser[1..].Select(Contents).ToArray();
        Assert.Empty(await RoundAsync(Instant.Never, Cut));
        await RoundAsync(Cut);

        var pieces = await RoundAsync(Cut, Cut + TimeSpan.FromHours(6), most: 100);

        Assert.All(pieces, p => Assert.Equal(Tier.Minute, p.Tier));
        Assert.Equal(2 * (720 - 30), pieces.Sum(p => p.Rows));
        Assert.Equal(before, Coarser[1..].Select(Contents));
        var answer = await _store.SeriesAsync(Batch.Main, new SeriesQuery("main-ph", Start + TimeSpan.FromHours(1), Start + TimeSpan.FromHours(2), 60, default), None);
        Assert.Equal((Tier.QuarterHour, 4), (answer.Tier, answer.Points.Count));
        await _store.CommitAsync([Batch.Of(3, Batch.Late(Start + new TimeSpan(3, 10, 5), 7.5))], None);
        Assert.Equal(before, Coarser[1..].Select(Contents));
    }

    [Fact]
    public async Task Readings_whose_minute_does_not_hold_them_stay_and_the_other_series_go_on()
    {
        Execute($"UPDATE rollup_minute SET count = count - 1 WHERE series = 1 AND t = {(Start + TimeSpan.FromHours(1)).UnixMicroseconds}");

        var said = await Assert.ThrowsAsync<RollUpMissingException>(async () => await _store.LetGoAsync(new Retention(Cut, Instant.Never, false), 100_000, None));
        var pieces = await RoundAsync(Cut, ignore: true);

        Assert.Contains("main-circuit/main-ph: the minute 2026-06-01T01:00:00Z", said.Message, StringComparison.Ordinal);
        Assert.Equal("main-orp", pieces.Select(p => p.Series).Distinct().Single());
        Assert.Equal(Instant.Never, await _store.RawFromAsync(Batch.Main, "main-ph", None));
    }

    [Fact]
    public async Task What_another_store_is_still_owed_stays_until_it_is_there()
    {
        var wanted = new Retention(Cut, Instant.Never, HeedFeed: true);
        Assert.Null(await _store.LetGoAsync(wanted, 100_000, None));
        Execute($"INSERT INTO feed_series (series, upto, circuit, probe) VALUES (1, {(Start + TimeSpan.FromHours(6)).UnixMicroseconds}, 'main-circuit', 'main-ph')");
        Execute($"INSERT INTO feed_minute (series, t) VALUES (1, {(Start + TimeSpan.FromHours(4)).UnixMicroseconds})");

        Assert.Equal(Start + TimeSpan.FromHours(4), (await _store.LetGoAsync(wanted, 100_000, None))!.Before);
        Execute("DELETE FROM feed_minute");
        Assert.Equal(Start + TimeSpan.FromHours(6), (await _store.LetGoAsync(wanted, 100_000, None))!.Before);
        Assert.Null(await _store.LetGoAsync(wanted, 100_000, None));
    }

    [Fact]
    public async Task Days_can_still_be_cut_by_another_zone()
    {
        await RoundAsync(Start + TimeSpan.FromDays(2), Start + TimeSpan.FromDays(2));
        await _store.DisposeAsync();
        _store = SqliteStore.Open(_file.Path, TimeZoneInfo.FindSystemTimeZoneById("Asia/Kathmandu"));

        // 5 h 45 min ahead: 18 h 15 min of the day of June 1st, less the half hour of silence.
        Assert.Equal($"{(6 * 60 * 18) + 90 - 180}", Text("SELECT count FROM rollup_day WHERE series = 1 ORDER BY t LIMIT 1"));
    }

    [Fact]
    public async Task Its_size_is_told_with_the_pace_of_the_last_week()
    {
        await RoundAsync(Cut);

        var size = await _store.SizeAsync(Start + TimeSpan.FromDays(1), None);

        Assert.Equal((8640L, 2L * (4320 - 180)), (size.Readings, size.LetGo));
        Assert.Equal(2 * (8640 - 180), size.ReadingsADay, 1.0);
        Assert.Equal(2 * (1440 - 30), size.MinutesADay, 1.0);
        Assert.True(size.FreeBytes > 0);
        Assert.Equal(Text("SELECT page_count * page_size FROM pragma_page_count, pragma_page_size"), $"{size.Bytes}");
    }

    [Fact]
    public async Task A_record_of_the_first_form_comes_to_the_present_one_and_answers_the_same()
    {
        await _store.CommitAsync([Batch.Of(3, Batch.Late(Start + TimeSpan.FromSeconds(5), 7.3), Batch.Late(Start, 9.9))], None);
        await _store.SaveSnapshotAsync(Batch.Main, new Snapshot(3, 1, "hash", new byte[] { 9 }), None);
        var expected = await AnswersAsync(_store);
        await _store.DisposeAsync();
        var old = Path.Combine(Path.GetDirectoryName(_file.Path)!, "old.db");
        await MakeFirstFormAsync(old);
        using (var archive = SqliteArchive.OpenOfAnyAge(old)) Assert.Equal((1L, 16921L), (archive.Version, archive.Sums().Single().Readings));

        _store = SqliteStore.Open(old, TimeZoneInfo.Utc);

        Assert.Equal(expected, await AnswersAsync(_store));
        Assert.Equal(new BackFillTally(1, 0), (await _store.CommitAsync([Batch.Of(4, Batch.Late(Start, 7.0))], None))[0].BackFills);
    }

    private SqliteStore Open() => SqliteStore.Open(_file.Path, TimeZoneInfo.Utc);

    private async Task<List<LetGo>> RoundAsync(Instant raw, Instant minutes = default, int most = 100_000, bool ignore = false)
    {
        var gone = new List<LetGo>();
        while (true)
        {
            try
            {
                if (await _store.LetGoAsync(new Retention(raw, minutes, HeedFeed: false), most, None) is not { } piece) return gone;
                gone.Add(piece);
            }
            catch (RollUpMissingException) when (ignore)
            {
                // The next series is asked next.
            }
        }
    }

    private async Task MakeFirstFormAsync(string path)
    {
        using var script = new StreamReader(typeof(SqliteStore).Assembly.GetManifestResourceStream("0001_record_and_series.sql")!);
        Execute(await script.ReadToEndAsync() + $"; PRAGMA application_id = {0x50577463}; PRAGMA user_version = 1;", path);
        string[] tables = ["site", "partition", "journal", "snapshot", "reading", "refusal", "entry", .. Coarser];
        var copy = string.Concat(tables.Select(t => $"INSERT INTO {t} SELECT * FROM new.{t};"));
        Execute($"ATTACH '{_file.Path}' AS new; INSERT INTO series (id, partition, key) SELECT id, partition, key FROM new.series; {copy}", path);
    }

    private static async Task<string> AnswersAsync(SqliteStore store)
    {
        var answers = new StringBuilder();
        foreach (var (hours, width) in ((int, int)[])[(1, 600), (24, 400), (24, 12), (24 * 800, 500)])
        {
            var line = await store.SeriesAsync(Batch.Main, new SeriesQuery("main-ph", Start, Start + TimeSpan.FromHours(hours), width, TimeSpan.FromSeconds(10)), None);
            answers.Append(line.Tier).AppendJoin(' ', line.Points).Append('\n');
        }

        answers.AppendJoin(' ', await store.RawAsync(Batch.Main, "main-orp", Start, Start + TimeSpan.FromDays(2), int.MaxValue, None)).Append('\n');
        answers.AppendJoin(' ', (await store.EntriesAsync(Batch.Main, new EntryQuery([]), None)).Select(e => (e.Id, e.Subject, e.Body))).Append('\n');
        answers.AppendJoin(' ', (await store.RefusalsAsync(Batch.Main, 10, None)).Select(r => (r.Id, r.Reason, r.Detail))).Append('\n');
        await foreach (var row in store.JournalAsync(Batch.Main, 0, None)) answers.Append(row.Seq).Append(' ').Append(row.ReceivedAt).Append(' ');
        return answers.Append(await store.LastSeqAsync(Batch.Main, None)).Append(await store.BackFillsAsync(Batch.Main, None)).Append((await store.LatestSnapshotAsync(Batch.Main, 1, None))!.StateHash).ToString();
    }

    private string Contents(string table) => Contents(table, "TRUE");

    private string Contents(string table, string where)
    {
        using var connection = Connect(_file.Path);
        using var command = connection.CreateCommand();
        command.CommandText = $"SELECT * FROM {table} WHERE {where}";
        using var rows = command.ExecuteReader();
        var found = new StringBuilder();
        while (rows.Read())
        {
            for (var i = 0; i < rows.FieldCount; i++) found.Append(rows.GetValue(i) is byte[] bytes ? Convert.ToHexString(bytes) : rows.GetValue(i)).Append('|');
            found.Append('\n');
        }

        return found.ToString();
    }

    private string? Text(string sql)
    {
        using var connection = Connect(_file.Path);
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return Convert.ToString(command.ExecuteScalar(), System.Globalization.CultureInfo.InvariantCulture);
    }

    private void Execute(string sql, string? path = null)
    {
        using var connection = Connect(path ?? _file.Path);
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static SqliteConnection Connect(string path)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        connection.Open();
        return connection;
    }
}
