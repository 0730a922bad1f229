namespace PlantWatch.Server;

/// <summary>Where settings come from: the file beside the program, the environment, the command line; later ones win.</summary>
internal static class Settings
{
    /// <summary>Reads them.</summary>
    public static IConfiguration Read(string[] args) => new ConfigurationBuilder()
        .AddJsonFile(Path.Combine(AppContext.BaseDirectory, "appsettings.json"), optional: true)
        .AddEnvironmentVariables()
        .AddCommandLine(args)
        .Build();

    /// <summary>Those of the server.</summary>
    public static PlantWatchOptions Of(IConfiguration configuration) => configuration.GetSection("PlantWatch").Get<PlantWatchOptions>() ?? new PlantWatchOptions();
}
