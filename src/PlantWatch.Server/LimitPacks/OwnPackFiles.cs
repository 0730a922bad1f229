using System.Security.Cryptography;
using System.Text;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.LimitPacks;

/// <summary>The plant's own limit packs as they lie beside its plant file at one moment: a file each, of the same form as those that come with the server.</summary>
internal sealed class OwnPackFiles
{
    /// <summary>A plant goes by one authority; more files than this are a folder named by mistake.</summary>
    private const int Most = 50;

    private const string Ending = ".pack.yaml";

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private readonly IReadOnlyList<(string Name, byte[] Bytes)> _files;

    private OwnPackFiles(IReadOnlyList<(string, byte[])> files) => _files = files;

    /// <summary>Takes the bytes of every pack in a folder; a folder that is not there holds none.</summary>
    /// <exception cref="IOException">A file cannot be read.</exception>
    public static OwnPackFiles Read(string folder) => new(
        !Directory.Exists(folder) ? [] : [.. Paths(folder).Take(Most + 1).Select(path => (Path.GetFileName(path), PlantFileSource.Bytes(path)))]);

    /// <summary>The files of a folder in the order of their names.</summary>
    public static IEnumerable<string> Paths(string folder) => Directory.EnumerateFiles(folder, "*" + Ending).Order(StringComparer.Ordinal);

    /// <summary>Adds what the files say to a hash; nothing where there are none.</summary>
    public void AddTo(IncrementalHash hash)
    {
        foreach (var (name, bytes) in _files)
        {
            hash.AppendData(Encoding.UTF8.GetBytes($"\0{name}\0{bytes.Length}\0"));
            hash.AppendData(bytes);
        }
    }

    /// <summary>The packs that are good, and everything that is wrong with the others, each error with the name of its file.</summary>
    public (IReadOnlyList<LimitPack> Packs, IReadOnlyList<PlantFileError> Errors) Understand()
    {
        if (_files.Count > Most) return ([], [new(1, "", $"more than {Most} limit packs lie here; a plant picks one") { File = "packs" }]);
        var (packs, errors) = (new List<LimitPack>(), new List<PlantFileError>());
        foreach (var (name, bytes) in _files)
        {
            var pack = Text(bytes) is { } text ? PackFile.Read(text, out var wrong) : PackFile.Unreadable(out wrong);
            if (pack is not null && Objection(pack, name, packs) is { } no) wrong = [no];
            else if (pack is not null) packs.Add(pack);
            errors.AddRange(wrong.Select(e => e with { File = $"packs/{name}" }));
        }

        return (packs, errors);
    }

    // A pack that bore the id of another would be taken for it: confirmed by the words of one document, watched by the figures of the other.
    private static PlantFileError? Objection(LimitPack pack, string name, List<LimitPack> known)
    {
        if (PackShelf.Shipped.Find(pack.Id) is not null) return new(1, "id", $"'{pack.Id}' is the id of a limit pack that comes with the server; give this one an id of its own");
        if (known.Any(p => p.Id == pack.Id)) return new(1, "id", $"the id '{pack.Id}' stands in another file here already");
        return pack.Id + Ending == name ? null : new(1, "id", $"expected the name of the file, '{name[..^Ending.Length]}', found '{pack.Id}'");
    }

    private static string? Text(byte[] bytes)
    {
        var text = bytes.AsSpan();
        if (text.StartsWith(Encoding.UTF8.Preamble)) text = text[Encoding.UTF8.Preamble.Length..];
        try
        {
            return bytes.Length > PlantFileReader.LargestBytes ? null : Strict.GetString(text);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }
}
