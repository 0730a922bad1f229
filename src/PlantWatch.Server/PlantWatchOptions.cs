namespace PlantWatch.Server;

/// <summary>How this server is set up. Section "PlantWatch" of the configuration; everything has a default that works on one machine.</summary>
public sealed class PlantWatchOptions
{
    /// <summary>Path of the plant file.</summary>
    public string PlantFile { get; set; } = "plant.yaml";

    /// <summary>Folder of the plant's own boards; left out, the folder <c>boards</c> beside the plant file.</summary>
    public string? Boards { get; set; }

    /// <summary>Folder of the record and the logs.</summary>
    public string Data { get; set; } = "data";

    /// <summary>Addresses under which a reverse proxy shows the page, such as https://pools.example, where it does not hand on the Host it was asked for.</summary>
    public IList<string> Origins { get; set; } = [];

    /// <summary>Secrets of the ways by which people are told.</summary>
    public Telling.TellingOptions Telling { get; set; } = new();

    /// <summary>Where series go beside the record, if anywhere.</summary>
    public Series.InfluxOptions Influx { get; set; } = new();

    /// <summary>Where readings come from.</summary>
    public BrokerOptions Broker { get; set; } = new();

    /// <summary>How long single readings are kept; without it, for ever.</summary>
    public RetentionOptions Retention { get; set; } = new();

    /// <summary>The backup of each night.</summary>
    public BackupOptions Backup { get; set; } = new();
}

/// <summary>How long readings are kept. Left out, for ever. Quarters of an hour, hours and days, entries, refusals and the journal always stay.</summary>
public sealed class RetentionOptions
{
    /// <summary>Days for which single readings are kept, at least 35; afterwards minutes answer for them.</summary>
    public int? RawDays { get; set; }

    /// <summary>Days for which minutes are kept, at least 400 and at least as long as single readings; afterwards quarters of an hour answer for them.</summary>
    public int? MinuteDays { get; set; }
}

/// <summary>A backup each night while the server runs.</summary>
public sealed class BackupOptions
{
    /// <summary>Where backups go, best on another disk; left out, none is made.</summary>
    public string? Folder { get; set; }

    /// <summary>How many are kept, at least one; the oldest goes once a newer one is whole.</summary>
    public int Keep { get; set; } = 14;

    /// <summary>Hour of the site's clock, 0 to 23.</summary>
    public int Hour { get; set; } = 3;
}

/// <summary>The MQTT side.</summary>
public sealed class BrokerOptions
{
    /// <summary>Embedded: this process is the broker. External: it connects to one.</summary>
    public BrokerMode Mode { get; set; } = BrokerMode.Embedded;

    /// <summary>Host of an external broker.</summary>
    public string Host { get; set; } = "127.0.0.1";

    /// <summary>Port; 0 lets the embedded broker choose one (tests).</summary>
    public int Port { get; set; } = 1883;

    /// <summary>Address at which the embedded broker listens with TLS; beyond this machine only with accounts. Without TLS it listens on this machine alone.</summary>
    public string Listen { get; set; } = "127.0.0.1";

    /// <summary>Port of the embedded broker with TLS; 0 lets it choose one (tests).</summary>
    public int TlsPort { get; set; } = 8883;

    /// <summary>File with the accounts of devices at the embedded broker, made by the command add-device.</summary>
    public string? Devices { get; set; }

    /// <summary>Client id of the persistent session at an external broker; it must stay the same for ever.</summary>
    public string ClientId { get; set; } = "plantwatch";

    /// <summary>User name at an external broker.</summary>
    public string? UserName { get; set; }

    /// <summary>Password at an external broker.</summary>
    public string? Password { get; set; }

    /// <summary>Encryption on the way to an external broker, or of the embedded one.</summary>
    public BrokerTlsOptions Tls { get; set; } = new();

    /// <summary>Packets an external broker may have on the way to us unacknowledged, 1 to 2048: redelivered ones must be known again.</summary>
    public int ReceiveMaximum { get; set; } = 2000;

    /// <summary>Extra topic filters to subscribe at an external broker beside the plant file's topics, so that strays are seen and kept.</summary>
    public IList<string> AlsoSubscribe { get; set; } = [];
}

/// <summary>TLS, version 1.2 or 1.3. Chain, time and name of a certificate are always checked; there is no setting that leaves it out.</summary>
public sealed class BrokerTlsOptions
{
    /// <summary>Use TLS. Without it the other settings here mean nothing.</summary>
    public bool On { get; set; }

    /// <summary>PEM file with the authorities that are trusted, and no others then; left out, those of the machine.</summary>
    public string? CaFile { get; set; }

    /// <summary>PEM file with our own certificate: for a broker that asks for one, or that of the embedded broker with what stands between it and its authority.</summary>
    public string? CertificateFile { get; set; }

    /// <summary>PEM file with the key of our certificate, without a password.</summary>
    public string? KeyFile { get; set; }

    /// <summary>The name that the broker's certificate must carry; left out, the host that is connected to.</summary>
    public string? ServerName { get; set; }
}

/// <summary>Kinds of broker set-up.</summary>
public enum BrokerMode
{
    /// <summary>This process is the broker.</summary>
    Embedded = 0,
    /// <summary>Another broker, MQTT 5.</summary>
    External,
}
