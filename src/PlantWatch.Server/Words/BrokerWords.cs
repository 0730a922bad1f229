using PlantWatch.Server.Ingest;

namespace PlantWatch.Server.Words;

/// <summary>The MQTT side in a sentence.</summary>
internal static class BrokerWords
{
    public static string Say(BrokerState state, Wording words)
    {
        var sentence = words.Find($"broker.{Wording.Key(state.Word)}");
        return state.Detail.Length > 0 ? $"{sentence} ({state.Detail})" : sentence;
    }
}
