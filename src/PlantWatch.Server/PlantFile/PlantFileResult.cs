using PlantWatch.Core.Plans;
using PlantWatch.Server.LimitPacks;

namespace PlantWatch.Server.PlantFile;

/// <summary>A plant file, understood or not. Exactly one of plan and errors.</summary>
internal sealed record PlantFileResult(PlantPlan? Plan, IReadOnlyList<PlantFileError> Errors)
{
    /// <summary>The limit packs that the plant may pick.</summary>
    public PackShelf Packs { get; init; } = PackShelf.Shipped;
}

/// <summary>What is wrong, where, and what was expected.</summary>
/// <param name="Line">Line in the file, from 1.</param>
/// <param name="Key">Path of the key, such as <c>circuits[0].pools[1].volume_m3</c>; empty for the file as a whole.</param>
/// <param name="Message">What was expected and what was found.</param>
internal sealed record PlantFileError(int Line, string Key, string Message)
{
    /// <summary>The file beside the plant file that is meant; null for the plant file itself.</summary>
    public string? File { get; init; }

    public override string ToString() => (File is null ? "" : $"{File}, ") + (Key.Length == 0 ? $"line {Line}: {Message}" : $"line {Line}, {Key}: {Message}");
}
