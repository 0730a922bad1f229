using System.Text.Json;
using System.Text.Json.Serialization;

namespace PlantWatch.Simulator.People;

/// <summary>A check as it is typed in: the body of <c>PUT /api/v1/checks/{id}</c>, written by this simulator from the public description alone.</summary>
internal sealed record CheckSheet
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull };

    [JsonIgnore] public Guid Id { get; init; }
    public required string PoolId { get; init; }
    public required DateTimeOffset SampledAt { get; init; }
    public required DateTimeOffset EnteredAt { get; init; }
    public required string Who { get; init; }
    public string Point { get; init; } = "pool";
    public string? Place { get; init; }
    public IReadOnlyList<SheetResult> Results { get; init; } = [];
    public IReadOnlyList<SheetPanel> Panel { get; init; } = [];
    public bool? BottomVisible { get; init; }
    public int? Bathers { get; init; }
    public string? Note { get; init; }

    /// <summary>The body as UTF-8 JSON.</summary>
    public byte[] Body() => JsonSerializer.SerializeToUtf8Bytes(this, Json);

    /// <summary>A result by name; null when it was not tested.</summary>
    public double? Result(string measurand) => Results.FirstOrDefault(r => r.Measurand == measurand)?.Value;
}

/// <summary>One tested quantity.</summary>
internal sealed record SheetResult(string Measurand, double Value, string Method, string Censoring = "none", double Dilution = 1);

/// <summary>What the panel showed.</summary>
internal sealed record SheetPanel(string ProbeId, double Value);
