namespace PlantWatch.Core.Plant;

/// <summary>The array behind packet trails. What is written once is never written again; only places that no trail reaches are filled.</summary>
internal sealed class PacketShelf(int places)
{
    private const int Claimed = -1;
    private int _taken;

    public Entry[] Places { get; } = new Entry[places];

    /// <summary>Asks for the places from here on; false when another has them.</summary>
    public bool Claim(int from) => from < Places.Length && Interlocked.CompareExchange(ref _taken, Claimed, from) == from;

    /// <summary>Gives the places from here on back.</summary>
    public void Release(int from) => Volatile.Write(ref _taken, from);

    /// <summary>True while a packet is among the newest of its session that are held.</summary>
    public bool Holds(int place, int[] said, int[] held)
    {
        ref readonly var entry = ref Places[place];
        // The difference stays right when the counts run over, after two thousand million packets.
        return unchecked(said[entry.Packet.Session] - entry.Nth) < held[entry.Packet.Session];
    }

    /// <summary>A packet and its number in its session, from 1.</summary>
    public readonly record struct Entry(RememberedPacket Packet, int Nth);
}
