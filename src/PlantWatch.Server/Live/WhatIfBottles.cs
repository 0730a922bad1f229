using System.Collections.Immutable;
using PlantWatch.Core.Plans;

namespace PlantWatch.Server.Live;

/// <summary>What can be put into a pool's water: the products that the plant file lists.</summary>
internal static class WhatIfBottles
{
    public static IReadOnlyList<WhatIfBottle> Of(PoolPlan pool, ImmutableArray<ProductPlan> products) => [];
}
