namespace PlantWatch.Server.Telling;

/// <summary>How an attempt ended. The default was not delivered and says nothing of why.</summary>
/// <param name="IsDelivered">The other side has taken it.</param>
/// <param name="Trouble">Why not, in words.</param>
/// <param name="IsForGood">Trying again cannot help: there is nobody it could go to.</param>
internal readonly record struct Delivery(bool IsDelivered, string Trouble, bool IsForGood)
{
    /// <summary>The other side has taken it.</summary>
    public static Delivery Done { get; } = new(true, "", false);

    /// <summary>Not this time.</summary>
    public static Delivery Failed(string trouble) => new(false, trouble, false);

    /// <summary>Never.</summary>
    public static Delivery Impossible(string trouble) => new(false, trouble, true);
}

/// <summary>What is sent, to whom.</summary>
/// <param name="Message">The words.</param>
/// <param name="Person">Who; null where a channel speaks to nobody by name.</param>
/// <param name="Picture">The strip of the quantity as PNG; null where there is none.</param>
/// <param name="Enclosed">A file; null where there is none.</param>
internal sealed record Outgoing(Message Message, Core.Plans.PersonPlan? Person, byte[]? Picture, Enclosed? Enclosed = null);

/// <summary>A way out. It may throw whatever its peer makes it throw: who sends catches, names and counts.</summary>
internal interface IChannel
{
    /// <summary>Sends once and waits for the other side's answer.</summary>
    Task<Delivery> SendAsync(Outgoing outgoing, CancellationToken cancellation);
}
