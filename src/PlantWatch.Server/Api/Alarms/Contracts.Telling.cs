using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

/// <summary>How people are told of alarms, and whether it works.</summary>
/// <param name="Channels">The ways, in the order of the plant file; empty when nobody is told.</param>
/// <param name="OnCall">Names of who is on call now, in the order of the roster.</param>
/// <param name="StandsIn">True when nobody is on call and the first of the escalation stands in.</param>
/// <param name="Next">Names of who is on call after the next change.</param>
/// <param name="NextAt">When that change is; null when none comes within eight days.</param>
/// <param name="Escalation">Names in the order in which they are told while nobody acknowledges.</param>
/// <param name="QuietFrom">Start of the quiet hours on the site's clock, HH:MM; null when there are none.</param>
/// <param name="QuietTo">Their end.</param>
public sealed record TellingView(
    IReadOnlyList<ChannelView> Channels, IReadOnlyList<string> OnCall, bool StandsIn, IReadOnlyList<string> Next, Instant? NextAt, IReadOnlyList<string> Escalation, string? QuietFrom, string? QuietTo);

/// <summary>A way by which people are told.</summary>
/// <param name="Id">Channel.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Kind">Which way.</param>
/// <param name="From">The lowest priority it is told.</param>
/// <param name="Where">Topic, host or mail server; never a secret.</param>
/// <param name="Fails">It has not delivered for longer than passes by itself.</param>
/// <param name="LastDeliveredAt">When something was last delivered; null when never.</param>
/// <param name="Waiting">Messages that wait.</param>
/// <param name="GivenUp">Messages of the last 35 days that are tried no more.</param>
/// <param name="Trouble">Why the last attempt failed, in words; null when nothing is amiss.</param>
/// <param name="FailingSince">Since when; null when nothing is amiss.</param>
public sealed record ChannelView(
    string Id, string Name, ChannelKind Kind, Priority From, string Where, bool Fails, Instant? LastDeliveredAt, int Waiting, int GivenUp, string? Trouble, Instant? FailingSince);

/// <summary>Asks for a test message.</summary>
/// <param name="By">Who asks.</param>
public sealed record TestMessage(string? By);

/// <summary>What became of a test message.</summary>
/// <param name="Delivered">The other side has taken it.</param>
/// <param name="To">Names of who was written to; empty where a channel speaks to nobody by name.</param>
/// <param name="Trouble">Why not, in words; null when it was delivered.</param>
public sealed record TestMessageAnswer(bool Delivered, IReadOnlyList<string> To, string? Trouble);
