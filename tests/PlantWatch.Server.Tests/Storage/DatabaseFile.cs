namespace PlantWatch.Server.Tests.Storage;

/// <summary>A place for a database file of its own, removed by whoever made it.</summary>
internal sealed class DatabaseFile
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("plantwatch-");

    public string Path => System.IO.Path.Combine(_folder.FullName, "data", "plantwatch.db");

    public void Remove() => _folder.Delete(recursive: true);
}
