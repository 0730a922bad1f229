using System.Net;
using MQTTnet.Formatter;
using MQTTnet.Protocol;
using MQTTnet.Server;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Ingest.Links;

namespace PlantWatch.Server.Ingest.Devices;

/// <summary>Who comes in at the embedded broker and what he may do there. Nobody without a name from another machine; nameless ones on this machine alone, where they may do all.</summary>
internal sealed class DeviceGate(DeviceAccounts? accounts, TimeProvider time, ILogger logger)
{
    private const int LongestShown = 80;

    private readonly Tally _turnedAway = new(PastTroubles.Told), _outside = new(PastTroubles.Told);

    /// <summary>Who is connected.</summary>
    public Takeovers Takeovers { get; } = new();

    private Instant Now => Instant.From(time.GetUtcNow());

    /// <summary>The answer to a CONNECT.</summary>
    public MqttConnectReasonCode Admit(ValidatingConnectionEventArgs e)
    {
        var answer = Judge(e.UserName ?? "", e.RawPassword ?? [], e.ClientId ?? "", e.IsSecureConnection);
        if (answer == MqttConnectReasonCode.Success) return answer;
        var from = e.RemoteEndPoint is IPEndPoint end ? (end.Address.IsIPv4MappedToIPv6 ? end.Address.MapToIPv4() : end.Address).ToString() : "?";
        // A name that is known; what a stranger types in its place may be a password.
        var who = accounts?.Find(e.UserName ?? "")?.Name ?? (string.IsNullOrEmpty(e.ClientId) || DeviceAdapter.IsNameless(e.ClientId) ? "?" : Plain(e.ClientId));
        if (_turnedAway.Add($"{who} ({from}): {answer}", Now)) IngestLog.DeviceTurnedAway(logger, from, who, answer.ToString());
        return answer;
    }

    /// <summary>May a client publish at a topic, or subscribe to a filter?</summary>
    /// <param name="user">As the gate let it in.</param>
    /// <param name="topicOrFilter">Where.</param>
    public bool May(string? user, string topicOrFilter) => accounts is null || string.IsNullOrEmpty(user) || accounts.Find(user) is { } account && account.Covers(topicOrFilter);

    /// <summary>Can the client be told why? With MQTT 5 it can.</summary>
    public bool Speaks5(string clientId) => Takeovers.Find(clientId)?.Version == MqttProtocolVersion.V500;

    /// <summary>A publish was refused because the device has no right to it.</summary>
    public void Outside(string clientId, string user, string topic)
    {
        if (_outside.Add($"{user}: {Plain(topic)}", Now)) IngestLog.PublishOutside(logger, clientId, user, topic);
    }

    /// <summary>A client is in.</summary>
    public void Enter(ClientConnectedEventArgs e)
    {
        IngestLog.DeviceConnected(logger, e.ClientId);
        if (Takeovers.Enter(e.ClientId, new(e.RemoteEndPoint, e.ProtocolVersion), Now) is { } before) IngestLog.DeviceTookOver(logger, e.ClientId, e.RemoteEndPoint, before.From);
    }

    /// <summary>A client is out.</summary>
    public void Leave(ClientDisconnectedEventArgs e)
    {
        IngestLog.DeviceDisconnected(logger, e.ClientId, e.DisconnectType.ToString());
        if (e.DisconnectType != MqttClientDisconnectType.Takeover) Takeovers.Leave(e.ClientId);
    }

    /// <summary>What is to be told.</summary>
    public IReadOnlyList<BrokerTrouble> Troubles()
    {
        var now = Now;
        return [.. Trouble(BrokerFailure.DeviceTurnedAway, _turnedAway.At(now)), .. Trouble(BrokerFailure.DeviceOutsideRights, _outside.At(now)),
            .. Trouble(BrokerFailure.DevicesFlapping, [.. Takeovers.Flapping(now).Select(f => ($"{Plain(f.ClientId)}: {f.Who}", 0L, f.At))])];
    }

    private MqttConnectReasonCode Judge(string user, byte[] password, string clientId, bool secure)
    {
        if (clientId.Length > EmbeddedBroker.LongestClientId) return MqttConnectReasonCode.ClientIdentifierNotValid;
        if (user.Length == 0) return Nameless(clientId, secure);
        // Without accounts a name means nothing, and only this machine gets this far.
        if (accounts is null) return secure ? MqttConnectReasonCode.NotAuthorized : MqttConnectReasonCode.Success;
        var account = accounts.Find(user);
        if (!(account?.Password ?? DevicePassword.Nobodys).Is(password) || account is null) return MqttConnectReasonCode.BadUserNameOrPassword;
        return account.MayBeCalled(clientId) ? MqttConnectReasonCode.Success : MqttConnectReasonCode.ClientIdentifierNotValid;
    }

    private MqttConnectReasonCode Nameless(string clientId, bool secure)
    {
        if (secure) return MqttConnectReasonCode.NotAuthorized;
        return accounts is not null && accounts.Own(clientId) ? MqttConnectReasonCode.ClientIdentifierNotValid : MqttConnectReasonCode.Success;
    }

    private static IEnumerable<BrokerTrouble> Trouble(BrokerFailure failure, IReadOnlyList<(string What, long Count, Instant Last)> all) =>
        all.Count == 0 ? [] : [new(failure, all.Max(a => a.Last), "", "") { Topics = [.. all.Select(a => a.Count > 0 ? $"{a.What} \u00d7 {a.Count}" : a.What)] }];

    private static string Plain(string text) => string.Concat(text.Take(LongestShown).Select(c => char.IsControl(c) ? '\u00b7' : c));
}
