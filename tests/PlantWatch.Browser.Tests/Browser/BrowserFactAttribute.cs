using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Browser.Tests.Browser;

/// <summary>A test in a real Chromium with a real MQTT client. Where one is missing the test is skipped and says which.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = Peers.Missing;
}

/// <summary>The same with data.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserTheoryAttribute : TheoryAttribute
{
    public BrowserTheoryAttribute() => Skip = Peers.Missing;
}

internal static class Peers
{
    private static readonly string[] Needed = ["chromium", "mosquitto_pub"];

    /// <summary>What is missing, in words; null when everything is there.</summary>
    public static string? Missing { get; } =
        string.Join(", ", Needed.Where(program => Peer.Find(program) is null)) is { Length: > 0 } missing ? $"not installed: {missing}" : null;
}
