using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Incidents, jobs and calibrations as actions on breaches: of the pool's own water, of the probe that measures the quantity, of the pump that moves it. None of them proves anything; a test does.</summary>
internal static class BreachWork
{
    /// <summary>An incident was declared or noted: what is done in it is done about what is outside there. When it is over, what was raised for it is owed.</summary>
    public static void InIncident(Draft draft, IncidentEntry said, Instant at)
    {
        var incident = said.Incident;
        if (said.Change is IncidentChange.Closed or IncidentChange.PoolGone) BreachRaised.Over(draft, line => line.IncidentId == incident.Id, incident.Id, said.By, at);
        if (said.Change is not (IncidentChange.Declared or IncidentChange.Noted)) return;
        var id = said.Change == IncidentChange.Noted && !incident.Remarks.IsEmpty ? incident.Remarks[^1].Id : incident.Id;
        foreach (var line in draft.Exceptions.Open)
            if (line.PoolId == incident.PoolId || (incident.ClosesThePool && draft.Index.Pool(line.PoolId) >= 0) || line.PoolId == draft.Plan.Id) Keep(draft, line, StepKind.Incident, id, at, said.By, said.Comment);
    }

    /// <summary>Somebody is on a job, or has done it. One that was only seen, or that waits for parts, is no action.</summary>
    public static void Worked(Draft draft, Job job, Instant at)
    {
        if (job.State is not (JobState.Done or JobState.InHand) || (!job.IsFault && job.State != JobState.Done)) return;
        foreach (var line in draft.Exceptions.Open)
            if ((job.AlarmId is { } alarm && alarm == line.Reading.Id) || IsAbout(draft, job.Asset, line)) Keep(draft, line, StepKind.Job, job.Id, at, job.By, job.Done ?? job.Seen);
    }

    /// <summary>A calibration came into force, or the panel was adjusted.</summary>
    public static void Calibrated(Draft draft, Calibration calibration, Instant at)
    {
        if (calibration.Status is not (CalibrationStatus.Approved or CalibrationStatus.Adjusted) || draft.Index.Probe(calibration.ProbeId) is not (>= 0 and var probe)) return;
        foreach (var line in draft.Exceptions.Open)
            if (IsOfProbe(draft, probe, line)) Keep(draft, line, StepKind.Calibrated, calibration.Id, at, calibration.DecidedBy ?? calibration.ProposedBy, draft.Plan.Probes[probe].Name);
    }

    // Said again with more words it is one act: the newest words stand.
    private static void Keep(Draft draft, ExceptionLine line, StepKind kind, Guid id, Instant at, string? by, string? text)
    {
        if (line.Steps.FirstOrDefault(s => s.Kind == kind && s.Id == id) is { } known)
        {
            if (known.Text == text) return;
            line = line with { Steps = line.Steps.Remove(known) };
        }

        draft.Exceptions.Keep(line.With(new(kind, id, at, at, by) { Text = text }), ExceptionChange.Acted, at);
    }

    private static bool IsAbout(Draft draft, string asset, ExceptionLine line)
    {
        if (asset == draft.Plan.Id || asset == line.PoolId) return true;
        if (draft.Index.Probe(asset) is >= 0 and var probe) return IsOfProbe(draft, probe, line);
        if (draft.Index.Pump(asset) is >= 0 and var pump) return (draft.Plan.Pumps[pump].PoolId is not { } pool || pool == line.PoolId || line.PoolId == draft.Plan.Id) && BreachActs.Moves(draft.Plan.Pumps[pump].Doses, line.Quantity);
        return FilterFold.IndexOf(draft, asset) >= 0 && BreachActs.OfFilters.Contains(line.Quantity);
    }

    // ORP is how free chlorine is watched where no probe reads it.
    private static bool IsOfProbe(Draft draft, int probe, ExceptionLine line)
    {
        var plan = draft.Plan.Probes[probe];
        return (draft.Index.PoolOf[probe] < 0 || plan.PoolId == line.PoolId || line.PoolId == draft.Plan.Id)
            && (plan.Measurand.Key() == line.Quantity || (plan.Measurand == Measurand.Orp && line.Quantity == Measurand.FreeChlorine.Key()));
    }
}
