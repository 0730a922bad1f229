using PlantWatch.Campaign;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Campaign;

/// <summary>A test on a disk that can be filled: skipped, and saying so, where no memory file system may be mounted.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class SmallDiskFactAttribute : FactAttribute
{
    private static readonly bool MayMount = TryMount();

    public SmallDiskFactAttribute()
    {
        if (Peer.Find("mosquitto_pub") is null || Peer.Find("stdbuf") is null) Skip = "not installed: mosquitto_pub, stdbuf";
        else if (!MayMount) Skip = "a small disk (tmpfs) cannot be mounted here: that needs root";
    }

    private static bool TryMount()
    {
        using var disk = SmallDisk.Mount(1);
        return disk is not null;
    }
}
