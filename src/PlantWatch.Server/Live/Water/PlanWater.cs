using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Live;

/// <summary>The water a plan starts from: what a person states, else the newest test; temperature alone may be a live probe's.</summary>
internal sealed record PlanWater(PlanBasis Basis, IReadOnlyList<BalanceInput> Inputs)
{
    public static PlanWater Of(CircuitState state, DoseSituation at, DosingPlanRequest request)
    {
        var inputs = new List<BalanceInput>();
        var stated = ImmutableHashSet.CreateBuilder<Measurand>();
        var said = request.Water ?? new(null, null, null, null, null, null, null);
        double? Value(Measurand measurand, double? typed)
        {
            if (typed is { } number)
            {
                stated.Add(measurand);
                inputs.Add(new(measurand, number, at.Now, false, UOf(measurand, number), false, null));
                return number;
            }

            if (Input(state, at, measurand) is not { } input) return null;
            inputs.Add(input);
            return input.Value;
        }

        Tested? Figure(Measurand measurand, double? typed) => Value(measurand, typed) is { } value ? new(value, inputs[^1].U ?? UOf(measurand, value)) : null;
        var water = new TestedWater
        {
            Ph = Figure(Measurand.Ph, said.Ph), Celsius = Value(Measurand.Temperature, said.Temperature), Alkalinity = Figure(Measurand.TotalAlkalinity, said.TotalAlkalinity),
            Calcium = Figure(Measurand.CalciumHardness, said.CalciumHardness), Solids = Figure(Measurand.DissolvedSolids, said.DissolvedSolids),
            FreeChlorine = at.Pool.Disinfectant == Core.Plans.Disinfectant.Bromine ? null : Figure(Measurand.FreeChlorine, said.FreeChlorine),
            Cyanurate = Figure(Measurand.CyanuricAcid, said.CyanuricAcid),
        };
        return new(new(water, stated.ToImmutable(), Fill(request.Fill)), inputs);
    }

    private static BalanceInput? Input(CircuitState state, DoseSituation at, Measurand measurand)
    {
        // Temperature alone may come from a probe: of every other figure the test is asked, and what stands against it is said.
        if (measurand == Measurand.Temperature && PresentWater.Live(state, at.Pool, measurand) is { Suspect: false } live) return live;
        if (!at.Tests.TryGetValue(measurand, out var test)) return null;
        var isNumber = test.Result.Censoring == Censoring.None || (measurand == Measurand.FreeChlorine && test.Result.Censoring == Censoring.Below);
        return isNumber ? new(measurand, test.Result.Value, test.SampledAt, false, MethodUncertainty.Of(test.Result).OrNull()?.U, test.Suspect, null) : null;
    }

    private static double UOf(Measurand measurand, double value) => MethodUncertainty.Of(new TestResult(measurand, value, TestMethod.Photometer)) is { IsKnown: true } u ? u.Expanded : 0;

    private static Water? Fill(WhatIfWater? fill) =>
        fill is { Ph: { } ph, TotalAlkalinity: { } alkalinity, CalciumHardness: { } calcium, DissolvedSolids: { } solids }
            ? new(Ph.From(ph), Celsius.From(fill.Temperature ?? UsualFillCelsius), Alkalinity.From(alkalinity), CalciumHardness.From(calcium), DissolvedSolids.From(solids))
            {
                Cyanurate = CyanuricAcid.From(fill.CyanuricAcid ?? 0), FreeChlorine = FreeChlorine.From(fill.FreeChlorine ?? 0),
            }
            : null;

    // Mains water as it comes; it shifts its carbon by a few per cent only.
    private const double UsualFillCelsius = 12;
}
