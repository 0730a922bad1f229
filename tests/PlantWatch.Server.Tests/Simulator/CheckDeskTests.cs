using System.Net;
using System.Text;
using PlantWatch.Simulator.People;
using PlantWatch.Simulator.Wire;

namespace PlantWatch.Server.Tests.Simulator;

public sealed class CheckDeskTests
{
    private static readonly CheckSheet Sheet = new()
    {
        Id = new Guid("0198c000-0000-7000-8000-000000000001"), PoolId = "main-pool", SampledAt = Plants.Start, EnteredAt = Plants.Start.AddMinutes(3), Who = "M. Okafor",
    };

    [Fact]
    public async Task A_check_is_put_under_its_own_id()
    {
        var (desk, server) = Desk((HttpStatusCode.OK, "{}"));
        Assert.True((await desk.SendAsync(Sheet, CancellationToken.None)).Taken);
        Assert.Equal("PUT http://plant/api/v1/checks/0198c000-0000-7000-8000-000000000001", Assert.Single(server.Seen));
    }

    [Fact]
    public async Task A_server_in_trouble_is_asked_again()
    {
        var (desk, server) = Desk((HttpStatusCode.ServiceUnavailable, ""), (HttpStatusCode.OK, "{}"));
        Assert.True((await desk.SendAsync(Sheet, CancellationToken.None)).Taken);
        Assert.Equal(2, server.Seen.Count);
    }

    [Fact]
    public async Task A_refused_check_is_counted_with_its_words_and_not_sent_again()
    {
        var (desk, server) = Desk((HttpStatusCode.BadRequest, "dated tomorrow"));
        var outcome = await desk.SendAsync(Sheet, CancellationToken.None);
        Assert.Equal((false, "dated tomorrow", 1, 1), (outcome.Taken, outcome.Words, desk.Refused, server.Seen.Count));
    }

    [Theory]
    [InlineData("check_suspect", true)]
    [InlineData("agrees", false)]
    public async Task A_doubted_check_asks_for_a_repeat(string verdict, bool repeat)
    {
        var (desk, _) = Desk((HttpStatusCode.OK, $$"""{"judgements":[{"probeId":"main-ph","verdict":"{{verdict}}"}]}"""));
        Assert.Equal(repeat, (await desk.SendAsync(Sheet, CancellationToken.None)).RepeatAsked);
    }

    private static (CheckDesk, Answers) Desk(params (HttpStatusCode, string)[] answers)
    {
        var handler = new Answers(answers);
        return (new CheckDesk(new HttpClient(handler) { BaseAddress = new Uri("http://plant/") }), handler);
    }

    private sealed class Answers((HttpStatusCode Status, string Body)[] answers) : HttpMessageHandler
    {
        public List<string> Seen { get; } = [];

        protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            var (status, body) = answers[Seen.Count];
            Seen.Add($"{request.Method} {request.RequestUri}");
            return Task.FromResult(new HttpResponseMessage(status) { Content = new StringContent(body, Encoding.UTF8, "application/json") });
        }
    }
}
