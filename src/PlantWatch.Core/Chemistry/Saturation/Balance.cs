using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>Works out the whole balance of a water, as far as its tests go.</summary>
public static class Balance
{
    /// <summary>The balance.</summary>
    public static BalanceSheet Of(BalanceInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        if (inputs.Water is not { } water) return Partial(inputs);
        var result = Equilibrium.Speciate(water);
        var measured = TestUncertainty(inputs, water);
        var index = SpeciatedIndex.Of(result).With(measured);
        var sheet = new BalanceSheet
        {
            Speciated = index,
            Handbook = HandbookIndex.Of(water).With(measured),
            ClosedForm = ClosedFormIndex.Of(water).With(measured),
            IonicStrength = IonicStrengthForm.Of(water).With(measured),
            AlkalinityTakenOff = CarbonateAlkalinity.Taken(water),
            Water = result.IsKnown ? result.Value : null,
            Sayings = Sayings(inputs, water, index),
        };
        return index.IsKnown ? WithSaturation(sheet, water, result.Value) : sheet;
    }

    private static BalanceSheet WithSaturation(BalanceSheet sheet, Water water, Speciation speciation)
    {
        var saturation = speciation.Ph - speciation.SaturationIndex;
        return sheet with
        {
            SaturationPh = saturation,
            SaturationPhMoved = Calcite.SaturationPh(speciation),
            PrecipitationPotential = Calcite.PrecipitationPotential(speciation),
            Ryznar = OtherIndices.Ryznar(saturation, speciation.Ph),
            Puckorius = water.Alkalinity.MilligramsPerLitre > 0 ? OtherIndices.Puckorius(saturation, water.Alkalinity.MilligramsPerLitre) : null,
            LarsonSkold = OtherIndices.LarsonSkold(speciation.ChlorideMilliequivalents, speciation.BicarbonateMilliequivalents),
        };
    }

    // Without pH there is no index, but the pH at which the water would be balanced is known all the same.
    private static BalanceSheet Partial(BalanceInputs inputs)
    {
        var why = inputs.Missing is [var first, ..] ? Reason.Of("balance.missing", first.Key()) : Reason.Of("balance.impossible_input");
        var none = IndexResult.Not(why, 0);
        var saturation = inputs.Missing is [Measurand.Ph] && inputs is { Calcium.Value: > 0, Alkalinity.Value: > 0 }
            ? IonicStrengthForm.SaturationPh(inputs.Temperature.Value, inputs.SolidsOrUsual.Value, inputs.Calcium.Value, inputs.Alkalinity.Value)
            : (double?)null;
        return new BalanceSheet
        {
            Speciated = none, Handbook = none, ClosedForm = none, IonicStrength = none, Missing = inputs.Missing, SaturationPhMoved = saturation,
            Sayings = saturation is { } ph ? [Reason.Of("balance.saturation_ph_without_ph", ph)] : [],
        };
    }

    private static ImmutableArray<Reason> Sayings(BalanceInputs inputs, Water water, IndexResult index)
    {
        var sayings = ImmutableArray.CreateBuilder<Reason>();
        if (!index.IsKnown && index.Why is { } why) sayings.Add(why);
        if (!inputs.Solids.IsKnown) sayings.Add(Reason.Of("balance.solids_assumed", BalanceInputs.UsualSolids.Value));
        if (CarbonateAlkalinity.Taken(water) is > 0.5 and var taken) sayings.Add(Reason.Of("balance.cyanurate_taken_off", taken));
        if (index is { IsKnown: true, WordIsSure: false }) sayings.Add(Reason.Of("balance.word_unsure", index.Expanded));
        return sayings.ToImmutable();
    }

    /// <summary>Standard uncertainty of a saturation index by its tests, by the slopes of the ionic-strength form (GUM, first order).</summary>
    private static double TestUncertainty(BalanceInputs inputs, Water water)
    {
        var alkalinity = CarbonateAlkalinity.Of(water);
        if (alkalinity <= 1 || water.Calcium.MilligramsPerLitre <= 1) return inputs.Ph.StandardUncertainty;
        var (celsius, solids, calcium) = (water.Temperature.Degrees, Math.Max(water.Solids.MilligramsPerLitre, 10), water.Calcium.MilligramsPerLitre);
        var at = IonicStrengthForm.SaturationPh(celsius, solids, calcium, alkalinity);
        double Share(double moved) => moved - at;
        var parts = (ReadOnlySpan<double>)
        [
            inputs.Ph.StandardUncertainty,
            Share(IonicStrengthForm.SaturationPh(celsius + inputs.Temperature.StandardUncertainty, solids, calcium, alkalinity)),
            Share(IonicStrengthForm.SaturationPh(celsius, solids + inputs.SolidsOrUsual.StandardUncertainty, calcium, alkalinity)),
            inputs.Calcium.StandardUncertainty / (calcium * Ln10),
            inputs.Alkalinity.StandardUncertainty / (alkalinity * Ln10),
            inputs.Cyanurate.StandardUncertainty * CarbonateAlkalinity.CyanurateFactor(water.Ph.Value) / (alkalinity * Ln10),
        ];
        var sum = 0.0;
        foreach (var part in parts) sum += part * part;
        return Math.Sqrt(sum);
    }

    private const double Ln10 = 2.302585092994046;
}
