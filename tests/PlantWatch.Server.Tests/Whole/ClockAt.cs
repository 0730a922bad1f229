namespace PlantWatch.Server.Tests.Whole;

/// <summary>A clock that goes as the real one does and shows another time.</summary>
internal sealed class ClockAt(DateTimeOffset start) : TimeProvider
{
    private readonly long _begun = System.GetTimestamp();

    public override DateTimeOffset GetUtcNow() => start + System.GetElapsedTime(_begun);
}
