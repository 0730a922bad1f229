using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Rules;

/// <summary>What is so around the subject of an alarm.</summary>
/// <param name="Now">The states of the plant that hold there.</param>
/// <param name="Pool">Name of the pool, or of the circuit for what all its pools share.</param>
/// <param name="Probe">Name of the probe; empty when the subject is none.</param>
public readonly record struct Surroundings(SuppressedWhile Now, string Pool, string Probe);

/// <summary>Suppression by design as policy: which state of the plant silences a rule, in words. A rule states its condition as data.</summary>
public static class Suppression
{
    // The stronger cause is named: without water there is no need to speak of flow.
    private static readonly (SuppressedWhile Cause, string Code, bool OfProbe)[] InOrder =
    [
        (SuppressedWhile.Drained, "suppressed.drained", false),
        (SuppressedWhile.NotOpen, "suppressed.not_open", false),
        (SuppressedWhile.Backwash, "suppressed.backwash", false),
        (SuppressedWhile.ProbeWork, "suppressed.probe_work", true),
        (SuppressedWhile.NoSampleFlow, "suppressed.no_flow", true),
    ];

    /// <summary>The cause that suppresses a rule there; null when none does.</summary>
    public static Reason? CauseOf(Rule rule, Surroundings around)
    {
        ArgumentNullException.ThrowIfNull(rule);
        var causes = rule.SuppressedWhile & around.Now;
        if (causes == SuppressedWhile.Never) return null;
        foreach (var (cause, code, ofProbe) in InOrder)
            if (causes.HasFlag(cause)) return Reason.Of(code, ofProbe ? around.Probe : around.Pool);
        return null;
    }
}
