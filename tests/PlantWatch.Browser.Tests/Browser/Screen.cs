using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace PlantWatch.Browser.Tests.Browser;

/// <summary>One page as one person has it before them, and everything that the browser complained of meanwhile.</summary>
public sealed class Screen : IAsyncDisposable
{
    private readonly IBrowserContext _context;
    private readonly ConcurrentQueue<string> _complaints = new();
    private readonly ConcurrentQueue<string> _strangers = new();

    private Screen(IBrowserContext context, IPage page) => (_context, Page) = (context, page);

    public IPage Page { get; }

    internal static async Task<Screen> OfAsync(IBrowserContext context, Uri address)
    {
        // What the policy of the page forbids is told by the browser in an event of its own.
        await context.AddInitScriptAsync("addEventListener('securitypolicyviolation', e => console.error('policy: ' + e.violatedDirective + ' ' + e.blockedURI))");
        var screen = new Screen(context, await context.NewPageAsync());
        screen.Page.Console += (_, m) =>
        {
            if (m.Type is "error" or "warning" && !m.Text.Contains("registration blocked", StringComparison.Ordinal)) screen._complaints.Enqueue($"{m.Type}: {m.Text}");
        };
        screen.Page.PageError += (_, error) => screen._complaints.Enqueue($"uncaught: {error}");
        screen.Page.Request += (_, request) =>
        {
            var to = new Uri(request.Url);
            if (to.Scheme is not ("data" or "blob") && to.Authority != address.Authority) screen._strangers.Enqueue(request.Url);
        };
        return screen;
    }

    public ILocator this[string testId] => Page.GetByTestId(testId);

    public static ILocatorAssertions Expect(ILocator locator) => Assertions.Expect(locator);

    /// <summary>Opens a page of the client and waits until it is live.</summary>
    public async Task GoAsync(string route = "")
    {
        await Page.GotoAsync($"/#/{route}");
        try
        {
            await Expect(this["life"]).ToHaveTextAsync("Live");
        }
        catch (PlaywrightException e)
        {
            throw new PlaywrightException($"{e.Message}\nThe browser says: {string.Join("\n", _complaints)}\n{await Page.ContentAsync()}", e);
        }
    }

    /// <summary>Another tab of the same browser.</summary>
    public Task<Screen> AnotherTabAsync(Uri address) => OfAsync(_context, address);

    /// <summary>Every request of all tabs of this browser.</summary>
    public void OnRequest(Action<IRequest> tell) => _context.Request += (_, request) => tell(request);

    /// <summary>Types as a person does: key by key into the field.</summary>
    public async Task TypeAsync(string testId, string text)
    {
        await this[testId].FillAsync("");
        await this[testId].PressSequentiallyAsync(text);
    }

    /// <summary>Runs a function in the page, where a policy allows no text to be evaluated by the page itself.</summary>
    public Task<T> AskAsync<T>(string function, object? argument = null) => Page.EvaluateAsync<T>(function, argument);

    public Task UntilAsync(string function, object? argument = null) =>
        Page.WaitForFunctionAsync(function, argument, new PageWaitForFunctionOptions { Timeout = Chromium.Patience });

    /// <summary>Presses Tab until it is there, as a person does; what holds the focus is always in sight and outlined.</summary>
    public async Task TabToAsync(string selector)
    {
        for (var i = 0; i < 60; i++)
        {
            if (await AskAsync<bool>("selector => document.activeElement.matches(selector)", selector))
            {
                await Expect(Page.Locator(":focus")).ToBeInViewportAsync();
                Assert.NotEqual("none", await AskAsync<string>("() => getComputedStyle(document.activeElement).outlineStyle"));
                return;
            }

            await Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"sixty tabs never reached {selector}");
    }

    /// <summary>Nothing was complained of, nothing forbidden was tried, nobody else was asked for anything.</summary>
    public void IsClean(Func<string, bool>? expected = null)
    {
        Assert.DoesNotContain(_complaints, c => expected?.Invoke(c) != true);
        Assert.Empty(_strangers);
    }

    public async ValueTask DisposeAsync() => await _context.CloseAsync();
}
