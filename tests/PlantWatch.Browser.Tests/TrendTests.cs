using System.Globalization;
using System.Web;
using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The strips of a pool: lines, limits and tests are painted, keys and buttons ask for other times.</summary>
public sealed class TrendTests(Chromium chromium) : IClassFixture<Chromium>
{
    // Pixels of one of the page's own colours on the canvas of a strip. A colour is asked of the style sheet, so that the test knows none.
    private const string Pixels = """
        ([strip, name]) => {
          const canvas = document.querySelector(`[data-testid="${strip}"] canvas`);
          if (!canvas || !canvas.width || !canvas.height) return -1;
          const probe = canvas.parentElement.appendChild(document.createElement('i'));
          probe.style.color = `var(${name})`;
          const [r, g, b] = getComputedStyle(probe).color.match(/\d+/g).map(Number);
          probe.remove();
          // Edges are smoothed: a little away from the colour still is the colour.
          const near = (a, b) => Math.abs(a - b) < 24;
          const copy = new OffscreenCanvas(canvas.width, canvas.height).getContext('2d', { willReadFrequently: true });
          copy.drawImage(canvas, 0, 0);
          const { data } = copy.getImageData(0, 0, canvas.width, canvas.height);
          let n = 0;
          for (let i = 0; i < data.length; i += 4) if (data[i + 3] > 100 && near(data[i], r) && near(data[i + 1], g) && near(data[i + 2], b)) n++;
          return n;
        }
        """;

    [BrowserFact]
    public async Task The_line_the_limits_and_a_test_are_painted()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 300);
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("pool/teaching");
        await PaintedAsync(screen, "strip-teaching-ph", "--line", atLeast: 200);
        await PaintedAsync(screen, "strip-teaching-ph", "--band-edge", atLeast: 200);
        await PaintedAsync(screen, "strip-teaching-orp", "--line", atLeast: 200);
        Assert.Equal(0, await CountAsync(screen, "strip-teaching-ph", "--test"));

        var check = WholeServer.Check(WholeServer.Now - TimeSpan.FromMinutes(60), new TestResult(Measurand.Ph, 7.42, TestMethod.Photometer)) with { PoolId = "teaching" };
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check);
        await PaintedAsync(screen, "strip-teaching-ph", "--test", atLeast: 20);
        screen.IsClean();
    }

    [BrowserFact]
    public async Task Keys_and_buttons_zoom_pan_and_come_back_to_now()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 300);
        await using var screen = await chromium.OpenAsync(server.Address);
        var first = await AskedAsync(screen, () => screen.GoAsync("pool/teaching"));

        await screen["strips"].FocusAsync();
        var closer = await AskedAsync(screen, () => screen.Page.Keyboard.PressAsync("+"));
        Assert.True(closer.Span < first.Span, $"{closer} after {first}");
        var earlier = await AskedAsync(screen, () => screen.Page.Keyboard.PressAsync("PageUp"));
        Assert.True(earlier.From < closer.From && (earlier.Span - closer.Span).Duration() < TimeSpan.FromMinutes(90), $"{earlier} after {closer}");
        var home = await AskedAsync(screen, () => screen.Page.Keyboard.PressAsync("Home"));
        Assert.True(home.To > earlier.To, $"{home} after {earlier}");

        var week = await AskedAsync(screen, () => screen["range-week"].ClickAsync());
        Assert.True(week.Span > TimeSpan.FromDays(7), $"{week}");
        await Expect(screen["range-week"]).ToHaveAttributeAsync("aria-pressed", "true");
        var zoomed = await AskedAsync(screen, () => screen.Page.GetByRole(AriaRole.Button, new() { Name = "Zoom in" }).ClickAsync());
        Assert.True(zoomed.Span < week.Span, $"{zoomed} after {week}");
        var before = await AskedAsync(screen, () => screen.Page.GetByRole(AriaRole.Button, new() { Name = "Earlier" }).ClickAsync());
        Assert.True(before.From < zoomed.From, $"{before} after {zoomed}");
        await Expect(screen["range-now"]).ToHaveAttributeAsync("aria-pressed", "false");
        await screen["range-now"].ClickAsync();
        await Expect(screen["strips-time"]).ToContainTextAsync("Now");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_mouse_drags_the_time_and_a_wheel_zooms_it_once_the_strips_were_clicked()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 300);
        await using var screen = await chromium.OpenAsync(server.Address);
        var first = await AskedAsync(screen, () => screen.GoAsync("pool/teaching"));
        await PaintedAsync(screen, "strip-teaching-ph", "--line", atLeast: 200);
        var box = await screen["strip-teaching-ph"].Locator("canvas").BoundingBoxAsync() ?? throw new InvalidOperationException("no canvas in sight");
        var (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        var dragged = await AskedAsync(screen, async () =>
        {
            await screen.Page.Mouse.MoveAsync(x, y);
            await screen.Page.Mouse.DownAsync();
            await screen.Page.Mouse.MoveAsync(x + (box.Width / 3), y, new MouseMoveOptions { Steps = 5 });
            await screen.Page.Mouse.UpAsync();
            // A third of the width is a third of the time; the way there may have asked too.
        }, asked => first.From - asked.From > first.Span / 4);
        await screen["strips"].FocusAsync();
        var wheeled = await AskedAsync(screen, () => screen.Page.Mouse.WheelAsync(0, -400), asked => asked.Span < dragged.Span);
        Assert.InRange(wheeled.From, dragged.From, dragged.To);
        screen.IsClean();
    }

    private static Task<int> CountAsync(Screen screen, string strip, string colour) => screen.AskAsync<int>(Pixels, new[] { strip, colour });

    private static Task PaintedAsync(Screen screen, string strip, string colour, int atLeast) =>
        screen.UntilAsync($"([strip, name]) => ({Pixels})([strip, name]) >= {atLeast}", new[] { strip, colour });

    /// <summary>The time of the next question about the pH of the teaching pool that is the one waited for.</summary>
    private static async Task<Asked> AskedAsync(Screen screen, Func<Task> action, Func<Asked, bool>? until = null) =>
        Of(await screen.Page.RunAndWaitForRequestAsync(action, r => r.Url.Contains("/series?probe=teaching-ph", StringComparison.Ordinal) && (until is null || until(Of(r)))));

    private static Asked Of(IRequest request)
    {
        var query = HttpUtility.ParseQueryString(new Uri(request.Url).Query);
        return new Asked(At(query["from"]), At(query["to"]));
    }

    private static DateTimeOffset At(string? text) => DateTimeOffset.Parse(text!, CultureInfo.InvariantCulture);

    private sealed record Asked(DateTimeOffset From, DateTimeOffset To)
    {
        public TimeSpan Span => To - From;
    }
}
