using System.Text;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Boards;

/// <summary>Reads one board: YAML, then the schema, then what a schema cannot say. Tells everything that is wrong at once, and never throws.</summary>
internal static class BoardFile
{
    /// <summary>How the name of every board ends; what stands before it is its id.</summary>
    public const string Ending = ".board.yaml";

    /// <summary>A board of a hundred tiles fits many times over.</summary>
    public const int LargestBytes = 128 * 1024;

    private static readonly SchemaCheck Schema = new(SchemaCheck.EmbeddedText("board.schema.json"));
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The board, or null and what is wrong.</summary>
    public static (Board? Board, IReadOnlyList<PlantFileError> Errors) Read(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length > LargestBytes) return Broken(1, "the file is larger than 128 KiB; expected the description of one screen");
        if (bytes.StartsWith(Encoding.UTF8.Preamble)) bytes = bytes[Encoding.UTF8.Preamble.Length..];
        try
        {
            return Read(Strict.GetString(bytes));
        }
        catch (DecoderFallbackException error)
        {
            return Broken(1 + bytes[..Math.Max(0, error.Index)].Count((byte)'\n'), "expected text in UTF-8, found bytes that are none; save the file as UTF-8");
        }
    }

    /// <summary>The same from text.</summary>
    public static (Board? Board, IReadOnlyList<PlantFileError> Errors) Read(string yaml)
    {
        var complaints = new Complaints();
        if (YamlTree.Read(yaml, complaints) is not { } root) return (null, complaints.InOrder());
        Schema.Check(root, complaints);
        BoardSense.Check(Place.Root(root), complaints);
        return complaints.Any ? (null, complaints.InOrder()) : (BoardBuilder.Build(Place.Root(root)), []);
    }

    private static (Board?, IReadOnlyList<PlantFileError>) Broken(int line, string message) => (null, [new(line, "", message)]);
}
