namespace PlantWatch.Server.Ingest.Devices;

/// <summary>The accounts as the file says now: a change holds within two seconds, for what stands connected too. A file that became bad changes nothing, and the log says so.</summary>
internal sealed class DeviceAccounts
{
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(2);
    private readonly string _path;
    private readonly TimeProvider _time;
    private readonly ILogger _logger;
    private readonly Lock _gate = new();
    private IReadOnlyDictionary<string, DeviceAccount> _known;
    private DateTime _written;
    private long _lookedAt;

    /// <exception cref="DevicesFileException">The file cannot be used.</exception>
    public DeviceAccounts(string path, TimeProvider time, ILogger logger)
    {
        (_path, _time, _logger) = (path, time, logger);
        (_written, _lookedAt) = (File.GetLastWriteTimeUtc(path), time.GetTimestamp());
        _known = DevicesFile.Read(path);
        IngestLog.DevicesRead(logger, path, _known.Count);
    }

    /// <summary>How many there are.</summary>
    public int Count => Known().Count;

    /// <summary>The account; null for none of this name.</summary>
    public DeviceAccount? Find(string name) => Known().GetValueOrDefault(name);

    /// <summary>True for a client id that belongs to some account.</summary>
    public bool Own(string clientId) => Known().ContainsKey(clientId.Split('.')[0]);

    private IReadOnlyDictionary<string, DeviceAccount> Known()
    {
        lock (_gate)
        {
            if (_time.GetElapsedTime(_lookedAt) < Look) return _known;
            _lookedAt = _time.GetTimestamp();
            Renew(File.GetLastWriteTimeUtc(_path));
            return _known;
        }
    }

    private void Renew(DateTime written)
    {
        if (written == _written) return;
        _written = written;
        try
        {
            _known = DevicesFile.Read(_path);
            IngestLog.DevicesRead(_logger, _path, _known.Count);
        }
        catch (DevicesFileException e)
        {
            IngestLog.DevicesUnusable(_logger, e.Message);
        }
    }
}
