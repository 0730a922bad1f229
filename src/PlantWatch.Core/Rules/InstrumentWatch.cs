using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Rules;

/// <summary>How an instrument stands for a measurand. The default is that nobody has verified it.</summary>
public enum InstrumentWord
{
    /// <summary>Nobody has verified it: nothing is known against it.</summary>
    NotVerified = 0,
    /// <summary>It read its standard within the tolerance, not too long ago.</summary>
    InOrder,
    /// <summary>The last verification is too long ago.</summary>
    Overdue,
    /// <summary>It read a standard wrong, and has not read that one right since.</summary>
    Failed,
}

/// <summary>What an instrument's verifications do to the results made with it: they are kept, and are less sure.</summary>
public static class InstrumentWatch
{
    /// <summary>How it stands at an instant.</summary>
    public static InstrumentWord WordOf(InstrumentPlan plan, InstrumentState state, Measurand measurand, Instant at)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(state);
        return state.NewestOf(measurand, at) is not { } newest ? InstrumentWord.NotVerified
            : state.Failed(measurand, at).Count > 0 ? InstrumentWord.Failed
            : at > newest.VerifiedAt + plan.Every ? InstrumentWord.Overdue : InstrumentWord.InOrder;
    }

    /// <summary>What the instruments add to the uncertainty of a result, and why; null when nothing. Where several could have made it, the one that stands worst counts: nobody said which it was.</summary>
    public static InstrumentDoubt? Against(CircuitPlan plan, ImmutableArray<InstrumentState> states, TestResult result, Instant sampledAt)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(result);
        InstrumentDoubt? worst = null;
        foreach (var instrument in plan.Instruments)
            if (Concerns(instrument, result) && states.FirstOrDefault(s => s.Id == instrument.Id) is { } state && Of(instrument, state, result, sampledAt) is { } doubt && !(worst?.Shared >= doubt.Shared))
                worst = doubt;
        return worst;
    }

    /// <summary>True when a result may have been made with an instrument.</summary>
    public static bool Concerns(InstrumentPlan instrument, TestResult result)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        ArgumentNullException.ThrowIfNull(result);
        return instrument.Tests.Contains(result.Measurand) && result.Method switch
        {
            TestMethod.Photometer => instrument.Kind == InstrumentKind.Photometer,
            TestMethod.Comparator => instrument.Kind == InstrumentKind.Comparator,
            TestMethod.Meter => instrument.Kind == InstrumentKind.Meter,
            TestMethod.Unknown => true,
            _ => false,
        };
    }

    private static InstrumentDoubt? Of(InstrumentPlan plan, InstrumentState state, TestResult result, Instant at)
    {
        var (newest, failed) = (state.NewestOf(result.Measurand, at), state.Failed(result.Measurand, at).MaxBy(v => ByFailure(v, result)));
        return WordOf(plan, state, result.Measurand, at) switch
        {
            InstrumentWord.Failed => new(ByFailure(failed!, result), Reason.Of("check.instrument_failed", plan.Name, failed!.Reading, failed.Nominal, result.Measurand.Unit())),
            InstrumentWord.Overdue => new(MethodUncertainty.Parts(result with { InstrumentDoubt = null }).Total, Reason.Of("check.instrument_overdue", plan.Name, (at - newest!.VerifiedAt).TotalDays, plan.Every.TotalDays)),
            _ => null,
        };
    }

    // It is off by what it was off by, as a share of the reading where that is more: a lamp or a scratched seat errs in proportion, an offset does not (our choice: the larger of the two).
    private static double ByFailure(Verification failed, TestResult result)
    {
        var off = Math.Abs(failed.Off);
        if (!result.Measurand.HasTrueNought()) return off;
        var offset = off * Math.Max(1, result.Dilution);
        return TellsAShare(failed) ? Math.Max(offset, off / failed.Nominal * Math.Abs(result.Value)) : offset;
    }

    // Well above nothing: five times what the standard is known and its figure is read to (our choice, because then neither is more than a fifth of the share; lower down the share is made of them and grows without end).
    private static bool TellsAShare(Verification failed) =>
        failed.Nominal + 1e-9 >= 5 * Math.Max(failed.Tolerance, Math.Pow(10, -failed.Measurand.Decimals()));
}

/// <summary>What is added to the uncertainty of a result for its instrument.</summary>
/// <param name="Shared">Standard uncertainty that all tests with it share, in the measurand's unit. For one that is overdue: as much again as the whole test has (our choice: what nobody has looked at may be off by as much as all that is known).</param>
/// <param name="Why">In words.</param>
public readonly record struct InstrumentDoubt(double Shared, Reason Why);
