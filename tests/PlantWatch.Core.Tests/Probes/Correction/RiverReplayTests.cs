using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using Xunit.Abstractions;

namespace PlantWatch.Core.Tests.Probes.Correction;

/// <summary>
/// The river's probe put through as if it stood in a plant: what its signal alone gives away, and what tests at its services make of it. The counts stand in docs/river.md.
/// Readings come every quarter of an hour, so nothing that shows within minutes (leaps, spikes, noise) can be seen; and a river is no pool: its days differ by season.
/// </summary>
public sealed class RiverReplayTests(ITestOutputHelper output)
{
    // What a transmitter for water passes on; an electrode in air or without its cable shows 0 or 14.
    private static readonly ProbePlan Probe = new()
    {
        Id = "river", Name = "pH", Measurand = Measurand.Ph, Topic = "river/ph", Range = new(2, 12), Every = TimeSpan.FromMinutes(15),
    };

    private sealed record Seen(RiverRecord.Row Row, bool Refused, Standing Standing, string Why)
    {
        public bool IsFlagged => Refused || Standing is not (Standing.Good or Standing.Unknown);
    }

    [RiverFact]
    public void What_its_signal_alone_gives_away()
    {
        Seen[] seen = [.. Replay()];
        var episodes = Episodes(seen).ToList();
        foreach (var episode in episodes)
            output.WriteLine($"{episode[0].Row.At} {episode.Count} readings, label {episode[0].Row.Label}, as read {episode.Min(s => s.Row.Ph)} to {episode.Max(s => s.Row.Ph)}: {Found(episode)}");
        var plain = seen.Where(s => s.Row.Label.Length == 0).ToList();
        foreach (var month in plain.GroupBy(s => s.Row.At.ToDateTimeOffset().Month))
            output.WriteLine($"month {month.Key}: {month.Count()} plain readings, flagged {100.0 * month.Count(s => s.IsFlagged) / month.Count():0.0} % {string.Join(" ", month.Where(s => s.IsFlagged).Select(s => s.Why).Distinct())}");
        output.WriteLine($"episodes found {episodes.Count(e => e.Any(s => s.IsFlagged))} of {episodes.Count}; plain readings flagged {plain.Count(s => s.IsFlagged)} of {plain.Count}");
        Assert.Equal(7, episodes.Count);
        // What no water has is refused at once; three short shifts within the water's own range are not seen at a reading a quarter of an hour.
        Assert.All(episodes.Where(e => e.Any(s => !Probe.Range.Contains(s.Row.Ph))), e => Assert.True(e[0].Refused));
        Assert.True(episodes.Count(e => e.Any(s => s.IsFlagged)) >= 4);
        Assert.True(plain.Count(s => s.IsFlagged) <= 0.005 * plain.Count, "a healthy probe was not left quiet");
    }

