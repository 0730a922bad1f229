namespace PlantWatch.Server.Ingest.Devices;

/// <summary>The file with the accounts cannot be used; the message says where and why.</summary>
internal sealed class DevicesFileException(string message) : Exception(message);

/// <summary>Reads the file with the accounts of devices. It is good as a whole or not at all.</summary>
/// <remarks><code>
/// devices:
///   - name: hall-panel
///     password: pbkdf2-sha512:...
///     topics: ["hall/#"]
/// </code></remarks>
internal static class DevicesFile
{
    /// <summary>Most bytes that are read.</summary>
    private const int Most = 1024 * 1024;

    /// <summary>The accounts by name.</summary>
    /// <exception cref="DevicesFileException">It cannot be read, or something in it is wrong.</exception>
    public static IReadOnlyDictionary<string, DeviceAccount> Read(string path)
    {
        try
        {
            if (new FileInfo(path).Length > Most) throw new DevicesFileException($"{path}: larger than {Most} bytes");
            return Parse(path, File.ReadAllText(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DevicesFileException($"{path}: {e.Message}");
        }
    }

    private static Dictionary<string, DeviceAccount> Parse(string path, string text)
    {
        var accounts = new Dictionary<string, DeviceAccount>(StringComparer.Ordinal);
        try
        {
            foreach (var entry in new YamlDotNet.Serialization.DeserializerBuilder().WithNamingConvention(YamlDotNet.Serialization.NamingConventions.CamelCaseNamingConvention.Instance).Build().Deserialize<Written>(text)?.Devices ?? [])
            {
                var account = Account(path, entry);
                if (!accounts.TryAdd(account.Name, account)) throw new DevicesFileException($"{path}: device {account.Name} stands there twice");
            }
        }
        catch (YamlDotNet.Core.YamlException e)
        {
            throw new DevicesFileException($"{path}: line {e.Start.Line}: {e.InnerException?.Message ?? e.Message}");
        }
        return accounts;
    }

    private static DeviceAccount Account(string path, WrittenDevice? entry)
    {
        var name = entry?.Name ?? "";
        if (!DeviceAccount.IsName(name)) throw new DevicesFileException($"{path}: a device needs a name of letters, digits, _ and -, at most {DeviceAccount.LongestName}");
        // What stands there in place of a hash may be a password: it is not repeated.
        if (DevicePassword.Read(entry!.Password ?? "") is not { } password) throw new DevicesFileException($"{path}: the password of {name} is none that add-device made");
        if (entry.Topics is not { Count: > 0 } topics) throw new DevicesFileException($"{path}: device {name} has no topics");
        return topics.FirstOrDefault(t => !DeviceAccount.IsFilter(t ?? "")) is { } bad
            ? throw new DevicesFileException($"{path}: {bad} of device {name} is no topic filter") : new(name, password, topics);
    }

    private sealed class Written
    {
        public List<WrittenDevice?>? Devices { get; set; }
    }

    private sealed class WrittenDevice
    {
        public string? Name { get; set; }

        public string? Password { get; set; }

        public List<string>? Topics { get; set; }
    }
}
