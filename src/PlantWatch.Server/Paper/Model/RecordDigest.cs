using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Paper.Model;

/// <summary>What the record of a span comes to: whoever makes it again of the same rows has the same figure.</summary>
/// <param name="Hash">SHA-256 of all circuits' rows, lower-case hexadecimal.</param>
/// <param name="Heads">How far each circuit's record went.</param>
internal sealed record RecordDigest(string Hash, IReadOnlyList<RecordHead> Heads);

/// <summary>How far the record of a circuit went.</summary>
/// <param name="Circuit">Its key.</param>
/// <param name="Seq">Number of the last batch that was committed.</param>
/// <param name="Rows">Rows of the span.</param>
/// <param name="Newest">When the newest of them entered the record; never when there are none.</param>
internal sealed record RecordHead(string Circuit, long Seq, int Rows, Instant Newest);
