namespace PlantWatch.Server.Tests.Peers;

/// <summary>A theory against real programs of others. Where one is missing it is skipped and says which.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class PeerTheoryAttribute : TheoryAttribute
{
    public PeerTheoryAttribute(params string[] programs)
    {
        Programs = programs;
        Skip = new PeerFactAttribute(programs).Skip;
    }

    public IReadOnlyList<string> Programs { get; }
}
