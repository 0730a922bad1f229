using PlantWatch.Core.Quantities;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Telling;

/// <summary>The whole server of a plant whose people are told, and a clock that can be set forward.</summary>
internal static class TellingPlant
{
    public const string Key = "a key that only both ends know";
    private const string People = """
        people:
          - { id: ann, name: A. Sample, role: operator, email: ann@baths.example }
          - { id: ben, name: B. Sample, role: engineer, email: ben@baths.example }
        """;

    /// <summary>The plant with channels.</summary>
    public static string With(string channels, string more = "") =>
        $"{WholeServer.Plant}\n{People}\ntelling:\n  escalation: [ann, ben]\n{more}\n  channels:\n{string.Concat(channels.Split('\n').Select(line => $"    - {line.Trim()}\n"))}";

    public static string Webhook(int port) => $$"""{ id: house, name: House, kind: webhook, url: "http://127.0.0.1:{{port}}/alarms" }""";

    public static string Post(int port) => $"{{ id: post, name: Post, kind: email, host: 127.0.0.1, port: {port}, security: plain, sender: alarms@baths.example }}";

    public const string Desk = "{ id: desk, name: Desk, kind: mqtt, topic: hall/alarms }";

    public static void Keys(PlantWatchOptions options) => options.Telling.Secrets["house"] = Key;

    /// <summary>A dosing pump reports a fault: a high alarm without any delay.</summary>
    public static Task FaultAsync(WholeServer server) => server.PublishAsync("hall/acid/state", "fault");

    public static Task MendedAsync(WholeServer server) => server.PublishAsync("hall/acid/state", "stopped");
}

/// <summary>The real clock with its hands moved forward. Timers stay real.</summary>
internal sealed class ForwardClock : TimeProvider
{
    private long _ahead;

    public void Forward(TimeSpan span) => Interlocked.Add(ref _ahead, span.Ticks);

    public override DateTimeOffset GetUtcNow() => System.GetUtcNow() + TimeSpan.FromTicks(Interlocked.Read(ref _ahead));

    public Instant Now => Instant.From(GetUtcNow());
}
