namespace PlantWatch.Core.Plant;

/// <summary>A packet trail while a batch is folded. The trail it began with stays as it was.</summary>
public sealed class GrowingTrail
{
    private PacketShelf shelf;
    private int start;
    private int end;
    private int[] said;
    private int[] held;
    private bool mine;

    internal GrowingTrail(PacketShelf shelf, int start, int end, int length, int[] said, int[] held) =>
        (this.shelf, this.start, this.end, Length, this.said, this.held) = (shelf, start, end, length, said, held);

    /// <summary>Packets in it.</summary>
    public int Length { get; private set; }

    /// <summary>The packets, newest first.</summary>
    public IReadOnlyList<RememberedPacket> NewestFirst()
    {
        var packets = new List<RememberedPacket>(Length);
        for (var i = end - 1; i >= start; i--)
            if (shelf.Holds(i, said, held)) packets.Add(shelf.Places[i].Packet);
        return packets;
    }

    /// <summary>Adds a packet.</summary>
    public void Add(in RememberedPacket packet)
    {
        Own();
        if (packet.Session >= said.Length) MakeRoomFor(packet.Session);
        if (end == shelf.Places.Length) Move();
        shelf.Places[end++] = new PacketShelf.Entry(packet, ++said[packet.Session]);
        held[packet.Session]++;
        Length++;
    }

    /// <summary>Forgets the oldest packet of a session that holds more than so many. There must be one.</summary>
    public void ForgetOldestBeyond(int share)
    {
        Own();
        var place = start;
        while (held[shelf.Places[place].Packet.Session] <= share || !shelf.Holds(place, said, held)) place++;
        held[shelf.Places[place].Packet.Session]--;
        Length--;
        while (start < end && !shelf.Holds(start, said, held)) start++;
    }

    /// <summary>The trail as it stands; growing may go on.</summary>
    public PacketTrail Seal()
    {
        if (mine) shelf.Release(end);
        mine = false;
        return new PacketTrail(shelf, start, end, Length, said, held);
    }

    private void Own()
    {
        if (mine) return;
        (said, held, mine) = ([.. said], [.. held], true);
        if (!shelf.Claim(end)) Move();
    }

    // Twice what is held, so that the next move is as far away as this one is long.
    private void Move()
    {
        var larger = new PacketShelf(Math.Max(64, 2 * Length));
        var count = 0;
        for (var i = start; i < end; i++)
            if (shelf.Holds(i, said, held)) larger.Places[count++] = shelf.Places[i];
        larger.Claim(0);
        (shelf, start, end) = (larger, 0, count);
    }

    private void MakeRoomFor(int session)
    {
        Array.Resize(ref said, session + 1);
        Array.Resize(ref held, session + 1);
    }
}
