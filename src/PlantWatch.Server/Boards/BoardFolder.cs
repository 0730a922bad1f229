using System.Security.Cryptography;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Boards;

/// <summary>The boards of a folder as they lie there at one moment.</summary>
internal sealed class BoardFolder
{
    /// <summary>More than so many are a folder named by mistake; what lies beyond is told and not read.</summary>
    public const int Most = 100;

    private BoardFolder(IReadOnlyList<BoardSource> files, int beyond = 0, string? trouble = null) => (Files, Beyond, Trouble) = (files, beyond, trouble);

    /// <summary>In the order of their names.</summary>
    public IReadOnlyList<BoardSource> Files { get; }

    /// <summary>Files beyond <see cref="Most"/>, which were not read.</summary>
    public int Beyond { get; }

    /// <summary>Why the folder could not be read, so that nothing is known of its boards; null when it could.</summary>
    public string? Trouble { get; }

    /// <summary>No folder at all.</summary>
    public static BoardFolder None { get; } = new([]);

    /// <summary>A folder that is there and cannot be read.</summary>
    public static BoardFolder Unreadable(string why) => new([], 0, why);

    /// <summary>Takes the bytes of every board; a folder that is not there holds none, and a folder or a file that cannot be read is told with its reason.</summary>
    public static BoardFolder Read(string? folder)
    {
        try
        {
            if (folder is null || !Directory.Exists(folder)) return None;
            string[] paths = [.. Directory.EnumerateFiles(folder, "*" + BoardFile.Ending).Order(StringComparer.Ordinal)];
            return new([.. paths.Take(Most).Select(BoardSource.Read)], Math.Max(0, paths.Length - Most));
        }
        catch (DirectoryNotFoundException)
        {
            // Gone between two looks.
            return None;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException or System.Security.SecurityException)
        {
            return Unreadable(Text.Plain(error.Message));
        }
    }

    /// <summary>True when another look found the very same.</summary>
    public bool IsSame(BoardFolder other) =>
        (Trouble, Beyond, Files.Count) == (other.Trouble, other.Beyond, other.Files.Count) && Files.Zip(other.Files).All(pair => pair.First.IsSame(pair.Second));
}

/// <summary>One file of a board: its bytes, or why there are none.</summary>
/// <param name="File">Name of the file, without its folder.</param>
/// <param name="Bytes">What it says.</param>
/// <param name="Trouble">Why it could not be read; null when it could.</param>
/// <param name="Hash">SHA-256 of the bytes.</param>
internal sealed record BoardSource(string File, byte[] Bytes, string? Trouble, string Hash)
{
    /// <summary>What the board is called by in addresses: the name of its file without the ending.</summary>
    public string Id => File.EndsWith(BoardFile.Ending, StringComparison.Ordinal) ? File[..^BoardFile.Ending.Length] : File;

    public static BoardSource Read(string path)
    {
        var file = Path.GetFileName(path);
        try
        {
            var bytes = PlantFileSource.Bytes(path);
            return new(file, bytes, null, Convert.ToHexStringLower(SHA256.HashData(bytes)));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new(file, [], $"the file cannot be read: {Text.Plain(error.Message)}", "");
        }
    }

    public bool IsSame(BoardSource other) => (File, Hash, Trouble) == (other.File, other.Hash, other.Trouble);

    /// <summary>The board, or everything that is wrong, each with the name of the file.</summary>
    public (Board? Board, IReadOnlyList<PlantFileError> Errors) Understand()
    {
        var (board, errors) = Trouble is not null ? (null, [new PlantFileError(1, "", Trouble)]) : !IsId(Id) ? (null, [BadName()]) : BoardFile.Read(Bytes);
        return (board, [.. errors.Select(e => e with { File = File })]);
    }

    private PlantFileError BadName() => new(1, "", $"the name of the file is no address: expected up to 64 of a-z, 0-9, - and _ before {BoardFile.Ending}, found '{Text.Short(Id)}'");

    private static bool IsId(string id) =>
        id.Length is > 0 and <= 64 && id[0] is not ('-' or '_') && id.All(c => c is (>= 'a' and <= 'z') or (>= '0' and <= '9') or '-' or '_');
}
