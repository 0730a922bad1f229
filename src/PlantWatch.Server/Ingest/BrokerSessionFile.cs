using System.Text.Json;

namespace PlantWatch.Server.Ingest;

/// <summary>Keeps <see cref="BrokerSession"/> in a file. A change is there as a whole or not at all.</summary>
internal sealed class BrokerSessionFile(string folder, ILogger logger)
{
    private readonly string _path = Path.Combine(folder, "broker-session.json");

    /// <summary>What was kept; null for nothing, or nothing usable.</summary>
    public BrokerSession? Load()
    {
        try
        {
            return File.Exists(_path) ? JsonSerializer.Deserialize<BrokerSession>(File.ReadAllBytes(_path), JsonSerializerOptions.Web) : null;
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException)
        {
            IngestLog.SessionFileUnusable(logger, _path, e.Message);
            return null;
        }
    }

    /// <summary>Keeps it, on disk when this returns. Throws what the file system throws.</summary>
    public void Save(BrokerSession session)
    {
        Directory.CreateDirectory(folder);
        var draft = _path + ".new";
        using (var file = new FileStream(draft, FileMode.Create, FileAccess.Write))
        {
            JsonSerializer.Serialize(file, session, JsonSerializerOptions.Web);
            file.Flush(flushToDisk: true);
        }
        File.Move(draft, _path, overwrite: true);
    }
}
