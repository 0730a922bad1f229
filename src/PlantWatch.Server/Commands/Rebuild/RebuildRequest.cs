namespace PlantWatch.Server.Commands.Rebuild;

/// <summary>What is asked of a rebuilding of the series.</summary>
/// <param name="Data">Folder of the record; null for the one of the settings.</param>
/// <param name="Anew">From the first reading, even where one was broken off.</param>
internal sealed record RebuildRequest(string? Data, bool Anew)
{
    /// <summary>Reads the words of the command line; null when they are not understood.</summary>
    public static RebuildRequest? Of(IReadOnlyList<string> words)
    {
        var asked = new RebuildRequest(null, false);
        for (var i = 0; i < words.Count; i++)
        {
            if (words[i] == "--anew" && !asked.Anew) asked = asked with { Anew = true };
            else if (words[i] == "--data" && asked.Data is null && i + 1 < words.Count) asked = asked with { Data = words[++i] };
            else return null;
        }

        return asked;
    }
}
