using PlantWatch.Core.Dosing.Volume;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET  /api/v1/pools/{id}/volume       VolumeView: the water that doses given by hand and their retests tell of

/// <summary>The water of a circuit as doses and retests tell of it.</summary>
/// <param name="Word">Against the plant file.</param>
/// <param name="Stated">What the plant file says: pools and balance tank.</param>
/// <param name="Effective">What the doses tell of; null with too few.</param>
/// <param name="Low">Lower end of its interval.</param>
/// <param name="High">Upper end; null where the signs bear none.</param>
/// <param name="Signs">What it rests on, newest first.</param>
/// <param name="Says">The answer, what to do, and what it rests on, in words.</param>
public sealed record VolumeView(VolumeWord Word, Amount Stated, Amount? Effective, Amount? Low, Amount? High, IReadOnlyList<VolumeSignView> Signs, IReadOnlyList<Said> Says);

/// <summary>One retest of one figure.</summary>
/// <param name="At">When it was sampled.</param>
/// <param name="Product">The product that was given.</param>
/// <param name="Measurand">The figure.</param>
/// <param name="Volume">The water it tells of by itself; null where nothing moved the way it should.</param>
/// <param name="Weight">Its part of the answer, 0 to 1.</param>
/// <param name="Apart">It lies apart from the others and counts for less.</param>
public sealed record VolumeSignView(Instant At, string Product, Measurand Measurand, Amount? Volume, double Weight, bool Apart);
