using System.Net;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The pictures of a probe beside its tests, asked for as the page and a report ask.</summary>
public sealed class PairChartApiTests
{
    [PeerFact("mosquitto_pub")]
    public async Task A_test_that_was_compared_is_on_the_picture_and_one_that_another_corrected_is_not()
    {
        await using var server = await WholeServer.StartAsync();
        Assert.Contains("No test has been compared yet", await server.Http.GetStringAsync(new Uri("/api/v1/charts/probes/ph/agreement.svg", UriKind.Relative)), StringComparison.Ordinal);
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.40", 20));
        var wrong = Guid.CreateVersion7();
        await WholeServer.ReadAsync<object>(await server.PutAsync($"/api/v1/checks/{wrong}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.83, TestMethod.Photometer))));
        await WholeServer.ReadAsync<object>(await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.38, TestMethod.Photometer)) with
        {
            Corrects = wrong, CorrectionReason = "misread",
        }));
        var svg = await server.Http.GetStringAsync(new Uri("/api/v1/charts/probes/ph/agreement.svg?width=390&theme=dark", UriKind.Relative));
        Assert.Contains("Tests compared: 1", svg, StringComparison.Ordinal);
        using var png = await server.Http.GetAsync(new Uri("/api/v1/charts/probes/ph/regression.png", UriKind.Relative));
        Assert.Equal((HttpStatusCode.OK, "image/png"), (png.StatusCode, png.Content.Headers.ContentType?.MediaType));
    }

    [Theory]
    [InlineData("/api/v1/charts/probes/nobody/agreement.svg", HttpStatusCode.NotFound)]
    [InlineData("/api/v1/charts/probes/ph/agreement.gif", HttpStatusCode.NotFound)]
    [InlineData("/api/v1/charts/probes/ph/agreement.svg?from=yesterday", HttpStatusCode.BadRequest)]
    public async Task What_there_is_no_picture_of_is_said(string address, HttpStatusCode expected)
    {
        await using var server = await WholeServer.StartAsync();
        using var answer = await server.Http.GetAsync(new Uri(address, UriKind.Relative));
        Assert.Equal(expected, answer.StatusCode);
    }
}
