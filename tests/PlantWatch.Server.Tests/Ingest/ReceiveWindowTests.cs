using PlantWatch.Server.Ingest;

namespace PlantWatch.Server.Tests.Ingest;

/// <summary>Room comes from proofs, not from acknowledgements that may still be lost.</summary>
public sealed class ReceiveWindowTests
{
    private readonly Queue<TaskCompletionSource> _pings = new();

    [Fact]
    public async Task An_acknowledgement_makes_no_room_until_the_broker_has_answered()
    {
        using var window = Window(8);
        Assert.Equal(8, await EnterAll(window));
        window.Acknowledged();
        Assert.False(await Enter(window));

        _pings.Dequeue().SetResult();

        Assert.Equal(1, await EnterAll(window));
    }

    [Fact]
    public async Task What_is_acknowledged_while_a_ping_is_out_is_proven_by_the_next_one_and_not_by_this()
    {
        using var window = Window(8);
        Assert.Equal(8, await EnterAll(window));
        for (var i = 0; i < 8; i++) window.Acknowledged();

        _pings.Dequeue().SetResult();
        Assert.Equal(1, await EnterAll(window));

        _pings.Dequeue().SetResult();
        Assert.Equal(7, await EnterAll(window));
    }

    [Fact]
    public void A_large_window_is_not_pinged_for_every_message()
    {
        using var window = Window(2000);
        for (var i = 0; i < 249; i++) window.Acknowledged();
        Assert.Empty(_pings);
        window.Acknowledged();
        Assert.Single(_pings);
    }

    [Fact]
    public void A_ping_without_an_answer_is_told()
    {
        Exception? told = null;
        using var window = new ReceiveWindow(1, () => Task.FromException(new IOException("gone")), e => told = e);
        window.Acknowledged();
        Assert.IsType<IOException>(told);
    }

    private ReceiveWindow Window(int size) => new(
        size,
        () =>
        {
            // Continuations run at once, so that a test sees what follows.
            var answer = new TaskCompletionSource();
            _pings.Enqueue(answer);
            return answer.Task;
        },
        e => Assert.Fail(e.ToString()));

    private static async Task<bool> Enter(ReceiveWindow window)
    {
        using var now = new CancellationTokenSource();
        var entering = window.EnterAsync(now.Token);
        await now.CancelAsync();
        // A wait that is given up must have ended before the next one counts.
        await entering.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        return entering.IsCompletedSuccessfully;
    }

    private static async Task<int> EnterAll(ReceiveWindow window)
    {
        var count = 0;
        while (await Enter(window)) count++;
        return count;
    }
}
