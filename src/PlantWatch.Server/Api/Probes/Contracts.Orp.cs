using PlantWatch.Core.Chemistry;

namespace PlantWatch.Server.Api;

/// <summary>GET /api/v1/probes/{id}/orp: what an ORP may say, and the reading against other reference electrodes.</summary>
/// <param name="TemperatureC">Water temperature that the figures are for, degC.</param>
/// <param name="TemperatureIsAssumed">True when no probe or test knows it and 25 degC was taken.</param>
/// <param name="PerPh">mV for a pH more, by theory.</param>
/// <param name="PerDoubling">mV for twice the hypochlorous acid, by theory.</param>
/// <param name="Reading">The probe's newest value in mV; null when there is none.</param>
/// <param name="Own">The probe's own reference electrode; unknown when its name is none of those with a table.</param>
/// <param name="Against">The reading against the other electrodes; empty when it cannot be turned.</param>
/// <param name="Sayings">What has to be said beside it.</param>
public sealed record OrpView(
    double TemperatureC, bool TemperatureIsAssumed, double PerPh, double PerDoubling, double? Reading, ReferenceElectrode Own, IReadOnlyList<OrpAgainst> Against,
    IReadOnlyList<Said> Sayings);

/// <summary>A reading as another electrode would show it.</summary>
/// <param name="Electrode">The electrode.</param>
/// <param name="Millivolts">mV against it.</param>
/// <param name="U">What the turning adds, k = 2, mV.</param>
/// <param name="FromMemory">True when a potential that it rests on is from memory.</param>
public sealed record OrpAgainst(ReferenceElectrode Electrode, double Millivolts, double U, bool FromMemory);
