namespace PlantWatch.Server.Tests.Peers;

/// <summary>A test against real programs of others. Where one is missing the test is skipped and says which.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class PeerFactAttribute : FactAttribute
{
    public PeerFactAttribute(params string[] programs)
    {
        Programs = programs;
        var missing = programs.Where(program => Peer.Find(program) is null).ToList();
        if (missing.Count > 0) Skip = $"not installed: {string.Join(", ", missing)}";
    }

    public IReadOnlyList<string> Programs { get; }
}
