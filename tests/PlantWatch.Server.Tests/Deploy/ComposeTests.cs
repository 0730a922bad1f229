using System.Text.RegularExpressions;
using PlantWatch.Server.Tests.House;
using YamlDotNet.RepresentationModel;

namespace PlantWatch.Server.Tests.Deploy;

/// <summary>What can be said of the containers without running them.</summary>
public sealed partial class ComposeTests
{
    private static readonly YamlMappingNode File = Load();
    private static readonly Dictionary<string, YamlMappingNode> Services = Map(File, "services").Children.ToDictionary(c => Text(c.Key), c => (YamlMappingNode)c.Value);

    [Fact]
    public void The_broker_PlantWatch_and_the_series_database_are_there() => Assert.Equal(["broker", "influxdb", "plantwatch"], Services.Keys.Order());

    [Fact]
    public void Every_image_is_pinned_to_a_version() =>
        Assert.All(Services, s => Assert.Matches(Pinned(), Text(s.Value["image"])));

    [Fact]
    public void Every_port_is_open_to_this_machine_only_unless_somebody_says_otherwise()
    {
        var ports = Services.Values.SelectMany(s => Texts(s, "ports")).ToList();
        Assert.NotEmpty(ports);
        Assert.All(ports, p => Assert.Matches(@"^(127\.0\.0\.1|\$\{[A-Z_]+:-127\.0\.0\.1\}):\d+:\d+$", p));
    }

    [Fact]
    public void Every_volume_is_declared_or_lies_in_the_repository()
    {
        var declared = Map(File, "volumes").Children.Keys.Select(Text).ToList();
        foreach (var source in Services.Values.SelectMany(s => Texts(s, "volumes")).Select(v => Default().Replace(v, "$1")).Select(v => v.Split(':')[0]))
            Assert.True(source.StartsWith("./", StringComparison.Ordinal) ? Path.Exists(Repository.PathOf(source[2..])) : declared.Contains(source), source);
    }

    [Fact]
    public void Every_service_comes_back_by_itself_and_cannot_fill_the_disk_with_its_log() => Assert.All(Services.Values, s =>
    {
        Assert.Equal("unless-stopped", Text(s["restart"]));
        Assert.True(Map(Map(s, "logging"), "options").Children.ContainsKey("max-size"));
    });

    [Fact]
    public void PlantWatch_waits_for_a_healthy_broker_and_needs_no_rights()
    {
        var server = Services["plantwatch"];
        Assert.Equal("service_healthy", Text(Map(Map(server, "depends_on"), "broker")["condition"]));
        Assert.True(Services["broker"].Children.ContainsKey("healthcheck"));
        Assert.Equal("true", Text(server["read_only"]));
        Assert.Equal(["ALL"], Texts(server, "cap_drop"));
        Assert.True(System.IO.File.Exists(Repository.PathOf(Text(Map(server, "build")["dockerfile"]))));
    }

    [Fact]
    public void The_settings_of_the_server_are_settings_that_it_has()
    {
        foreach (var name in Map(Services["plantwatch"], "environment").Children.Keys.Select(Text))
        {
            var type = typeof(PlantWatchOptions);
            foreach (var part in name.Split("__").Skip(1))
            {
                var property = type.GetProperty(part);
                Assert.True(property is not null, name);
                type = property.PropertyType;
            }
        }
    }

    private static YamlMappingNode Load()
    {
        var yaml = new YamlStream();
        yaml.Load(new StringReader(Repository.ReadText("docker-compose.yml")));
        return (YamlMappingNode)yaml.Documents[0].RootNode;
    }

    private static YamlMappingNode Map(YamlMappingNode node, string key) => (YamlMappingNode)node[key];

    private static IEnumerable<string> Texts(YamlMappingNode node, string key) => node.Children.TryGetValue(key, out var list) ? ((YamlSequenceNode)list).Select(Text) : [];

    private static string Text(YamlNode node) => ((YamlScalarNode)node).Value ?? "";

    [GeneratedRegex(@"^[a-z0-9./-]+:\d+\.\d+(\.\d+)?[a-z0-9.-]*$")]
    private static partial Regex Pinned();

    [GeneratedRegex(@"\$\{[A-Z_]+:-([^}]*)\}")]
    private static partial Regex Default();
}
