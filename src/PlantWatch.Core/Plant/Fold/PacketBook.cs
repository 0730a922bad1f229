using System.Runtime.InteropServices;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The packet memory while a batch is folded. What is forgotten, and when, follows from the packets alone and not from where a batch ends.</summary>
internal sealed class PacketBook(PacketMemory before)
{
    // A packet identifier comes round again after 65535 packets; half of that is as far back as it means one packet only.
    private const long HalfTheIdentifiers = 32768;

    private readonly List<string> sessions = [.. before.Sessions];
    private readonly List<long> ordinals = [.. before.Ordinals];
    private readonly List<int> held = [];
    private List<RememberedPacket>? recent;
    private int oldest;

    /// <summary>True when this packet's content was taken before; otherwise remembers it.</summary>
    public bool WasTaken(PacketIdentity packet, ulong contentHash)
    {
        var session = sessions.IndexOf(packet.Session);
        if (packet.Redelivered && session >= 0 && Remembers(session, packet, contentHash)) return true;
        Open();
        if (session < 0) session = Welcome(packet.Session);
        ordinals[session] = Math.Max(ordinals[session], packet.Ordinal);
        held[session]++;
        recent!.Add(new RememberedPacket(session, packet.PacketId, packet.Ordinal, contentHash));
        if (recent.Count - oldest > PacketMemory.Capacity) ForgetOne();
        return false;
    }

    public PacketMemory Seal() => recent is null
        ? before
        : new PacketMemory { Sessions = [.. sessions], Ordinals = [.. ordinals], Recent = [.. CollectionsMarshal.AsSpan(recent)[oldest..]] };

    private bool Remembers(int session, PacketIdentity packet, ulong contentHash)
    {
        var packets = recent is null ? before.Recent.AsSpan() : CollectionsMarshal.AsSpan(recent)[oldest..];
        for (var i = packets.Length - 1; i >= 0; i--)
        {
            ref readonly var known = ref packets[i];
            if (known.Session == session && known.PacketId == packet.PacketId && known.ContentHash == contentHash
                && packet.Ordinal - known.Ordinal < HalfTheIdentifiers)
                return true;
        }

        return false;
    }

    private void Open()
    {
        if (recent is not null) return;
        recent = [.. before.Recent];
        CollectionsMarshal.SetCount(held, sessions.Count);
        CollectionsMarshal.AsSpan(held).Clear();
        foreach (var packet in recent) held[packet.Session]++;
    }

    // The oldest goes, but of a session that holds more than its share: what a device was not told is taken stays known however
    // long it is away and however much the others say meanwhile. If all together hold too many, one of them holds more than its share.
    private void ForgetOne()
    {
        var share = PacketMemory.Capacity / sessions.Count;
        var i = oldest;
        while (held[recent![i].Session] <= share) i++;
        held[recent[i].Session]--;
        if (i == oldest) oldest++;
        else recent.RemoveAt(i);
    }

    private int Welcome(string name)
    {
        // Devices that connect under an ever new name would fill the memory: the one that was silent longest goes.
        if (sessions.Count == PacketMemory.MostSessions) Forget(LongestSilent());
        sessions.Add(name);
        ordinals.Add(0);
        held.Add(0);
        return sessions.Count - 1;
    }

    private int LongestSilent()
    {
        var newest = new int[sessions.Count];
        for (var i = oldest; i < recent!.Count; i++) newest[recent[i].Session] = i;
        return Array.IndexOf(newest, newest.Min());
    }

    private void Forget(int session)
    {
        recent!.RemoveRange(0, oldest);
        oldest = 0;
        recent.RemoveAll(p => p.Session == session);
        foreach (ref var packet in CollectionsMarshal.AsSpan(recent))
            if (packet.Session > session) packet = packet with { Session = packet.Session - 1 };
        sessions.RemoveAt(session);
        ordinals.RemoveAt(session);
        held.RemoveAt(session);
    }
}
