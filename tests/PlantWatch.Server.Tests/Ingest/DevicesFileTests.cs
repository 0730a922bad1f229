using PlantWatch.Server.Commands;
using PlantWatch.Server.Ingest.Devices;

namespace PlantWatch.Server.Tests.Ingest;

public sealed class DevicesFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("devices-").FullName;

    private string Path => System.IO.Path.Combine(_folder, "devices.yaml");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_device_is_added_with_a_password_that_is_shown_once_and_stands_nowhere()
    {
        using var said = new StringWriter();
        Assert.Equal(0, CommandLine.Run(["add-device", "hall-panel", "--topics", "hall/#", "plant/+/state", "--file", Path], said, said));
        var clear = said.ToString().Split('\n')[1].Split(": ")[1].Trim();
        Assert.Equal(26, clear.Length);
        Assert.DoesNotContain(clear, File.ReadAllText(Path), StringComparison.Ordinal);
        var account = DevicesFile.Read(Path)["hall-panel"];
        Assert.True(account.Password.Is(System.Text.Encoding.UTF8.GetBytes(clear)));
        Assert.False(account.Password.Is("another"u8));
        Assert.Equal(["hall/#", "plant/+/state"], account.Topics);
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path));
    }

    [Fact]
    public void What_people_wrote_into_the_file_stays_and_nobody_is_added_twice_or_to_a_bad_file()
    {
        Assert.Equal(0, Add("hall-panel", "hall/#"));
        File.AppendAllText(Path, "# the panel at the spa\n");
        Assert.Equal(0, Add("spa-panel", "spa/#"));
        Assert.Contains("# the panel at the spa", File.ReadAllText(Path), StringComparison.Ordinal);
        var before = File.ReadAllText(Path);
        Assert.Equal(1, Add("spa-panel", "spa/#"));
        Assert.Equal(1, Add("bad name", "spa/#"));
        Assert.Equal(1, Add("third", "spa/#/ph"));
        Assert.Equal(before, File.ReadAllText(Path));
        File.WriteAllText(Path, "devices: []\n");
        Assert.Equal(1, Add("third", "spa/#"));
        Assert.Equal("devices: []\n", File.ReadAllText(Path));
        Assert.Equal(2, CommandLine.Run(["add-device", "third"], TextWriter.Null, TextWriter.Null));
    }

    [Theory]
    [InlineData("devices:\n  - name: a\n    password: clear-text\n    topics: [a]", "none that add-device made")]
    [InlineData("devices:\n  - password: x", "needs a name")]
    [InlineData("devices:\n  -", "needs a name")]
    [InlineData("devices:\n  - name: nameless-1", "needs a name")]
    [InlineData("devices: [", "line")]
    [InlineData("machines: []", "line")]
    [InlineData("devices:\n  - name: a\n    password: {0}", "no topics")]
    [InlineData("devices:\n  - name: a\n    password: {0}\n    topics: [a#]", "no topic filter")]
    [InlineData("devices:\n  - name: a\n    password: {0}\n    topics: [a]\n  - name: a\n    password: {0}\n    topics: [a]", "twice")]
    public void A_file_with_a_mistake_is_refused_as_a_whole_with_where_and_why(string text, string why)
    {
        File.WriteAllText(Path, text.Replace("{0}", DevicePassword.Of("x").ToString(), StringComparison.Ordinal));
        var said = Assert.Throws<DevicesFileException>(() => DevicesFile.Read(Path)).Message;
        Assert.Contains(why, said, StringComparison.Ordinal);
        Assert.DoesNotContain("clear-text", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("pbkdf2-sha512")]
    [InlineData("pbkdf2-sha512:1:AAAAAAAAAAAAAAAAAAAAAA==:AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA=")]
    [InlineData("pbkdf2-sha512:99999999:AAAAAAAAAAAAAAAAAAAAAA==:AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA=")]
    [InlineData("pbkdf2-sha512:10000:AAAA:AAAA")]
    [InlineData("pbkdf2-sha1:10000:AAAAAAAAAAAAAAAAAAAAAA==:AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA=")]
    public void What_is_no_hash_of_ours_is_no_password(string text) => Assert.Null(DevicePassword.Read(text));

    [Theory]
    [InlineData("hall/#", "hall/ph", true)]
    [InlineData("hall/#", "hall", true)] // MQTT 5.0 section 4.7.1.2
    [InlineData("hall/#", "hallway/ph", false)]
    [InlineData("hall/+", "hall/a/b", false)]
    [InlineData("hall/+", "hall/#", false)]
    [InlineData("hall/#", "hall/+/b", true)]
    [InlineData("hall/#", "#", false)]
    [InlineData("#", "$SYS/broker", false)] // section 4.7.2
    [InlineData("#", "$share/g/hall", false)]
    public void Rights_are_topic_filters(string right, string asked, bool may) =>
        Assert.Equal(may, new DeviceAccount("a", DevicePassword.Nobodys, [right]).Covers(asked));

    private int Add(string name, string topics) => AddDeviceCommand.Run(name, [topics], Path, TextWriter.Null, TextWriter.Null);
}