    [RiverFact]
    public void What_weekly_tests_and_its_services_make_of_it()
    {
        ImmutableArray<RiverRecord.Row> rows = [.. RiverRecord.Rows().Where(r => Probe.Range.Contains(r.Ph) && r.Corrected > 0 && r.Label.Length == 0)];
        RecordCorrection[] services = [.. RiverRecord.Services().Where(s => s.To >= RiverRecord.At("2019-01-01 00:00"))];
        // At a service the probe is cleaned and set right in its own electronics: its raw number begins anew.
        ImmutableArray<Calibration> cleaned = [.. services.Select(s => Serviced(s.To))];
        var (trust, within, told, deployments) = (ProbeTrust.New, 0, 0, new List<(double Gap, Estimate Bias, Standing Standing)>());
        var (quiet, disturbed, off, called) = (0, 0, 0, 0);
        foreach (var service in services)
        {
            var last = default(Judgement);
            for (var at = Instant.Later(service.From, rows[0].At) + TimeSpan.FromDays(1); at < service.To - TimeSpan.FromHours(2); at = Next(at, service.To))
            {
                var hour = rows.Where(r => r.At >= at && r.At < at + TimeSpan.FromHours(1)).ToList();
                if (hour.Count == 0) continue;
                (trust, last) = Reconciliation.Judge(trust, Check(at, hour, cleaned))!;
                if (!last.Bias.IsKnown) continue;
                told++;
                var (really, flagged) = (hour.Average(r => r.Ph - r.Corrected), Standings.IsWorse(last.Standing, Standing.Good));
                if (Math.Abs(last.Bias.Value - really) <= last.Bias.Expanded) within++;
                if (Math.Abs(really) < 0.1) (quiet, disturbed) = (quiet + 1, disturbed + (flagged ? 1 : 0));
                if (Math.Abs(really) > 0.15) (off, called) = (off + 1, called + (flagged ? 1 : 0));
            }

            deployments.Add((service.Drift, last!.Bias, last.Standing));
            output.WriteLine($"deployment to {service.To}: gap {service.Drift:+0.00;-0.00}, bias told {last.Bias.Value:+0.00;-0.00} +- {last.Bias.Expanded:0.00}, {last.Standing}; drift {30 * last.Drift.Value:+0.00;-0.00} +- {30 * last.Drift.Expanded:0.00} a month, {last.Reasons[0].Code}");
        }

        output.WriteLine($"within 2 sd {within} of {told}; less than 0.1 off: {disturbed} of {quiet} tests flag it; more than 0.15 off: {called} of {off} do");
        Assert.Equal(5, deployments.Count);
        // What is told holds what was found, on the right side, and is narrow enough to mean something.
        Assert.All(deployments, d => Assert.True(Math.Abs(d.Bias.Value + d.Gap) <= d.Bias.Expanded && Math.Sign(d.Bias.Value) == -Math.Sign(d.Gap) && d.Bias.Expanded < 0.15, $"{d}"));
        // A gap of 0.19 and more asks for maintenance before the service comes; one of 0.07 does not.
        Assert.All(deployments, d => Assert.Equal(Math.Abs(d.Gap) > 0.15, Standings.IsWorse(d.Standing, Standing.Good)));
        Assert.Equal(0, disturbed);
        Assert.True(within >= 0.9 * told);
    }

    // Every week, and once more two hours before the service.
    private static Instant Next(Instant at, Instant end) =>
        at + TimeSpan.FromDays(7) < end - TimeSpan.FromHours(3) ? at + TimeSpan.FromDays(7) : at < end - TimeSpan.FromHours(3) ? end - TimeSpan.FromHours(3) : end;

    private static ProbeCheck Check(Instant at, List<RiverRecord.Row> hour, ImmutableArray<Calibration> services) => new()
    {
        Plan = new CircuitPlan { Id = "river", Name = "River", TimeZone = "Etc/GMT+7" }, Probe = Probe, Now = at + TimeSpan.FromHours(1), Calibrations = services,
        Check = new ManualCheck
        {
            Id = TimeOrderedId.Derive(at, "river check"), PoolId = "river", SampledAt = at, EnteredAt = at, Point = SamplePoint.Cell, Who = "R. Example",
            Results = [new(Measurand.Ph, Math.Round(hour.Average(r => r.Corrected), 2), TestMethod.Meter)],
        },
        Window = new ProbeWindow("river", at, at + TimeSpan.FromHours(1), hour.Count, 0, hour.Average(r => r.Ph), 0.01, 0),
    };

    private static Calibration Serviced(Instant at) => new()
    {
        Id = TimeOrderedId.Derive(at, "river service"), ProbeId = "river", Kind = CalibrationKind.Verification, Status = CalibrationStatus.Approved, Basis = CalibrationBasis.Buffers,
        Work = ProbeWork.Cleaned, ProposedBy = "R. Example", DecidedBy = "R. Example", HoldsFrom = at,
    };

    private static IEnumerable<Seen> Replay()
    {
        var health = SignalHealth.New;
        foreach (var row in RiverRecord.Rows())
        {
            if (!Probe.Range.Contains(row.Ph))
            {
                yield return new(row, true, health.Standing, "refused");
                continue;
            }

            health = SignalHealth.Next(Probe, SignalHealth.Wait(Probe, health, row.At), row.At, row.Ph, null);
            yield return new(row, false, health.Standing, string.Join(",", health.Reasons.Select(r => r.Code)));
        }
    }

    private static IEnumerable<List<Seen>> Episodes(IEnumerable<Seen> seen)
    {
        List<Seen> episode = [];
        foreach (var one in seen)
        {
            if (one.Row.Label.Length > 0) episode.Add(one);
            else if (episode.Count > 0)
            {
                yield return episode;
                episode = [];
            }
        }
    }

    private static string Found(List<Seen> episode) =>
        episode.FirstOrDefault(s => s.IsFlagged) is { } first ? $"found ({first.Why}) after {(first.Row.At - episode[0].Row.At).TotalHours:0.00} h" : "not found";
}
