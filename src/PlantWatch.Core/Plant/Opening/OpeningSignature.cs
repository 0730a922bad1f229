using PlantWatch.Core.Plans;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Opening;

/// <summary>Who may sign that a pool opens again after it was closed for cause.</summary>
internal static class OpeningSignature
{
    /// <summary>What is missing of the signature; null when it is good.</summary>
    public static FieldRemark? Missing(CircuitPlan plan, string by, string? why)
    {
        if (!plan.People.Any(person => person.MayReopen)) return new("by", Reason.Of("gate.nobody_entitled"));
        if (plan.People.Named(by) is not { MayReopen: true }) return new("by", Reason.Of("gate.not_entitled", by.Trim()));
        return string.IsNullOrWhiteSpace(why) ? new("why", Reason.Of("field.required")) : null;
    }
}
