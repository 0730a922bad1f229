using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The packet memory while a batch is folded.</summary>
internal sealed class PacketBook(PacketMemory before)
{
    // A packet identifier comes round again after 65535 packets; half of that is as far back as it means one packet only.
    private const long HalfTheIdentifiers = 32768;
    private const int SessionsBeforeForgetting = 1024;

    private readonly List<string> sessions = [.. before.Sessions];
    private readonly List<long> ordinals = [.. before.Ordinals];
    private List<RememberedPacket>? recent;

    /// <summary>True when this packet's content was taken before; otherwise remembers it.</summary>
    public bool WasTaken(PacketIdentity packet, ulong contentHash)
    {
        var session = SessionOf(packet.Session);
        if (packet.Redelivered && Remembers(session, packet, contentHash)) return true;
        ordinals[session] = Math.Max(ordinals[session], packet.Ordinal);
        recent ??= [.. before.Recent];
        recent.Add(new RememberedPacket(session, packet.PacketId, packet.Ordinal, contentHash));
        return false;
    }

    public PacketMemory Seal()
    {
        if (recent is null) return before;
        Trim();
        return new PacketMemory { Sessions = [.. sessions], Ordinals = [.. ordinals], Recent = [.. recent] };
    }

    // What lies before the newest of them is forgotten at once, though the list is only shortened now and then:
    // where a batch ends must not decide what is remembered.
    private void Trim()
    {
        var surplus = recent!.Count - PacketMemory.Capacity;
        if (surplus > 0) recent.RemoveRange(0, surplus);
    }

    private bool Remembers(int session, PacketIdentity packet, ulong contentHash)
    {
        var packets = recent is null ? before.Recent.AsSpan() : System.Runtime.InteropServices.CollectionsMarshal.AsSpan(recent);
        for (var i = packets.Length - 1; i >= Math.Max(0, packets.Length - PacketMemory.Capacity); i--)
        {
            ref readonly var known = ref packets[i];
            if (known.Session == session && known.PacketId == packet.PacketId && known.ContentHash == contentHash
                && packet.Ordinal - known.Ordinal < HalfTheIdentifiers)
                return true;
        }

        return false;
    }

    private int SessionOf(string name)
    {
        var index = sessions.IndexOf(name);
        if (index >= 0) return index;
        if (sessions.Count > 0 && sessions.Count % SessionsBeforeForgetting == 0) ForgetSessions();
        sessions.Add(name);
        ordinals.Add(0);
        return sessions.Count - 1;
    }

    // Devices that connect under an ever new name would fill the memory: sessions without a remembered packet go.
    private void ForgetSessions()
    {
        recent ??= [.. before.Recent];
        Trim();
        var kept = recent.Select(p => p.Session).Distinct().Order().ToList();
        for (var i = 0; i < recent.Count; i++) recent[i] = recent[i] with { Session = kept.BinarySearch(recent[i].Session) };
        string[] names = [.. kept.Select(i => sessions[i])];
        long[] newest = [.. kept.Select(i => ordinals[i])];
        sessions.Clear();
        sessions.AddRange(names);
        ordinals.Clear();
        ordinals.AddRange(newest);
    }
}
