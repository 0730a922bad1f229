using System.Text.Json.Nodes;
using PlantWatch.Server.PlantFile.Editing;

namespace PlantWatch.Server.Api;

// ---- GET  /api/v1/plant-file               PlantFileView, its digest as ETag too
//      GET  /api/v1/plant-file/schema        the JSON Schema of a plant file
//      POST /api/v1/plant-file/check         CheckPlantFile -> PlantFileCheck; changes nothing
//      PUT  /api/v1/plant-file  If-Match     SavePlantFile  -> PlantFileView; 412 when it was changed meanwhile, 400 with the problems, 409 when it cannot be written

/// <summary>The plant file as it lies there.</summary>
/// <param name="Name">Its name, without its folder.</param>
/// <param name="Exists">False where there is none yet.</param>
/// <param name="InForce">It is the one that the plant goes by.</param>
/// <param name="Writable">It can be saved from the page.</param>
/// <param name="Fault">Why it cannot be edited here at all; null when it can.</param>
/// <param name="Text">Its text.</param>
/// <param name="Digest">What a change has to name, so that nobody writes over what he has not seen.</param>
/// <param name="Tree">The same content as JSON; null where the text is no YAML.</param>
/// <param name="Problems">What is wrong with it.</param>
public sealed record PlantFileView(
    string Name, bool Exists, bool InForce, bool Writable, FieldSaid? Fault, string Text, string Digest, JsonNode? Tree, IReadOnlyList<PlantFileProblem> Problems);

/// <summary>What is wrong with a line.</summary>
/// <param name="Line">From 1.</param>
/// <param name="Key">Path of the key; empty for the file as a whole.</param>
/// <param name="Text">What was expected and what was found.</param>
/// <param name="File">The file beside the plant file that is meant; null for itself.</param>
public sealed record PlantFileProblem(int Line, string Key, string Text, string? File);

/// <summary>A change by key: set, add or remove.</summary>
public sealed record PlantFileEdit(string? Do, string? Path, JsonNode? Value);

/// <summary>A version that is thought of.</summary>
/// <param name="Text">The text it starts from; the file as it lies there when left out.</param>
/// <param name="Edits">Changes to that text.</param>
public sealed record CheckPlantFile(string? Text, IReadOnlyList<PlantFileEdit>? Edits);

/// <summary>What a version would be.</summary>
/// <param name="Text">The text after the changes; as it was where one was refused.</param>
/// <param name="Tree">The same as JSON; null where it is no YAML.</param>
/// <param name="Problems">What is wrong with it.</param>
/// <param name="Diff">How it differs from the file as it lies there.</param>
/// <param name="Effects">What happens once it is taken; empty while it has problems.</param>
/// <param name="Refused">Which change cannot be done in the text without harm, and why; null when all were done.</param>
public sealed record PlantFileCheck(
    string Text, JsonNode? Tree, IReadOnlyList<PlantFileProblem> Problems, IReadOnlyList<DiffLine> Diff, IReadOnlyList<Said> Effects, FieldSaid? Refused);

/// <summary>A version to be saved.</summary>
/// <param name="Text">All of it.</param>
/// <param name="By">Who.</param>
/// <param name="Why">Why; may be left out.</param>
public sealed record SavePlantFile(string? Text, string? By, string? Why);
