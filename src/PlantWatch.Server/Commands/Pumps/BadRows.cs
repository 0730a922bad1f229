namespace PlantWatch.Server.Commands.Pumps;

/// <summary>Rows that could not be used, each named with its file and line: nothing is left out in silence.</summary>
internal sealed class BadRows(TextWriter complaints)
{
    /// <summary>How many there were.</summary>
    public int Count { get; private set; }

    /// <summary>Names one.</summary>
    public void Name(string file, long line, string row, string why)
    {
        Count++;
        complaints.WriteLine($"{file}, line {line}: \"{CsvTable.Short(row)}\": {why}");
    }
}
