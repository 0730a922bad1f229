using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Readings;

/// <summary>A remark beside a field.</summary>
/// <param name="Field">JSON path of the field, such as <c>results[1].value</c>.</param>
/// <param name="Reason">What, in code and figures.</param>
public sealed record FieldRemark(string Field, Reason Reason);
