using Microsoft.Playwright;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Browser.Tests.Browser;

/// <summary>The machine's own Chromium, one for a class of tests, started by the first that needs it.</summary>
public sealed class Chromium : IAsyncLifetime
{
    /// <summary>How long anything may take to come about. Generous: a condition is waited for, never a time.</summary>
    public const float Patience = 30_000;

    private static readonly string[] Quiet =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
        "--lang=en-GB",
    ];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public Task InitializeAsync() => Task.CompletedTask;

    /// <summary>A page of its own, with nothing remembered.</summary>
    /// <param name="address">The server.</param>
    /// <param name="width">Width in CSS pixels; below 800 it is a phone with touch.</param>
    /// <param name="dark">The scheme that the person prefers.</param>
    public async Task<Screen> OpenAsync(Uri address, int width = 1280, bool dark = false)
    {
        _browser ??= await StartAsync();
        var context = await _browser.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = address.ToString(),
            ViewportSize = new ViewportSize { Width = width, Height = width < 800 ? 844 : 900 },
            HasTouch = width < 800,
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            ReducedMotion = ReducedMotion.Reduce,
            TimezoneId = "Europe/London",
            Locale = "en-GB",
            // Each test has the pages of its own server; those that look at kept pages ask for a browser that keeps.
            ServiceWorkers = ServiceWorkerPolicy.Block,
        });
        context.SetDefaultTimeout(Patience);
        return await Screen.OfAsync(context, address);
    }

    /// <summary>A phone with its own storage: the pages and what was typed lie in a folder, and outlive the browser.</summary>
    /// <param name="folder">Where it remembers.</param>
    /// <param name="address">The server.</param>
    /// <param name="more">Further switches of the browser.</param>
    public async Task<Screen> OpenPhoneAsync(string folder, Uri address, params string[] more)
    {
        _playwright ??= await PlaywrightAsync();
        var context = await _playwright.Chromium.LaunchPersistentContextAsync(folder, new BrowserTypeLaunchPersistentContextOptions
        {
            ExecutablePath = Peer.Find("chromium"), Args = [.. Quiet, .. more], Timeout = 2 * Patience, BaseURL = address.ToString(),
            ViewportSize = new ViewportSize { Width = 390, Height = 844 }, HasTouch = true, ReducedMotion = ReducedMotion.Reduce, TimezoneId = "Europe/London", Locale = "en-GB",
        });
        context.SetDefaultTimeout(Patience);
        return await Screen.OfAsync(context, address);
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null) await _browser.CloseAsync();
        _playwright?.Dispose();
    }

    private async Task<IBrowser> StartAsync()
    {
        _playwright ??= await PlaywrightAsync();
        return await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = Peer.Find("chromium"), Args = Quiet, Timeout = 2 * Patience });
    }

    private static Task<IPlaywright> PlaywrightAsync()
    {
        Assertions.SetDefaultExpectTimeout(Patience);
        return Playwright.CreateAsync();
    }
}
