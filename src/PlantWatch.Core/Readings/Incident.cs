using System.Collections.Immutable;
using System.Text.Json.Serialization;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>A contamination incident that is open: what happened, whose plan was chosen, and the manual tests since.</summary>
public sealed record Incident
{
    /// <summary>UUIDv7 made where it was declared, so that sending it twice is harmless.</summary>
    public required Guid Id { get; init; }

    /// <summary>The pool it happened in.</summary>
    public required string PoolId { get; init; }

    /// <summary>What happened.</summary>
    public required IncidentKind Kind { get; init; }

    /// <summary>Whose table is counted by.</summary>
    public required IncidentAuthority Authority { get; init; }

    /// <summary>When it happened: tests from then on count.</summary>
    public Instant HappenedAt { get; init; }

    /// <summary>When it was declared.</summary>
    public Instant DeclaredAt { get; init; }

    /// <summary>Who declared it.</summary>
    public required string DeclaredBy { get; init; }

    /// <summary>In words.</summary>
    public string? Note { get; init; }

    /// <summary>What the manual tests since then say, in the order of sampling.</summary>
    public ImmutableArray<HoldTest> Tests { get; init; } = [];

    /// <summary>What people noted since.</summary>
    public ImmutableArray<IncidentRemark> Remarks { get; init; } = [];

    /// <summary>True when the water itself is concerned, and bathers stay out.</summary>
    [JsonIgnore]
    public bool ClosesThePool => Kind != IncidentKind.DeckSpill;
}

/// <summary>What a person noted in the course of an incident.</summary>
/// <param name="Id">UUIDv7 made where it was written.</param>
/// <param name="At">When.</param>
/// <param name="By">Who.</param>
/// <param name="Text">In words.</param>
public sealed record IncidentRemark(Guid Id, Instant At, string By, string Text);
