using System.Collections.Immutable;
using PlantWatch.Core.Alarms.Compared;
using PlantWatch.Core.Alarms.Health;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Server.WhatIf;

/// <summary>What came out of a run.</summary>
/// <param name="Circuits">The circuits that were replayed: those with a changed limit.</param>
/// <param name="Comparison">Alarms lost and gained.</param>
/// <param name="Before">The health of the alarms as the plan stands.</param>
/// <param name="After">The same with the changes.</param>
/// <param name="Recorded">Alarms that the record holds from the time itself.</param>
/// <param name="FoundAgain">How many of them the replay as the plan stands finds too.</param>
/// <param name="NotRecorded">How many it finds that the record does not hold.</param>
/// <param name="Readings">Readings that were replayed, run-in included.</param>
/// <param name="Took">How long it took.</param>
/// <param name="Notes">What has to be said of it.</param>
internal sealed record LimitResult(
    ImmutableArray<CircuitPlan> Circuits, AlarmComparison Comparison, AlarmHealth Before, AlarmHealth After, int Recorded, int FoundAgain, int NotRecorded, long Readings, TimeSpan Took,
    ImmutableArray<Reason> Notes);
