using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PlantWatch.Server.Logging;

namespace PlantWatch.Server.Tests.Logging;

public sealed partial class LoggingSetupTests : IDisposable
{
    private readonly string _data = Directory.CreateTempSubdirectory("plantwatch-log-").FullName;

    public void Dispose() => Directory.Delete(_data, recursive: true);

    [Fact]
    public async Task A_line_lands_in_the_file_as_json_with_its_number_and_its_figures()
    {
        await using (var app = Build())
            TankLow(app.Services.GetRequiredService<ILogger<LoggingSetupTests>>(), "acid", 12.5);

        var line = Assert.Single(LinesOfTheFile());
        Assert.Equal(9001, line.GetProperty("MessageId").GetInt32());
        Assert.Equal("Tank {Tank} is at {Percent} %", line.GetProperty("@mt").GetString());
        Assert.Equal("acid", line.GetProperty("Tank").GetString());
        Assert.Equal(12.5, line.GetProperty("Percent").GetDouble());
        Assert.Equal("Warning", line.GetProperty("@l").GetString());
    }

    [Fact]
    public async Task What_the_web_server_says_at_length_is_left_out_but_its_warnings_are_not()
    {
        await using (var app = Build())
        {
            var web = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger("Microsoft.AspNetCore.Routing");
            Chatter(web);
            TankLow(web, "chlorine", 3);
        }
        Assert.Equal("Warning", Assert.Single(LinesOfTheFile()).GetProperty("@l").GetString());
    }

    [Fact]
    public async Task A_level_can_be_changed_in_the_configuration()
    {
        await using (var app = Build("--Serilog:MinimumLevel:Default=Error"))
            TankLow(app.Services.GetRequiredService<ILogger<LoggingSetupTests>>(), "acid", 12.5);
        Assert.Empty(LinesOfTheFile());
    }

    [Fact]
    public async Task Two_servers_in_one_process_write_each_into_its_own_file()
    {
        await using var first = Build();
        using var other = new LoggingSetupTests();
        await using (var second = other.Build()) TankLow(second.Services.GetRequiredService<ILogger<LoggingSetupTests>>(), "second", 1);
        TankLow(first.Services.GetRequiredService<ILogger<LoggingSetupTests>>(), "first", 1);
        await first.DisposeAsync();
        Assert.Equal("first", Assert.Single(LinesOfTheFile()).GetProperty("Tank").GetString());
        Assert.Equal("second", Assert.Single(other.LinesOfTheFile()).GetProperty("Tank").GetString());
    }

    private WebApplication Build(params string[] arguments) => WebApplication.CreateBuilder(arguments).AddPlantWatchLogging(_data).Build();

    private List<JsonElement> LinesOfTheFile()
    {
        var folder = Path.Combine(_data, "logs");
        if (!Directory.Exists(folder)) return [];
        return [.. Directory.GetFiles(folder, "plantwatch-*.jsonl").SelectMany(File.ReadAllLines).Select(l => JsonDocument.Parse(l).RootElement)];
    }

    [LoggerMessage(9001, LogLevel.Warning, "Tank {Tank} is at {Percent} %")]
    private static partial void TankLow(ILogger logger, string tank, double percent);

    [LoggerMessage(9002, LogLevel.Information, "Request matched endpoint")]
    private static partial void Chatter(ILogger logger);
}
