using System.Globalization;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Browser.Tests.Plant;

/// <summary>A hall with two pools, their probes and pumps. Everything about it is invented.</summary>
internal static class TestPlant
{
    public const string Yaml = """
        site:
          name: Bramble Street Baths
          time_zone: Europe/London
        products:
          - id: acid
            name: Hydrochloric acid
            kind: hydrochloric_acid
            strength_percent: 10
          - id: hypo
            name: Sodium hypochlorite
            kind: sodium_hypochlorite
            strength_percent: 12
        circuits:
          - id: hall
            name: Hall
            balance_tank_m3: 25
            turnover_hours: 3.5
            pools:
              - id: main
                name: Main pool
                kind: swimming
                setting: indoor
                disinfectant: chlorine
                secondary: [uv]
                volume_m3: 400
                limits:
                  - { measurand: ph, low: 7.2, high: 7.6, source: test }
                  - { measurand: temperature, low: 26, high: 30, source: test }
                  - { measurand: free_chlorine, low: 0.8, high: 3.0, source: test }
                  - { measurand: combined_chlorine, high: 1.0, source: test }
              - id: teaching
                name: Teaching pool
                kind: teaching
                setting: indoor
                disinfectant: chlorine
                volume_m3: 60
                limits:
                  - { measurand: ph, low: 7.2, high: 7.6, source: test }
                  - { measurand: orp, low: 670, high: 820, reference_electrode: Ag/AgCl 3 M, source: test }
            probes:
              - { id: ph, name: pH, pool: main, measurand: ph, origin: raw, topic: hall/ph, format: number, range: [0, 14], every_seconds: 5 }
              - { id: water, name: Temperature, pool: main, measurand: temperature, origin: raw, topic: hall/pack, format: senml_json, record: "urn:dev:ops:hall:water", range: [0, 60], every_seconds: 60 }
              - { id: panel-ph, name: pH on the panel, pool: main, measurand: ph, origin: panel_scaled, topic: hall/panel, format: number, range: [0, 14], every_seconds: 60 }
              - { id: teaching-ph, name: pH, pool: teaching, measurand: ph, origin: raw, topic: hall/pack, format: senml_json, record: "urn:dev:ops:hall:teaching-ph", range: [0, 14], every_seconds: 60 }
              - { id: teaching-orp, name: ORP, pool: teaching, measurand: orp, origin: raw, topic: hall/pack, format: senml_json, record: "urn:dev:ops:hall:teaching-orp", range: [0, 1000], every_seconds: 60, reference_electrode: Ag/AgCl 3 M }
            pumps:
              - { id: acid-pump, name: Acid pump, pool: main, product: acid, state_topic: hall/acid/state, tank_topic: hall/acid/tank, tank_litres: 100 }
              - { id: hypo-pump, name: Hypochlorite pump, pool: main, product: hypo, state_topic: hall/hypo/state, tank_topic: hall/hypo/tank, tank_litres: 200 }
        """;

    public static Task<WholeServer> StartAsync() => WholeServer.StartAsync(plant: Yaml);

    /// <summary>The checks of the main pool that are in the record.</summary>
    public static Task<List<CheckAnswer>> ChecksAsync(this WholeServer server) => server.GetAsync<List<CheckAnswer>>("/api/v1/checks?pool=main");

    /// <summary>One gateway's pack: water, pH and ORP of the hall over the last minutes, oldest first, wandering as water does.</summary>
    public static Task PublishPastAsync(this WholeServer server, int minutes)
    {
        var now = WholeServer.Now.UnixMilliseconds / 1000;
        var records = Enumerable.Range(0, minutes + 1).Select(i => minutes - i).SelectMany(ago =>
        {
            var (t, phase) = (now - (ago * 60), ago / 40.0);
            return new[] { Record("water", t, 28.2 + (0.3 * Math.Sin(phase))), Record("teaching-ph", t, 7.41 + (0.06 * Math.Sin(phase * 1.7))), Record("teaching-orp", t, 742 + (18 * Math.Cos(phase))) };
        });
        return server.PublishAsync("hall/pack", $"[{string.Join(',', records)}]");
    }

    private static string Record(string name, long seconds, double value) =>
        string.Create(CultureInfo.InvariantCulture, $"{{\"n\":\"urn:dev:ops:hall:{name}\",\"t\":{seconds},\"v\":{value:0.###}}}");
}
