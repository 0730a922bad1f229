namespace PlantWatch.Core.Plant;

/// <summary>A packet trail while a batch is folded. The trail it began with stays as it was.</summary>
public sealed class GrowingTrail
{
    private PacketShelf _shelf;
    private int _start;
    private int _end;
    private int[] _said;
    private int[] _held;
    private bool _mine;

    internal GrowingTrail(PacketShelf shelf, int start, int end, int length, int[] said, int[] held) =>
        (_shelf, _start, _end, Length, _said, _held) = (shelf, start, end, length, said, held);

    /// <summary>Packets in it.</summary>
    public int Length { get; private set; }

    /// <summary>The packets, newest first.</summary>
    public IReadOnlyList<RememberedPacket> NewestFirst()
    {
        var packets = new List<RememberedPacket>(Length);
        for (var i = _end - 1; i >= _start; i--)
            if (_shelf.Holds(i, _said, _held)) packets.Add(_shelf.Places[i].Packet);
        return packets;
    }

    /// <summary>Adds a packet.</summary>
    public void Add(in RememberedPacket packet)
    {
        Own();
        if (packet.Session >= _said.Length) MakeRoomFor(packet.Session);
        if (_end == _shelf.Places.Length) Move();
        _shelf.Places[_end++] = new PacketShelf.Entry(packet, ++_said[packet.Session]);
        _held[packet.Session]++;
        Length++;
    }

    /// <summary>Forgets the oldest packet of a session that holds more than so many. There must be one.</summary>
    public void ForgetOldestBeyond(int share)
    {
        Own();
        var place = _start;
        while (_held[_shelf.Places[place].Packet.Session] <= share || !_shelf.Holds(place, _said, _held)) place++;
        _held[_shelf.Places[place].Packet.Session]--;
        Length--;
        while (_start < _end && !_shelf.Holds(_start, _said, _held)) _start++;
    }

    /// <summary>The trail as it stands; growing may go on.</summary>
    public PacketTrail Seal()
    {
        if (_mine) _shelf.Release(_end);
        _mine = false;
        return new PacketTrail(_shelf, _start, _end, Length, _said, _held);
    }

    private void Own()
    {
        if (_mine) return;
        (_said, _held, _mine) = ([.. _said], [.. _held], true);
        if (!_shelf.Claim(_end)) Move();
    }

    // Twice what is held, so that the next move is as far away as this one is long.
    private void Move()
    {
        var larger = new PacketShelf(Math.Max(64, 2 * Length));
        var count = 0;
        for (var i = _start; i < _end; i++)
            if (_shelf.Holds(i, _said, _held)) larger.Places[count++] = _shelf.Places[i];
        larger.Claim(0);
        (_shelf, _start, _end) = (larger, 0, count);
    }

    private void MakeRoomFor(int session)
    {
        Array.Resize(ref _said, session + 1);
        Array.Resize(ref _held, session + 1);
    }
}
