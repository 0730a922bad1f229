using System.Globalization;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Ingest.Links;

namespace PlantWatch.Server.Words;

/// <summary>The MQTT side in sentences.</summary>
internal static class BrokerWords
{
    /// <summary>How it stands.</summary>
    public static string Say(BrokerState state, Wording words)
    {
        if (state.Trouble is { } trouble) return Of(trouble, words);
        var sentence = words.Find($"broker.{Wording.Key(state.Word)}");
        return state.Detail.Length > 0 ? $"{sentence} ({state.Detail})" : sentence;
    }

    /// <summary>What is wrong.</summary>
    public static string Of(BrokerTrouble trouble, Wording words) => Fill("failure", trouble, words);

    /// <summary>What to do about it.</summary>
    public static string Todo(BrokerTrouble trouble, Wording words) => Fill("todo", trouble, words);

    /// <summary>A moment in a detail, where the languages do not reach.</summary>
    public static string Moment(Instant at) => at.ToDateTimeOffset().ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);

    private static string Fill(string part, BrokerTrouble trouble, Wording words) =>
        words.Text(Reason.Of($"broker.{part}.{Wording.Key(trouble.Failure)}", trouble.Address, trouble.Detail));
}
