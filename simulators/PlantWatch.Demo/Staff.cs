using System.Text.Json.Nodes;

namespace PlantWatch.Demo;

/// <summary>The engineer, the duty manager and the fitter of the demo: they work through the public interface at their moments of the history.</summary>
internal sealed class Staff(PublicApi api, Action<string> print)
{
    private const string Engineer = "S. Achterberg";
    private const string DutyManager = "P. Ilunga";
    private const string Fitter = "D. Marek";
    private const string Operator = "M. Okafor";

    private static readonly string[] Circuits = ["main", "therapy"];
    // Alarms of the last day are left to whoever looks at the demo.
    private static readonly TimeSpan LeaveAlone = TimeSpan.FromHours(20);

    private readonly Guid _acidNote = Guid.CreateVersion7();
    private readonly LabReports _laboratory = new(api, print);
    private readonly PoolHours _hours = new(api, print);
    private double _nextRound;
    private double _limits;
    private double _kit;
    private double _nextCalibration = Hours(4, 10);
    private double _labReported = Hours(6, 11);
    private double _panelTurned = Hours(8, 9.2);
    private double _nextStrainer = Hours(5, 14.5);
    private double _noteOpened = Hours(10, 9);
    private double _noteDone = Hours(11, 15.2);
    private double _noteInHand = Hours(13, 15);

    /// <summary>Does what is due at an age of the history in hours.</summary>
    public async Task WorkAsync(double age, DateTimeOffset now, TimeSpan untilLive, CancellationToken cancellation)
    {
        if (Take(ref _limits, age)) await new LimitDesk(api, print).ConfirmAsync(cancellation);
        await _hours.WorkAsync(now, cancellation);
        if (Take(ref _kit, age)) await new KitShelf(api, print).NoteAsync(Operator, now, cancellation);
        if (age >= _nextCalibration) await CalibrateAsync(age, now, cancellation);
        if (Take(ref _labReported, age)) await _laboratory.EnterAsync(Operator, now, cancellation);
        if (Take(ref _panelTurned, age)) await LogPanelAsync(now, cancellation);
        if (Take(ref _noteOpened, age)) await NoteAsync(_acidNote, "main-acid", "Pump runs, tank level stands still, pH climbs. No flow at the injector.", null, "in_hand", cancellation);
        if (Take(ref _noteDone, age))
            await NoteAsync(_acidNote, "main-acid", "Pump runs, tank level stands still, pH climbs. No flow at the injector.",
                "Suction line had drawn air: foot valve cleaned, line primed, joint resealed. pH back in band two hours later.", "done", cancellation, 50, "foot valve");
        if (Take(ref _noteInHand, age))
            await NoteAsync(Guid.CreateVersion7(now), "therapy-hypo", "Stroke sounds uneven, injector crusted.", null, "open", cancellation);
        if (age >= _nextStrainer)
        {
            _nextStrainer = age + Hours(7, 0);
            await PlannedAsync("strainer", "main", "Clean the strainer before the circulation pump", "Hair and plasters, basket whole.", 20, now, cancellation);
        }

        if (age >= _nextRound && untilLive > LeaveAlone)
        {
            _nextRound = age + 8;
            await AcknowledgeAsync(cancellation);
        }
    }

    private static double Hours(int days, double hours) => (days * 24) + hours;

    private static bool Take(ref double due, double age)
    {
        if (age < due) return false;
        due = double.PositiveInfinity;
        return true;
    }

    // The operator proposes what PlantWatch offers, the engineer approves it. Where there is no offer yet they look again half a day later.
    private async Task CalibrateAsync(double age, DateTimeOffset now, CancellationToken cancellation)
    {
        _nextCalibration = age + 12;
        if ((await api.GetAsync("probes/main-ph", cancellation))?["offer"] is not JsonObject offer) return;
        if (await ProposeAsync("main-ph", offer["kind"]!.GetValue<string>(), offer["slope"]!.GetValue<double>(), offer["offset"]!.GetValue<double>(),
            offer["checks"]?.DeepClone(), "approved", "Consistent over several checks and two people; buffers agree.", now, cancellation))
            _nextCalibration = double.PositiveInfinity;
    }

    private async Task LogPanelAsync(DateTimeOffset now, CancellationToken cancellation)
    {
        var checks = (await api.GetAsync("probes/therapy-ph", cancellation))?["offer"]?["checks"]?.DeepClone();
        await ProposeAsync("therapy-ph", "panel_adjustment", 1, -0.25, checks, "adjusted", "Turned on the panel after the third check in a row that read lower.", now, cancellation);
    }

    private async Task<bool> ProposeAsync(
        string probe, string kind, double slope, double offset, JsonNode? checks, string decision, string why, DateTimeOffset now, CancellationToken cancellation)
    {
        var id = Guid.CreateVersion7(now);
        var (taken, words) = await api.PutAsync($"calibrations/{id}", new JsonObject
        {
            ["probeId"] = probe, ["kind"] = kind, ["slope"] = slope, ["offset"] = offset, ["checks"] = checks ?? new JsonArray(), ["by"] = Operator, ["note"] = "From the checks of the last days.",
        }, cancellation);
        if (taken)
            (taken, words) = await api.PostAsync($"calibrations/{id}/decision",
                new JsonObject { ["decision"] = decision, ["by"] = Engineer, ["why"] = why, ["holdsFrom"] = now.UtcDateTime }, cancellation);
        print(taken ? $"{now:dd MMM HH:mm}  {Engineer}: {kind} of {probe} by {offset:+0.00;-0.00}, {decision}" : $"{now:dd MMM HH:mm}  calibration of {probe} refused: {words}");
        return taken;
    }

    private async Task PlannedAsync(string task, string asset, string seen, string done, int minutes, DateTimeOffset now, CancellationToken cancellation)
    {
        var (taken, words) = await api.PutAsync($"jobs/{Guid.CreateVersion7(now)}", new JsonObject
        {
            ["asset"] = asset, ["seen"] = seen, ["done"] = done, ["state"] = "done", ["taskId"] = task, ["minutes"] = minutes, ["by"] = Fitter,
        }, cancellation);
        if (!taken) print($"planned work {task} refused: {words}");
    }

    private async Task NoteAsync(Guid id, string asset, string seen, string? done, string state, CancellationToken cancellation, int? minutes = null, string? part = null)
    {
        var (taken, words) = await api.PutAsync($"jobs/{id}", new JsonObject
        {
            ["asset"] = asset, ["seen"] = seen, ["done"] = done, ["state"] = state, ["by"] = Fitter, ["minutes"] = minutes,
            ["parts"] = part is null ? null : new JsonArray(new JsonObject { ["name"] = part, ["count"] = 1 }),
        }, cancellation);
        print(taken ? $"{Fitter} writes on {asset}: {state}" : $"note on {asset} refused: {words}");
    }

    private async Task AcknowledgeAsync(CancellationToken cancellation)
    {
        foreach (var circuit in Circuits)
        {
            if ((await api.GetAsync($"circuits/{circuit}", cancellation))?["alarms"] is not JsonArray alarms) continue;
            foreach (var alarm in alarms.Where(a => a?["acknowledged"]?.GetValue<bool>() == false))
                await api.PostAsync($"alarms/{alarm!["id"]}/acknowledge", new JsonObject { ["by"] = DutyManager, ["comment"] = "Seen on the round." }, cancellation);
        }
    }
}
