namespace PlantWatch.Server.PlantFile;

/// <summary>Collects everything wrong with a file, so that one reading tells it all.</summary>
internal sealed class Complaints
{
    /// <summary>More than so many help nobody; the last one says how many there are besides.</summary>
    public const int Most = 50;

    private readonly List<PlantFileError> _errors = [];

    public bool Any => _errors.Count > 0;

    public void Add(PlantFileError error) => _errors.Add(error);

    public void Add(int line, string path, string message) => _errors.Add(new(line, path, message));

    public void Add(Place place, string message) => Add(place.Line, place.Path, message);

    /// <summary>In the order of the file, each once.</summary>
    public IReadOnlyList<PlantFileError> InOrder()
    {
        var all = _errors.Distinct().OrderBy(error => error.Line).ToList();
        if (all.Count <= Most) return all;
        var kept = all.Take(Most - 1).ToList();
        kept.Add(all[Most - 1] with { Key = "", Message = $"and {all.Count - Most + 1} more from here on; put these right first" });
        return kept;
    }
}
