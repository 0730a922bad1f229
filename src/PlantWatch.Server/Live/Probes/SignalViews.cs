using PlantWatch.Core.Probes;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>What a signal says by itself, as the page shows it.</summary>
internal static class SignalViews
{
    public static SignalView Of(SignalHealth s) => new(
        s.Standing, Reader.Words.Say(s.Reasons), s.Response.OrNull(), s.Wander.Hours.Windows > 0 ? Math.Sqrt(Math.Max(0, s.Wander.Hours.Usual)) : null, s.Spikes, s.SameSince.OrNull(),
        s.LeaptAt.OrNull(), s.LeaptAt.IsSet ? s.LeaptBy : null, s.NoFlowAt.OrNull(), s.LagSeconds);
}
