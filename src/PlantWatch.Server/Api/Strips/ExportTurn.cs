using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Api;

/// <summary>One table of a pool's strips is made at a time: it is put together in memory.</summary>
internal sealed class ExportTurn : Turn
{
    /// <summary>Single readings of one probe in one file: more than the widest strip of single readings holds at one a second.</summary>
    public int MostReadings { get; set; } = 400_000;
}
