using System.Collections.Concurrent;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Telling;

/// <summary>Sends what waits, each channel at its own pace: one that hangs or refuses holds up no other. Everything it does was written down before, and is noted after.</summary>
internal sealed class Sender(OutboxBook book, Channels channels, IStripPictures pictures, SheetPress press, TimeProvider clock, ILogger<Sender> log)
{
    /// <summary>A peer that takes longer is treated as one that does not answer.</summary>
    public TimeSpan LongestAttempt { get; init; } = TimeSpan.FromSeconds(20);

    private readonly ConcurrentDictionary<string, Task> _running = new(StringComparer.Ordinal);
    private static readonly TimeSpan Rest = TimeSpan.FromMinutes(1);
    private readonly ConcurrentDictionary<string, Instant> _rests = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, bool> _hurried = new(StringComparer.Ordinal);

    /// <summary>Has every channel that is idle look for what waits for it.</summary>
    public void Go(PlantPlan plan, IReadOnlyList<CircuitWorker> circuits, CancellationToken cancellation)
    {
        foreach (var channel in plan.Telling.Channels)
            if ((!_running.TryGetValue(channel.Id, out var running) || running.IsCompleted) && !(_rests.TryGetValue(channel.Id, out var until) && Now < until))
                _running[channel.Id] = Task.Run(() => GuardAsync(channel, () => SendDueAsync(plan, channel, circuits, cancellation)), CancellationToken.None);
    }

    // A fault of ours, and not of the peer: what cannot be noted or read is not tried every second, or it would be sent every second.
    private async Task GuardAsync(ChannelPlan channel, Func<Task> send)
    {
        try
        {
            await send();
        }
        catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
        {
            _rests[channel.Id] = Now + Rest;
            TellingLog.SendFailed(log, channel.Id, fault);
        }
    }

    /// <summary>A channel is known to work again: what waits for it does not wait out its time.</summary>
    public void Hurry(string channel) => _hurried[channel] = true;

    /// <summary>Ends when no attempt is under way any more.</summary>
    public async Task StopAsync()
    {
        await Task.WhenAll(_running.Values);
        await press.StopAsync();
    }

    private async Task SendDueAsync(PlantPlan plan, ChannelPlan channel, IReadOnlyList<CircuitWorker> circuits, CancellationToken cancellation)
    {
        var hurry = _hurried.TryRemove(channel.Id, out _);
        foreach (var circuit in circuits)
            while (!cancellation.IsCancellationRequested && RetryPolicy.Next([.. book.Of(circuit.Partition).Where(press.MayGo)], channel.Id, Now, hurry) is { } item)
                if (!await SendAsync(plan, channel, circuit, item, cancellation)) break;
    }

    // False ends this round: a peer that failed once would fail for the others as well, and each has its own time to be tried again.
    private async Task<bool> SendAsync(PlantPlan plan, ChannelPlan channel, CircuitWorker circuit, OutboxItem item, CancellationToken cancellation)
    {
        var message = Message.Read(item.Written.Content);
        var person = plan.People.FirstOrDefault(person => person.Id == item.Notice.Person);
        if (message.Sheet is not null) return await SendSheetAsync(plan, channel, circuit, item, message, cancellation);
        return await TryAsync(plan, channel, circuit, item, new(message, person, channel.SpeaksToPersons ? await PictureAsync(circuit, message, Wording.Of(plan.Site), cancellation) : null), cancellation);
    }

    // Without its sheet the letter would say nothing: it goes once that is printed, and others meanwhile.
    private async Task<bool> SendSheetAsync(PlantPlan plan, ChannelPlan channel, CircuitWorker circuit, OutboxItem item, Message message, CancellationToken cancellation)
    {
        var print = await press.TakeAsync(item.Notice.Id);
        if (print is null || (print.IsFailed && RetryPolicy.FateAfterFailure(item, false, Now) == Fate.Waiting))
        {
            press.Begin(item.Notice.Id, plan, message, cancellation);
            return true;
        }

        if (print.Enclosed is null) return await DropAsync(circuit, channel, item, print.IsFailed ? "it could not be printed" : Wording.Of(plan.Site).Find("paper.mail_gone"));
        return await TryAsync(plan, channel, circuit, item, new(message, plan.People.FirstOrDefault(person => person.Id == item.Notice.Person), null, print.Enclosed), cancellation);
    }

    // The channel has done nothing wrong.
    private async Task<bool> DropAsync(CircuitWorker circuit, ChannelPlan channel, OutboxItem item, string why)
    {
        await book.NoteAsync(circuit.Partition, item.Notice.Id, new(Now, Fate.GivenUp, why));
        TellingLog.SheetDropped(log, item.Notice.Id, channel.Id, why);
        return true;
    }

    private async Task<bool> TryAsync(PlantPlan plan, ChannelPlan channel, CircuitWorker circuit, OutboxItem item, Outgoing outgoing, CancellationToken cancellation)
    {
        var delivery = await AttemptAsync(channels.Of(channel, plan.Site), outgoing, cancellation);
        // A stop in the middle of an attempt says nothing of the peer.
        if (!delivery.IsDelivered && cancellation.IsCancellationRequested) return false;
        await NoteAsync(circuit.Partition, channel, item, delivery);
        return delivery.IsDelivered;
    }

    /// <summary>One attempt, whatever the peer does.</summary>
    public async Task<Delivery> AttemptAsync(IChannel channel, Outgoing outgoing, CancellationToken cancellation)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(LongestAttempt);
        try
        {
            return await channel.SendAsync(outgoing, limit.Token);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            return Delivery.Failed(Troubles.Say(fault));
        }
    }

    private async Task NoteAsync(PartitionKey partition, ChannelPlan channel, OutboxItem item, Delivery delivery)
    {
        var (now, tries) = (Now, item.Tries + 1);
        var fate = delivery.IsDelivered ? Fate.Sent : RetryPolicy.FateAfterFailure(item, delivery.IsForGood, now);
        await book.NoteAsync(partition, item.Notice.Id, new(now, fate, delivery.Trouble));
        if (fate == Fate.Sent) TellingLog.Delivered(log, item.Notice.Id, channel.Id, tries);
        else if (fate == Fate.GivenUp) TellingLog.GivenUp(log, item.Notice.Id, channel.Id, tries, delivery.Trouble);
        else TellingLog.NotDelivered(log, item.Notice.Id, channel.Id, tries, delivery.Trouble);
    }

    // The words say it all without the picture.
    private async Task<byte[]?> PictureAsync(CircuitWorker circuit, Message message, Wording words, CancellationToken cancellation)
    {
        try
        {
            return await pictures.OfAsync(circuit, message, words, cancellation).WaitAsync(LongestAttempt, clock, cancellation);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException && !cancellation.IsCancellationRequested)
        {
            TellingLog.NoPicture(log, message.Id, fault);
            return null;
        }
    }

    private Instant Now => Instant.From(clock.GetUtcNow());
}
