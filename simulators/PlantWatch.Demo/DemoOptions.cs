using System.Globalization;

namespace PlantWatch.Demo;

/// <summary>What the command line asks for.</summary>
/// <param name="Data">Folder of the record; null means a fresh one that goes when the demo ends.</param>
/// <param name="Days">Days of history.</param>
internal sealed record DemoOptions(string? Data, int Days)
{
    /// <summary>What can be asked for.</summary>
    public const string Usage = """
        PlantWatch with a simulated plant: server, broker, record, and fourteen days of history that enter by the same door as live data.
          --data DIR   keep the record there (a fresh temporary folder); where one is already, the demo goes on live without new history
          --days N     days of history, 1 to 28 (14); the demo's events are laid out for 14
        """;

    /// <summary>Reads the command line; null for what is not understood.</summary>
    public static DemoOptions? Read(IReadOnlyList<string> args)
    {
        var options = new DemoOptions(null, 14);
        for (var i = 0; i < args.Count; i += 2)
        {
            if (i + 1 == args.Count) return null;
            var next = args[i] switch
            {
                "--data" => options with { Data = Path.GetFullPath(args[i + 1]) },
                "--days" when int.TryParse(args[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var days) && days is >= 1 and <= 28 => options with { Days = days },
                _ => null,
            };
            if (next is null) return null;
            options = next;
        }
        return options;
    }
}
