namespace PlantWatch.Core.Plans.Telling;

/// <summary>By which way people outside the browser are told. The default is a topic of the broker.</summary>
public enum ChannelKind
{
    /// <summary>A retained state on a topic of its own; it reaches whoever listens.</summary>
    Mqtt = 0,
    /// <summary>A request to another program's address.</summary>
    Webhook,
    /// <summary>A letter to a person.</summary>
    Email,
}

/// <summary>How a letter is kept from other eyes on its way to the mail server. The default begins in the open and turns to TLS before anything is said.</summary>
public enum MailSecurity
{
    /// <summary>STARTTLS, and nothing at all where the server has none.</summary>
    Starttls = 0,
    /// <summary>TLS from the first byte.</summary>
    Tls,
    /// <summary>In the open: for a mail server on the same machine.</summary>
    Plain,
}

/// <summary>Where letters are handed in. Its password is no part of the plan.</summary>
/// <param name="Host">The mail server.</param>
/// <param name="Port">Its port.</param>
/// <param name="Security">How the way there is guarded.</param>
/// <param name="Sender">The address that letters come from.</param>
/// <param name="User">Name to sign in with; null when the server asks for none.</param>
public sealed record MailPlan(string Host, int Port, MailSecurity Security, string Sender, string? User);

/// <summary>One way out.</summary>
/// <param name="Id">Key in the plant file.</param>
/// <param name="Kind">Which way.</param>
/// <param name="From">The lowest priority it is told; a note is never told, whatever stands here.</param>
public sealed record ChannelPlan(string Id, ChannelKind Kind, Priority From)
{
    /// <summary>What people call it.</summary>
    public string Name { get; init; } = "";

    /// <summary>Of a topic: the topic above what is published; null for the other kinds.</summary>
    public string? Topic { get; init; }

    /// <summary>Of a webhook: the address; null for the other kinds, and where it is kept apart.</summary>
    public Uri? Address { get; init; }

    /// <summary>Of a webhook: the address carries a token, is as secret as the key, and stands with it.</summary>
    public bool AddressIsApart { get; init; }

    /// <summary>Of e-mail: the mail server; null for the other kinds.</summary>
    public MailPlan? Mail { get; init; }

    /// <summary>It speaks to persons, each by name, and so follows the roster.</summary>
    public bool SpeaksToPersons => Kind == ChannelKind.Email;

    /// <summary>It is told alarms of a priority.</summary>
    public bool Takes(Priority priority) => priority > Priority.Note && priority >= From;
}
