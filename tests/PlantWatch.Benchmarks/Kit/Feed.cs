using System.Formats.Cbor;
using System.Globalization;
using System.Text;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Ingest;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>The events of a circuit whose probes speak at 1 Hz, evenly spread, each from a device of its own up to as many as the embedded broker takes; a tick a second as the loop adds it.</summary>
internal sealed class Feed(int probes, PayloadFormat format = PayloadFormat.Number, bool fractions = false)
{
    public static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 6);

    private readonly int _messages = format != PayloadFormat.Number ? (probes + 9) / 10 : probes;
    private readonly long[] _ordinals = new long[EmbeddedBroker.MostConnections];
    private long _count;
    private Instant _ticked = Start;

    /// <summary>Time of the newest event.</summary>
    public Instant Now { get; private set; } = Start;

    /// <summary>The next messages, with the ticks between them.</summary>
    public List<PlantEvent> Next(int howMany)
    {
        var events = new List<PlantEvent>(howMany + 8);
        for (var i = 0; i < howMany; i++)
        {
            events.Add(Message());
            if (Now - _ticked < TimeSpan.FromSeconds(1)) continue;
            events.Add(new ClockTicked(Now));
            _ticked = Now;
        }

        return events;
    }

    private MessageArrived Message()
    {
        var (which, turn) = ((int)(_count % _messages), _count / _messages);
        Now = Start + TimeSpan.FromSeconds(turn) + TimeSpan.FromMicroseconds(1_000_000.0 * which / _messages);
        _count++;
        var device = which % _ordinals.Length;
        var ordinal = ++_ordinals[device];
        var packet = new PacketIdentity($"device-{device}", (int)(ordinal % 65535) + 1, ordinal, Redelivered: false);
        return format != PayloadFormat.Number ? new(Now, $"hall/pack/{which}", format == PayloadFormat.SenmlCbor ? PackInCbor(which, turn) : Pack(which, turn), false, packet) : new(Now, Plants.Topic(which), Encoding.UTF8.GetBytes(Plants.Value(which, turn)), false, packet);
    }

    private byte[] Pack(int which, long turn)
    {
        var text = new StringBuilder("[");
        for (var i = which * 10; i < Math.Min(probes, (which + 1) * 10); i++)
        {
            if (text.Length > 1) text.Append(',');
            text.Append('{');
            if (text.Length == 2) text.Append(CultureInfo.InvariantCulture, $"\"bn\":\"urn:dev:ops:hall:\",\"bt\":{Now.UnixMicroseconds / 1e6:F3},");
            text.Append(CultureInfo.InvariantCulture, $"\"n\":\"{i}\",\"v\":{Plants.Value(i, turn)}}}");
        }

        return Encoding.UTF8.GetBytes(text.Append(']').ToString());
    }

    // The same records by the platform's own encoder, with the numbers as doubles or as the decimals that they are.
    private byte[] PackInCbor(int which, long turn)
    {
        var (first, end) = (which * 10, Math.Min(probes, (which + 1) * 10));
        var cbor = new CborWriter();
        cbor.WriteStartArray(end - first);
        for (var i = first; i < end; i++)
        {
            cbor.WriteStartMap(i == first ? 4 : 2);
            if (i == first)
            {
                cbor.WriteInt32(-2);
                cbor.WriteTextString("urn:dev:ops:hall:");
                cbor.WriteInt32(-3);
                cbor.WriteDouble(Math.Round(Now.UnixMicroseconds / 1e6, 3));
            }

            cbor.WriteInt32(0);
            cbor.WriteTextString(i.ToString(CultureInfo.InvariantCulture));
            cbor.WriteInt32(2);
            if (fractions) cbor.WriteDecimal(decimal.Parse(Plants.Value(i, turn), CultureInfo.InvariantCulture));
            else cbor.WriteDouble(double.Parse(Plants.Value(i, turn), CultureInfo.InvariantCulture));
            cbor.WriteEndMap();
        }

        cbor.WriteEndArray();
        return cbor.Encode();
    }
}
