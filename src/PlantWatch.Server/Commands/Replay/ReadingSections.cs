using Microsoft.Win32.SafeHandles;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>Where the readings of each pool stand in the large table: a pool after the other, in the order of the plant.</summary>
internal sealed class ReadingSections(SafeFileHandle file, IReadOnlyList<RecordedPlant.Pool> pools)
{
    /// <summary>The rows of one pool.</summary>
    /// <param name="From">Offset of the first.</param>
    /// <param name="To">Offset behind the last.</param>
    public readonly record struct Section(long From, long To);

    /// <summary>After <see cref="All"/>: the first row that is of no probe of the plant, or stands where its pool is over; null when there is none.</summary>
    public string? Stranger { get; private set; }

    /// <summary>A section for each pool, found while the ones before are replayed. A line that is no row stays in its section, where it is named.</summary>
    public IEnumerable<Section> All()
    {
        var walk = new Walk(new LineBlocks(file, 0, RandomAccess.GetLength(file)));
        walk.Skip();
        for (var i = 0; i < pools.Count; i++)
        {
            var from = walk.At;
            walk.Pass(new ProbeNames(pools[i].Probes.Select(p => p.Id)));
            if (i == pools.Count - 1) Stranger = walk.Line();
            yield return new Section(from, walk.At);
        }
    }

    private sealed class Walk(LineBlocks blocks)
    {
        private ReadOnlyMemory<byte> _block = blocks.Next();
        private int _at;

        public long At => blocks.Start + _at;

        public string? Line() => Has() ? ReadingRow.Text(ReadingRow.Line(_block.Span[_at..], out _)) : null;

        public void Skip()
        {
            if (!Has()) return;
            ReadingRow.Line(_block.Span[_at..], out var taken);
            _at += taken;
        }

        public void Pass(ProbeNames probes)
        {
            while (Has())
            {
                var line = ReadingRow.Line(_block.Span[_at..], out var taken);
                if (line.Length > 0 && ReadingRow.TryOf(line, out var row) && probes.Find(row.Probe) is null) return;
                _at += taken;
            }
        }

        private bool Has()
        {
            if (_at < _block.Length) return true;
            (_block, _at) = (blocks.Next(), 0);
            return !_block.IsEmpty;
        }
    }
}
