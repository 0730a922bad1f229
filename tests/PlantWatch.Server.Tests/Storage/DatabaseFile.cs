namespace PlantWatch.Server.Tests.Storage;

/// <summary>A place for a database file of its own, removed by whoever made it.</summary>
internal sealed class DatabaseFile
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("plantwatch-");

    public string Path => System.IO.Path.Combine(folder.FullName, "data", "plantwatch.db");

    public void Remove() => folder.Delete(recursive: true);
}
