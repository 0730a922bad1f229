using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Rules;

/// <summary>Stops that always hold, whatever limits a plant has set: outside them bathers should not be in the water. Common practice; local codes come first.</summary>
/// <remarks>A plant may tighten a stop with a reason; an administrator by name may loosen one with a reason, and only as far as it still stops something. None can be removed, and the bottom that has to be seen is not edited at all.</remarks>
public static class Stops
{
    /// <summary>pH 6.5 to 8.2.</summary>
    public static ValueRange Ph { get; } = new(6.5, 8.2);

    /// <summary>Free chlorine 0.2 to 10 mg/L as Cl2.</summary>
    public static ValueRange FreeChlorine { get; } = new(0.2, 10);

    /// <summary>Water up to 40 degC; no lower stop.</summary>
    public static ValueRange Temperature { get; } = new(-5, 40);

    /// <summary>What has a stop.</summary>
    public static ImmutableArray<Measurand> Of { get; } = [Measurand.Ph, Measurand.FreeChlorine, Measurand.Temperature];

    /// <summary>The stop on a measurand as it holds in a circuit, and the rule a live probe breaks by it; false where none holds.</summary>
    public static bool TryOf(CircuitPlan plan, Measurand measurand, out ValueRange range, out Rule rule)
    {
        ArgumentNullException.ThrowIfNull(plan);
        // By the mole: what is nil or too much of chlorine is so of bromine, which is written by its own weight.
        if (measurand == Measurand.Bromine && TryOf(plan, Measurand.FreeChlorine, out var chlorine, out rule))
        {
            range = new(Bromine.OfChlorineReading(chlorine.Low), Bromine.OfChlorineReading(chlorine.High));
            return true;
        }

        if (!TryUsual(measurand, out range, out rule)) return false;
        foreach (var edit in plan.Stops)
            if (edit.Measurand == measurand) range = Edited(range, edit, plan.People);
        return true;
    }

    /// <summary>The stop on a measurand where nobody edits it.</summary>
    public static bool TryUsual(Measurand measurand, out ValueRange range, out Rule rule)
    {
        (range, rule) = measurand switch
        {
            Measurand.Ph => (Ph, RuleBook.StopPh),
            Measurand.FreeChlorine => (FreeChlorine, RuleBook.StopFreeChlorine),
            Measurand.Temperature => (Temperature, RuleBook.StopTemperature),
            _ => (default, RuleBook.StopPh),
        };
        return Of.Contains(measurand);
    }

    /// <summary>How far a stop may be loosened: beyond it, it would stop nothing. Our own choice, wider than any code known to us.</summary>
    public static ValueRange Furthest(Measurand measurand) => measurand switch
    {
        Measurand.Ph => new(6, 9),
        Measurand.FreeChlorine => new(0.1, 20),
        Measurand.Temperature => new(Temperature.Low, 43),
        _ => default,
    };

    /// <summary>True where an edit lets through what the usual stop does not.</summary>
    public static bool IsLooser(StopPlan edit)
    {
        ArgumentNullException.ThrowIfNull(edit);
        return TryUsual(edit.Measurand, out var usual, out _) && (edit.Low < usual.Low || edit.High > usual.High);
    }

    // What is not entitled, without a reason or empty leaves the stop as it is: doubt never makes safe.
    private static ValueRange Edited(ValueRange usual, StopPlan edit, ImmutableArray<PersonPlan> people)
    {
        if (string.IsNullOrWhiteSpace(edit.Why)) return usual;
        var widest = people.Named(edit.By) is { MayEditStops: true } ? Furthest(edit.Measurand) : usual;
        var (low, high) = (Math.Max(edit.Low ?? usual.Low, widest.Low), Math.Min(edit.High ?? usual.High, widest.High));
        return low < high ? new(low, high) : usual;
    }
}
