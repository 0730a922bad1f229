using System.Text.Json.Nodes;

namespace PlantWatch.Demo;

/// <summary>Pools are opened in the morning through the gate and closed at night. Where the gate says no, the pool stays closed and they try again.</summary>
internal sealed class PoolHours(PublicApi api, Action<string> print)
{
    private const string Operator = "D. Marek";
    private const string DutyManager = "P. Ilunga";

    private static readonly TimeSpan Again = TimeSpan.FromMinutes(20);
    private static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById("Europe/London");

    // A quarter of an hour after the morning's tests; the warm pools are covered over night.
    private readonly Day[] _days =
    [
        new("main-pool", new(7, 15), new(22, 0), "closed"), new("teaching-pool", new(8, 45), new(19, 15), "covered"), new("therapy-pool", new(8, 15), new(17, 45), "covered"),
    ];

    /// <summary>Opens and closes what is due.</summary>
    public async Task WorkAsync(DateTimeOffset now, CancellationToken cancellation)
    {
        var time = TimeOnly.FromTimeSpan(TimeZoneInfo.ConvertTime(now, Zone).TimeOfDay);
        foreach (var day in _days)
        {
            var isDay = time >= day.Opens && time < day.Closes;
            if (isDay && day.IsOpen is not true && now >= day.NextTry) await OpenAsync(day, now, cancellation);
            else if (!isDay && day.IsOpen is not false) await CloseAsync(day, now, cancellation);
        }
    }

    private async Task OpenAsync(Day day, DateTimeOffset now, CancellationToken cancellation)
    {
        day.NextTry = now + Again;
        var gate = await api.GetAsync($"pools/{day.Pool}/gate", cancellation);
        var signed = gate?["signers"] is JsonArray;
        var (taken, words) = await SetAsync(day.Pool, "open", signed ? DutyManager : Operator, signed ? "Cause gone, tested anew and looked at." : null, now, cancellation);
        if (taken)
        {
            if (day.SaidNo) print($"{now:dd MMM HH:mm}  {day.Pool} opens after all");
            (day.IsOpen, day.SaidNo) = (true, false);
        }
        else if (!day.SaidNo)
        {
            day.SaidNo = true;
            print($"{now:dd MMM HH:mm}  the gate keeps {day.Pool} closed: {Lines(words)}");
        }
    }

    private async Task CloseAsync(Day day, DateTimeOffset now, CancellationToken cancellation)
    {
        var (taken, _) = await SetAsync(day.Pool, day.Night, Operator, null, now, cancellation);
        if (taken) (day.IsOpen, day.SaidNo, day.NextTry) = (false, false, DateTimeOffset.MinValue);
    }

    private Task<(bool Taken, string Words)> SetAsync(string pool, string state, string by, string? why, DateTimeOffset now, CancellationToken cancellation) =>
        api.PutAsync($"pools/{pool}/state/{Guid.CreateVersion7(now)}", new JsonObject { ["state"] = state, ["by"] = by, ["why"] = why }, cancellation);

    private static string Lines(string words)
    {
        var lines = JsonNode.Parse(words)?["errors"]?.AsArray().Select(e => e?["text"]?.GetValue<string>()) ?? [];
        return string.Join("; ", lines);
    }

    private sealed class Day(string pool, TimeOnly opens, TimeOnly closes, string night)
    {
        public string Pool { get; } = pool;
        public TimeOnly Opens { get; } = opens;
        public TimeOnly Closes { get; } = closes;
        public string Night { get; } = night;
        public bool? IsOpen { get; set; }
        public bool SaidNo { get; set; }
        public DateTimeOffset NextTry { get; set; }
    }
}
