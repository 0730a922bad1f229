namespace PlantWatch.Core.Readings;

/// <summary>A check that was taken.</summary>
/// <param name="Id">Its id.</param>
/// <param name="ContentHash">Hash of its canonical content.</param>
/// <param name="Corrects">The check that it takes the place of; null for a new one.</param>
public readonly record struct KnownCheck(Guid Id, ulong ContentHash, Guid? Corrects = null);
