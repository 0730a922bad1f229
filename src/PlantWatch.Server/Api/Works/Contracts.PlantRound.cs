using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Server.Api;

//      GET  /api/v1/plant-rounds           PlantRoundView[]: what is looked at in each plant room, and whether today's round was walked
//      PUT  /api/v1/plant-rounds/{id}      PlantRoundRequest -> PlantRoundAnswer: a person walked one

/// <summary>A round that was walked.</summary>
/// <param name="Circuit">The circuit.</param>
/// <param name="WalkedAt">When.</param>
/// <param name="By">Who.</param>
/// <param name="Readings">What was read.</param>
/// <param name="Remark">What else was seen.</param>
public sealed record PlantRoundRequest(string? Circuit, Instant WalkedAt, string? By, IReadOnlyList<RoundReading>? Readings, string? Remark);

/// <summary>What was read, in words.</summary>
/// <param name="ItemId">The item.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Out">Something of it is not in order.</param>
/// <param name="Says">What it means.</param>
public sealed record RoundLineView(string ItemId, string Name, bool Out, IReadOnlyList<Said> Says);

/// <summary>What became of a round.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Circuit">The circuit.</param>
/// <param name="WalkedAt">When.</param>
/// <param name="By">Who.</param>
/// <param name="Lines">Its readings.</param>
public sealed record PlantRoundAnswer(Guid Id, string Circuit, Instant WalkedAt, string By, IReadOnlyList<RoundLineView> Lines);

/// <summary>One thing that is looked at.</summary>
/// <param name="Id">Its id.</param>
/// <param name="What">What it is.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Kind">How it is read.</param>
/// <param name="Unit">In what unit; empty for a look.</param>
/// <param name="Low">The least that is in order.</param>
/// <param name="High">The most that is in order.</param>
/// <param name="LastValue">What was read last.</param>
/// <param name="LastWorks">Whether it was in order last.</param>
/// <param name="LastAt">When; never while nobody has.</param>
/// <param name="Wanted">It belongs to today's round.</param>
public sealed record RoundItemView(
    string Id, RoundItem What, string Name, RoundReadingKind Kind, string Unit, double? Low, double? High, double? LastValue, bool? LastWorks, Instant LastAt, bool Wanted);

/// <summary>The round of a circuit.</summary>
/// <param name="Circuit">The circuit.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Word">How today's stands.</param>
/// <param name="DueAt">When today's is due.</param>
/// <param name="WalkedAt">When the last one was walked.</param>
/// <param name="By">Who walked it.</param>
/// <param name="Items">What is looked at, in the order of the walk.</param>
public sealed record PlantRoundView(string Circuit, string Name, RoundWord Word, Instant DueAt, Instant WalkedAt, string? By, IReadOnlyList<RoundItemView> Items);
