using MQTTnet.Exceptions;

namespace PlantWatch.Server.Ingest;

/// <summary>Follows the bytes of a connection from packet to packet and stops it before a packet is read that announces more than is allowed.</summary>
/// <remarks>
/// The library allocates what the fixed header announces, up to 256 MiB, before a byte of it has come; so the length has to be
/// judged underneath. Fixed header: one byte of type, one to four of length, seven bits each, lowest first (MQTT 5.0 section 2.1.4).
/// </remarks>
internal struct PacketSizeGuard(int most)
{
    private bool _inHeader;
    private int _shift;
    private int _length;
    private int _bodyLeft;

    /// <summary>What the packet announced that was refused; 0 before.</summary>
    public int Announced { get; private set; }

    /// <summary>Takes note of bytes in the order in which they came.</summary>
    /// <exception cref="MqttProtocolViolationException">A packet announces more than the most.</exception>
    public void Watch(ReadOnlySpan<byte> bytes)
    {
        while (!bytes.IsEmpty)
        {
            if (_bodyLeft > 0)
            {
                var part = Math.Min(_bodyLeft, bytes.Length);
                _bodyLeft -= part;
                bytes = bytes[part..];
                continue;
            }
            if (_inHeader) TakeLengthByte(bytes[0]);
            else (_inHeader, _shift, _length) = (true, 0, 0);
            bytes = bytes[1..];
        }
    }

    private void TakeLengthByte(byte value)
    {
        _length |= (value & 0x7f) << _shift;
        _shift += 7;
        // A fifth byte is an error that the library itself reports.
        if ((value & 0x80) != 0 && _shift < 28) return;
        _inHeader = false;
        _bodyLeft = _length;
        if (_length <= most) return;
        Announced = _length;
        throw new MqttProtocolViolationException($"A packet of {_length} bytes, the most is {most}.");
    }
}
