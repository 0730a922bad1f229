using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

/// <summary>GET /api/v1/pools/{id}/circulation: how the water goes round, and what fresh water does to it.</summary>
/// <param name="Volume">Water of the circuit, balance tank included.</param>
/// <param name="TurnoverHours">Design turnover, h; null when the plant file has none.</param>
/// <param name="Flow">Circulation that it asks for: the water of the pools by its hours.</param>
/// <param name="FilterRate">Flow through the filters; null when an area is missing.</param>
/// <param name="FilterKind">What kind of filtration that is.</param>
/// <param name="RetestHours">Hours to wait before a retest after a hand dose, h.</param>
/// <param name="EvenHours">Hours until a dose is even all through, h.</param>
/// <param name="Passed">Part of the water that has been through the plant room after so many turnovers.</param>
/// <param name="Fresh">What the fresh water asked about does; null when none was asked about.</param>
/// <param name="Washes">Water that went with the washes of the last weeks, and what it did; null when none was noted.</param>
/// <param name="Sayings">What is missing, or lies out of range.</param>
public sealed record CirculationView(
    Amount Volume, double? TurnoverHours, Amount? Flow, Amount? FilterRate, FilterRateKind FilterKind, double? RetestHours, double? EvenHours,
    IReadOnlyList<PassedView> Passed, FreshWaterView? Fresh, WashWaterView? Washes, IReadOnlyList<Said> Sayings);

/// <summary>Water that went with washes: fresh water took its place.</summary>
/// <param name="Days">Over how many days, up to now.</param>
/// <param name="Count">Washes of beds in that time.</param>
/// <param name="Unstated">Washes among them of which nobody said what they drained, and no usual figure is stated.</param>
/// <param name="Total">Water of the others.</param>
/// <param name="PartReplaced">Part of the circuit's water, 0 to 1, that is other water by that.</param>
/// <param name="Diluted">What the washes since the newest test do to what fresh water thins.</param>
public sealed record WashWaterView(int Days, int Count, int Unstated, Amount Total, double PartReplaced, IReadOnlyList<DilutedView> Diluted);

/// <summary>What washes do to one figure.</summary>
/// <param name="Measurand">The figure.</param>
/// <param name="Tested">Its newest test, mg/L.</param>
/// <param name="TestedAt">When that was sampled.</param>
/// <param name="Drained">Water of the washes since.</param>
/// <param name="NotBelow">What it falls to where the fresh water holds none of it, mg/L; bathers and doses bring it up again.</param>
public sealed record DilutedView(Measurand Measurand, double Tested, Instant TestedAt, Amount Drained, double NotBelow);

/// <summary>A point of the purification law.</summary>
/// <param name="Turnovers">Number of turnovers.</param>
/// <param name="Part">Part of the water, 0 to 1.</param>
public sealed record PassedView(int Turnovers, double Part);

/// <summary>Fresh water of a day.</summary>
/// <param name="ForBathers">For the bathers.</param>
/// <param name="ByBackwash">What backwashing drains and is filled up again.</param>
/// <param name="Total">Both.</param>
/// <param name="PartReplaced">Part of the circuit's water, 0 to 1, that is other water afterwards, mixed all the while.</param>
public sealed record FreshWaterView(Amount ForBathers, Amount ByBackwash, Amount Total, double PartReplaced);
