using System.Globalization;
using System.Net;
using System.Net.Sockets;
using PlantWatch.Server.Tests.House;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Deploy;

public sealed class DockerfileTests
{
    private static readonly string[] Lines = Repository.ReadText("src", "PlantWatch.Server", "Dockerfile").Split('\n');

    [Fact]
    public void What_it_copies_from_the_repository_is_there()
    {
        var copies = Lines.Where(l => l.StartsWith("COPY ", StringComparison.Ordinal) && !l.Contains("--from=", StringComparison.Ordinal)).Select(l => l.Split(' ')[1..^1]).ToList();
        Assert.NotEmpty(copies);
        Assert.All(copies.SelectMany(c => c), path => Assert.True(Path.Exists(Repository.PathOf(path)), path));
    }

    [Fact]
    public void The_server_runs_without_rights_of_root_and_is_asked_for_its_health()
    {
        var last = Lines[Array.FindLastIndex(Lines, l => l.StartsWith("FROM ", StringComparison.Ordinal))..];
        var user = Array.FindIndex(last, l => l.StartsWith("USER ", StringComparison.Ordinal) && !l.Contains("root", StringComparison.Ordinal));
        Assert.InRange(user, 0, Array.FindIndex(last, l => l.StartsWith("ENTRYPOINT", StringComparison.Ordinal)));
        Assert.Contains(last, l => l.StartsWith("HEALTHCHECK", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_stage_starts_from_a_version() =>
        Assert.All(Lines.Where(l => l.StartsWith("FROM ", StringComparison.Ordinal)), l => Assert.Matches(@"^FROM [a-z0-9./-]+:\d+\.\d+\S*( AS [a-z]+)?$", l));

    [PeerTheory("bash")]
    [InlineData("200 OK", 0)]
    [InlineData("503 Service Unavailable", 1)]
    public async Task The_health_check_reads_the_answer_of_a_server(string answer, int code)
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        await using var check = HealthCheck(((IPEndPoint)listener.LocalEndpoint).Port);
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        using var client = await listener.AcceptTcpClientAsync(patience.Token);
        await using var stream = client.GetStream();
        using var reader = new StreamReader(stream, leaveOpen: true);
        Assert.Equal("GET /health/ready HTTP/1.0", await reader.ReadLineAsync(patience.Token));
        await stream.WriteAsync(System.Text.Encoding.ASCII.GetBytes($"HTTP/1.1 {answer}\r\nContent-Length: 0\r\n\r\n"), patience.Token);
        Assert.Equal(code, await check.ExitAsync());
    }

    [PeerFact("bash")]
    public async Task The_health_check_fails_where_nobody_listens()
    {
        await using var check = HealthCheck(Peer.FreePort());
        Assert.Equal(1, await check.ExitAsync());
    }

    private static Peer HealthCheck(int port) => Peer.Start("bash", Repository.PathOf("src", "PlantWatch.Server", "Deploy", "healthcheck"), port.ToString(CultureInfo.InvariantCulture));

    [AttributeUsage(AttributeTargets.Method)]
    private sealed class PeerTheoryAttribute : TheoryAttribute
    {
        public PeerTheoryAttribute(string program)
        {
            if (Peer.Find(program) is null) Skip = $"not installed: {program}";
        }
    }
}
