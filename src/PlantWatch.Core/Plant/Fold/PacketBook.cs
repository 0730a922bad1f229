using System.Collections.Immutable;
using System.Runtime.InteropServices;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The packet memory while a batch is folded. What is forgotten, and when, follows from the packets alone and not from where a batch ends.</summary>
internal sealed class PacketBook(PacketMemory before)
{
    // A packet identifier comes round again after 65535 packets; half of that is as far back as it means one packet only.
    private const long HalfTheIdentifiers = 32768;

    private ImmutableArray<string> _sessions = before.Sessions;
    private SessionPlaces _places = SessionPlaces.Of(before.Sessions);
    private GrowingTrail _recent = before.Recent.Grow();
    private long[]? _ordinals;
    private bool _mine;

    /// <summary>True when this packet's content was taken before; otherwise remembers it.</summary>
    public bool WasTaken(PacketIdentity packet, ulong contentHash)
    {
        var session = _places.Find(packet.Session);
        if (packet.Redelivered && session >= 0 && Remembers(session, packet, contentHash)) return true;
        if (!_mine) (_ordinals, _mine) = (_ordinals is null ? [.. before.Ordinals] : [.. _ordinals], true);
        if (session < 0) session = Welcome(packet.Session);
        _ordinals![session] = Math.Max(_ordinals[session], packet.Ordinal);
        _recent.Add(new RememberedPacket(session, packet.PacketId, packet.Ordinal, contentHash));
        // The oldest goes, but of a session that holds more than its share: what a device was not told is taken stays known however
        // long it is away and however much the others say meanwhile. If all together hold too many, one of them holds more than its share.
        if (_recent.Length > PacketMemory.Capacity) _recent.ForgetOldestBeyond(PacketMemory.Capacity / _sessions.Length);
        return false;
    }

    /// <summary>What is remembered now; taking may go on.</summary>
    public PacketMemory Seal()
    {
        if (_ordinals is null) return before;
        // What was handed out is never written again.
        _mine = false;
        return new PacketMemory { Sessions = _sessions, Ordinals = ImmutableCollectionsMarshal.AsImmutableArray(_ordinals), Recent = _recent.Seal() };
    }

    private bool Remembers(int session, PacketIdentity packet, ulong contentHash)
    {
        foreach (var known in _recent.NewestFirst())
            if (known.Session == session && known.PacketId == packet.PacketId && known.ContentHash == contentHash
                && packet.Ordinal - known.Ordinal < HalfTheIdentifiers)
                return true;

        return false;
    }

    private int Welcome(string name)
    {
        // Devices that connect under an ever new name would fill the memory: the one that was silent longest goes.
        if (_sessions.Length == PacketMemory.MostSessions) Forget(LongestSilent());
        _sessions = _sessions.Add(name);
        _places = SessionPlaces.Of(_sessions);
        _ordinals = [.. _ordinals!, 0];
        return _sessions.Length - 1;
    }

    private int LongestSilent()
    {
        var (heard, last) = (new HashSet<int>(), 0);
        foreach (var packet in _recent.NewestFirst())
            if (heard.Add(packet.Session)) last = packet.Session;
        return last;
    }

    private void Forget(int session)
    {
        var others = _recent.NewestFirst().Where(p => p.Session != session).Reverse().Select(p => p.Session > session ? p with { Session = p.Session - 1 } : p);
        _recent = PacketTrail.Of(others).Grow();
        _sessions = _sessions.RemoveAt(session);
        _ordinals = [.. _ordinals!.Where((_, i) => i != session)];
    }
}
