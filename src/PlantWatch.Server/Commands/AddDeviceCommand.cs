using PlantWatch.Server.Ingest.Devices;

namespace PlantWatch.Server.Commands;

/// <summary>Adds a device to the file with the accounts of the embedded broker, and shows its password once.</summary>
internal static class AddDeviceCommand
{
    /// <summary>Returns 0 when it is added and 1 when not; then the file is as it was.</summary>
    public static int Run(string name, IReadOnlyList<string> topics, string path, TextWriter output, TextWriter complaints)
    {
        if (Objection(name, topics, path) is { } objection)
        {
            complaints.WriteLine(objection);
            return 1;
        }
        var clear = DevicePassword.NewClear();
        try
        {
            Append(path, name, DevicePassword.Of(clear), topics);
        }
        catch (Exception e) when (e is DevicesFileException or IOException or UnauthorizedAccessException)
        {
            complaints.WriteLine(e.Message);
            return 1;
        }
        output.WriteLine($"user name and client id: {name}");
        output.WriteLine($"password, shown this once: {clear}");
        output.WriteLine($"may publish and subscribe at: {string.Join(", ", topics)}");
        return 0;
    }

    private static string? Objection(string name, IReadOnlyList<string> topics, string path)
    {
        if (!DeviceAccount.IsName(name)) return $"{name}: a name is of letters, digits, _ and -, at most {DeviceAccount.LongestName}";
        if (topics.FirstOrDefault(t => !DeviceAccount.IsFilter(t)) is { } bad) return $"{bad}: no topic filter";
        try
        {
            return File.Exists(path) && DevicesFile.Read(path).ContainsKey(name) ? $"{path}: device {name} is there already; take its lines out first" : null;
        }
        catch (DevicesFileException e)
        {
            return e.Message;
        }
    }

    // Comments of people stay. It is written beside and put in place as a whole; nobody else on the machine reads it.
    private static void Append(string path, string name, DevicePassword password, IReadOnlyList<string> topics)
    {
        var before = File.Exists(path) ? File.ReadAllText(path).TrimEnd() : "";
        if (before.Length == 0) before = "# Devices that may connect to the embedded broker of PlantWatch. Made by: PlantWatch.Server add-device NAME --topics FILTER\ndevices:";
        var listed = string.Join(", ", topics.Select(t => $"\"{t.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\""));
        var draft = path + ".new";
        try
        {
            using (var file = new StreamWriter(draft, Ours())) file.Write($"{before}\n  - name: {name}\n    password: {password}\n    topics: [{listed}]\n");
            if (!DevicesFile.Read(draft).ContainsKey(name)) throw new DevicesFileException($"{path}: what follows the devices keeps {name} from being added");
            File.Move(draft, path, overwrite: true);
        }
        finally
        {
            File.Delete(draft);
        }
    }

    private static FileStreamOptions Ours()
    {
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return options;
    }
}
