using System.Text.Json;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant.Journal;

/// <summary>Writes a batch of events as bytes and reads it back the same: the journal's row.</summary>
/// <remarks>
/// Messages, which are nearly all of it, take eleven bytes beside their payload in a large batch and some twenty in one of ten: topics and sessions are written once a
/// batch, times and packet ordinals as differences. Everything else is JSON under its own kind byte. Layout:
/// <code>
/// batch   = version(1) count event*
/// event   = kind(1) time-difference body          time in microseconds, the first against 0
/// message = flags(1) topic payload [session packet-id ordinal-difference]
/// topic   = index+1 | 0 text                      likewise session
/// other   = JSON
/// </code>
/// All integers are LEB128, signed ones zigzag; texts and bytes have their length in front.
/// </remarks>
public static class JournalCodec
{
    private const byte Version = 1;
    private const byte MessageKind = 1;
    private const byte TickKind = 2;

    private static readonly Type[] JsonKinds =
    [
        typeof(CheckEntered), typeof(CalibrationProposed), typeof(CalibrationDecided), typeof(AlarmAcknowledged), typeof(AlarmShelved),
        typeof(AlarmUnshelved), typeof(JobWritten), typeof(PlanLoaded), typeof(SessionLost),
        typeof(IncidentDeclared), typeof(IncidentNoted), typeof(IncidentClosed), typeof(DoseGiven),
        typeof(CalibrationReviewed), typeof(ProbeWorkBegun), typeof(ProbeWorkEnded),
        typeof(CorrectionMade), typeof(CorrectionWithdrawn),
        typeof(PackRowConfirmed), typeof(PackRowRevoked),
        typeof(LabResultEntered), typeof(LabResultClosed),
        typeof(AlarmReset), typeof(AlarmTakenOutOfService), typeof(AlarmReturnedToService),
        typeof(FilterWashed),
        typeof(PoolStateSet),
        typeof(BackwashBegun), typeof(BackwashEnded),
        typeof(PlantMadeSafe),
        typeof(ChannelStateSaid),
        typeof(ReagentOpened),
        typeof(ExceptionNoted),
        typeof(StockMoved), typeof(BathersCounted), typeof(StockOutlookSaid),
        typeof(HandoverWritten), typeof(HandoverSigned),
        typeof(NoteWritten),
        typeof(PlantRoundDone), typeof(InstrumentVerified),
    ];

    private const byte FirstJsonKind = 16;
    private static readonly long Latest = Instant.FromUtc(9000, 1, 1).UnixMicroseconds;

    [Flags]
    private enum MessageFlags : byte
    {
        None = 0,
        Retained = 1,
        Identified = 2,
        Redelivered = 4,
    }

    /// <summary>The bytes of a batch.</summary>
    public static byte[] Write(IReadOnlyList<PlantEvent> events)
    {
        ArgumentNullException.ThrowIfNull(events);
        var writer = new ByteWriter(64 + (events.Count * 24));
        var names = new NameTable();
        var ordinals = new Dictionary<string, long>(StringComparer.Ordinal);
        writer.Byte(Version);
        writer.Unsigned((ulong)events.Count);
        long time = 0;
        foreach (var happening in events)
        {
            writer.Byte(KindOf(happening));
            writer.Signed(happening.At.UnixMicroseconds - time);
            time = happening.At.UnixMicroseconds;
            if (happening is MessageArrived message) WriteMessage(writer, message, names, ordinals);
            else if (happening is not ClockTicked) writer.Bytes(JsonSerializer.SerializeToUtf8Bytes(happening, happening.GetType(), PlantJson.AnyNumber));
        }

        return writer.ToArray();
    }

    /// <summary>The events of a batch.</summary>
    /// <exception cref="InvalidDataException">The bytes are no batch, or one of a newer version.</exception>
    public static IReadOnlyList<PlantEvent> Read(ReadOnlyMemory<byte> batch)
    {
        var reader = new ByteReader(batch);
        if (reader.Byte() is var version && version != Version) throw new InvalidDataException($"journal version {version} is not known here");
        var count = reader.Count();
        var events = new List<PlantEvent>(Math.Min(count, 65536));
        var names = new NameTable();
        var ordinals = new Dictionary<string, long>(StringComparer.Ordinal);
        long time = 0;
        for (var i = 0; i < count; i++)
        {
            var kind = reader.Byte();
            time += reader.Signed();
            if (time < 0 || time > Latest) throw new InvalidDataException("a time of the journal row is no time of a plant");
            var at = Instant.FromUnixMicroseconds(time);
            events.Add(kind switch
            {
                MessageKind => ReadMessage(ref reader, at, names, ordinals),
                TickKind => new ClockTicked(at),
                _ => ReadJson(kind, reader.Bytes().Span, at),
            });
        }

        return reader.IsAtEnd ? events : throw new InvalidDataException("the journal row does not end where its count says");
    }

    private static byte KindOf(PlantEvent happening)
    {
        if (happening is MessageArrived) return MessageKind;
        if (happening is ClockTicked) return TickKind;
        var index = Array.IndexOf(JsonKinds, happening.GetType());
        return index >= 0 ? (byte)(FirstJsonKind + index) : throw new ArgumentException($"{happening.GetType().Name} has no journal kind");
    }

    private static PlantEvent ReadJson(byte kind, ReadOnlySpan<byte> json, Instant at)
    {
        var index = kind - FirstJsonKind;
        if (index < 0 || index >= JsonKinds.Length) throw new InvalidDataException($"journal kind {kind} is not known here");
        var happening = (PlantEvent)(JsonSerializer.Deserialize(json, JsonKinds[index], PlantJson.AnyNumber) ?? throw new InvalidDataException("an event cannot be null"));
        return happening.At == at ? happening : throw new InvalidDataException("an event of the journal row bears two times");
    }

    private static void WriteMessage(ByteWriter writer, MessageArrived message, NameTable names, Dictionary<string, long> ordinals)
    {
        var packet = message.Packet;
        var flags = (message.Retained ? MessageFlags.Retained : 0) | (packet is null ? 0 : MessageFlags.Identified)
            | (packet is { Redelivered: true } ? MessageFlags.Redelivered : 0);
        writer.Byte((byte)flags);
        names.Write(writer, message.Topic);
        writer.Bytes(message.Payload.Span);
        if (packet is null) return;
        names.Write(writer, packet.Session);
        writer.Unsigned((ulong)packet.PacketId);
        ordinals.TryGetValue(packet.Session, out var before);
        writer.Signed(packet.Ordinal - before);
        ordinals[packet.Session] = packet.Ordinal;
    }

    private static MessageArrived ReadMessage(ref ByteReader reader, Instant at, NameTable names, Dictionary<string, long> ordinals)
    {
        var flags = (MessageFlags)reader.Byte();
        var topic = names.Read(ref reader);
        var payload = reader.Bytes();
        PacketIdentity? packet = null;
        if (flags.HasFlag(MessageFlags.Identified))
        {
            var session = names.Read(ref reader);
            var id = reader.Count();
            ordinals.TryGetValue(session, out var before);
            var ordinal = before + reader.Signed();
            ordinals[session] = ordinal;
            packet = new PacketIdentity(session, id, ordinal, flags.HasFlag(MessageFlags.Redelivered));
        }

        return new MessageArrived(at, topic, payload, flags.HasFlag(MessageFlags.Retained), packet);
    }
}
