using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Render;

/// <summary>The unit of a column as people write it.</summary>
internal static class Units
{
    /// <summary>Empty where the figures bear their own, or have none.</summary>
    public static string Of(Column column) => column.Unit is { } unit ? Figures.After(unit).Trim('\u00a0') : "";
}
