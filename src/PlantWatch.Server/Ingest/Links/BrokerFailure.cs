namespace PlantWatch.Server.Ingest.Links;

/// <summary>Everything that can be wrong with the MQTT side, each with a sentence and with what to do: <c>broker.failure.*</c> and <c>broker.todo.*</c>. The default is <see cref="None"/>.</summary>
public enum BrokerFailure
{
    /// <summary>Nothing is wrong.</summary>
    None = 0,
    /// <summary>The broker's name leads to no address.</summary>
    NameNotFound,
    /// <summary>The machine answers that nobody listens at the port.</summary>
    NothingListens,
    /// <summary>No answer in time, or no way to the machine.</summary>
    NoAnswer,
    /// <summary>The other side closed the connection before it answered the CONNECT, without TLS.</summary>
    ClosedUnanswered,
    /// <summary>No TLS is spoken at the port.</summary>
    NoTlsThere,
    /// <summary>A file of ours cannot be used: authority, certificate or key.</summary>
    OwnFilesUnusable,
    /// <summary>No authority that we trust signed the broker's certificate.</summary>
    CertificateNotTrusted,
    /// <summary>The certificate is for another name than the one we connect to.</summary>
    CertificateForOtherName,
    /// <summary>The certificate ran out.</summary>
    CertificateExpired,
    /// <summary>The certificate begins later than now, by our clock.</summary>
    CertificateNotYetValid,
    /// <summary>The broker asks for a certificate of ours and none is set.</summary>
    ClientCertificateWanted,
    /// <summary>The broker asked for our certificate and did not take it.</summary>
    ClientCertificateRefused,
    /// <summary>TLS could not be agreed on for another reason.</summary>
    TlsFailed,
    /// <summary>User name, password or rights were refused (CONNACK 0x86, 0x87).</summary>
    AccountRefused,
    /// <summary>The broker refused the connection with another code.</summary>
    ConnectionRefused,
    /// <summary>The broker refused topic filters (SUBACK 0x80 and above).</summary>
    SubscriptionRefused,
    /// <summary>A connection that stood was lost.</summary>
    ConnectionLost,
    /// <summary>What was received could not be written to the record.</summary>
    NotCommitted,
    /// <summary>The broker did not know our session any more (CONNACK without Session Present).</summary>
    SessionLost,
    /// <summary>Somebody else connected with our client id (DISCONNECT 0x8E).</summary>
    TakenOver,
    /// <summary>The connection is lost again and again soon after it stood: most often a takeover by a broker that does not say so.</summary>
    ConnectionFlapping,
    /// <summary>A device was turned away at the embedded broker: name, password, client id, or none of them.</summary>
    DeviceTurnedAway,
    /// <summary>A device published where it has no right to.</summary>
    DeviceOutsideRights,
    /// <summary>Devices take a client id from each other again and again.</summary>
    DevicesFlapping,
}
