using System.Globalization;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Browser.Tests.Plant;

/// <summary>Weeks of checks of one probe: at each a few readings beside a test. Invented, and the same in every run.</summary>
internal static class ProbePast
{
    private static readonly double[] Scatter = [0.02, -0.04, 0.01, 0.05, -0.02, -0.03, 0.04, 0.00, -0.05, 0.03];

    /// <summary>Enters checks of the teaching pool's pH, evenly spread up to now.</summary>
    /// <param name="server">The plant.</param>
    /// <param name="checks">How many.</param>
    /// <param name="days">Over how many days, at most what is still paired.</param>
    /// <param name="biasOf">What the probe reads too high at the check of this number.</param>
    public static async Task CheckTeachingPhAsync(this WholeServer server, int checks, double days, Func<int, double> biasOf)
    {
        var last = WholeServer.Now - TimeSpan.FromMinutes(5);
        Instant At(int i) => last - TimeSpan.FromDays(days * (checks - 1 - i) / Math.Max(1, checks - 1));
        for (var i = 0; i < checks; i++) await server.PublishAsync("hall/pack", Pack(At(i), 7.40 + biasOf(i)));
        for (var i = 0; i < checks; i++)
        {
            var check = WholeServer.Check(At(i), new TestResult(Measurand.Ph, Math.Round(7.40 + Scatter[i % Scatter.Length], 2), TestMethod.Photometer)) with { PoolId = "teaching", Who = "T. Wren" };
            Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check)).IsSuccessStatusCode);
        }
    }

    private static string Pack(Instant at, double ph) => "[" + string.Join(',', Enumerable.Range(-3, 7).Select(n => string.Create(
        CultureInfo.InvariantCulture, $"{{\"n\":\"urn:dev:ops:hall:teaching-ph\",\"t\":{(at.UnixMilliseconds / 1000) + (n * 40)},\"v\":{ph + (n % 2 * 0.01):0.###}}}"))) + "]";
}
