using System.Collections.Immutable;
using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant;

/// <summary>A person walked a round through the circuit's plant room.</summary>
/// <param name="At">When it was told.</param>
/// <param name="Round">The round.</param>
public sealed record PlantRoundDone(Instant At, PlantRound Round) : PlantEvent(At);

/// <summary>A person held an instrument against a standard. Every circuit of the plant is told: they share the test kit.</summary>
/// <param name="At">When it was told.</param>
/// <param name="InstrumentId">The instrument.</param>
/// <param name="Verification">What was read.</param>
public sealed record InstrumentVerified(Instant At, string InstrumentId, Verification Verification) : PlantEvent(At);

/// <summary>A round was walked.</summary>
/// <param name="Round">As it was told.</param>
/// <param name="Lines">What each reading was of, and what it means.</param>
public sealed record RoundEntry(PlantRound Round, ImmutableArray<RoundLine> Lines) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "plant_round";
}

/// <summary>An instrument was held against a standard.</summary>
public sealed record InstrumentEntry(string InstrumentId, Verification Verification) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "instrument_verified";
}
