using System.Text;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>The probes of one pool by their bytes. They come round in turn, so the one after the last found is tried first.</summary>
internal sealed class ProbeNames(IEnumerable<string> ids)
{
    private readonly (string Id, byte[] Bytes)[] _names = [.. ids.Select(id => (id, Encoding.UTF8.GetBytes(id)))];
    private int _last;

    /// <summary>The probe of these bytes; null when it is none of this pool.</summary>
    public string? Find(ReadOnlySpan<byte> bytes)
    {
        for (var i = 0; i < _names.Length; i++)
        {
            if (++_last >= _names.Length) _last = 0;
            if (bytes.SequenceEqual(_names[_last].Bytes)) return _names[_last].Id;
        }

        return null;
    }
}
