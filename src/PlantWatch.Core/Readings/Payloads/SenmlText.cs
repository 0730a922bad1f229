using System.Text;
using System.Text.Json;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>A text of the pack: where it stands in the payload, so that nothing is copied, or its own bytes where the JSON was escaped. The default is the empty text.</summary>
internal readonly struct SenmlText
{
    private readonly int _start;
    private readonly int _length;
    private readonly byte[]? _unescaped;

    private SenmlText(int start, int length, byte[]? unescaped) => (_start, _length, _unescaped) = (start, length, unescaped);

    public int Length => _length;

    /// <summary>The text at which the reader stands, a label or a string. Throws InvalidOperationException for half a surrogate pair.</summary>
    public static SenmlText At(ref Utf8JsonReader json)
    {
        if (!json.ValueIsEscaped) return new((int)json.TokenStartIndex + 1, json.ValueSpan.Length, null);
        var own = Encoding.UTF8.GetBytes(json.GetString()!);
        return new(0, own.Length, own);
    }

    /// <summary>A text that stands in the payload as it is, which is how CBOR writes every text of one piece.</summary>
    public static SenmlText Of(int start, int length) => new(start, length, null);

    /// <summary>Its UTF-8 bytes, given the payload that it was read from.</summary>
    public ReadOnlySpan<byte> In(ReadOnlySpan<byte> payload) => _unescaped ?? payload.Slice(_start, _length);
}
