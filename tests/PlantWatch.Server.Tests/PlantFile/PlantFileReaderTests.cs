using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Tests.PlantFile;

public sealed class PlantFileReaderTests
{
    [Fact]
    public void The_demo_plant_is_read_without_a_complaint()
    {
        var result = PlantFileReader.Read(File.ReadAllText(Folders.DemoPlant));

        Assert.Empty(result.Errors);
        var plan = Assert.IsType<PlantPlan>(result.Plan);
        Assert.Equal("Europe/London", plan.Site.TimeZone);
        Assert.NotEmpty(plan.Circuits);
    }

    [Fact]
    public void Every_key_reaches_the_plan_in_its_own_place()
    {
        var plan = Read(EveryKey);

        Assert.Equal(new SitePlan("Hall", "Europe/London", UnitSystem.Imperial), plan.Site);
        Assert.Equal(
            new ProductPlan("hypo", "Hypochlorite", ProductKind.SodiumHypochlorite, 12.5)
            {
                Means = StrengthMeaning.Trade,
                StrengthOn = new(2026, 2, 10),
                Assay = 11.2,
                AssayedOn = new(2026, 3, 1),
                Density = 1.19,
                StoredAt = 18,
                PricePerLitre = 0.95,
                Form = ProductForm.Liquid,
                AddedTo = DosingPlace.ReturnLine,
                AddedBy = DosingWay.Pump,
                DeliveryDays = 5,
                Store = "Bund A",
            }, plan.Products[0]);
        Assert.Equal(new ProductPlan("bicarb", "Bicarbonate", ProductKind.SodiumBicarbonate, null) { PricePerKilogram = 1.1 }, plan.Products[1]);
        var circuit = Assert.Single(plan.Circuits);
        Assert.Equal(plan.Products.AsEnumerable(), circuit.Products.AsEnumerable());
        Assert.Equal(("main", "Main circuit", "old", "Europe/London"), (circuit.Id, circuit.Name, circuit.Was, circuit.TimeZone));
        Assert.Equal((30.0, 3.5), (circuit.BalanceTankCubicMetres, circuit.TurnoverHours));
        Assert.Equal(new VolumeConfirmation("M. Reed", new(2026, 3, 2)), circuit.BalanceTankConfirmed);
        Assert.Equal(new FilterPlan("f1", "Filter 1", 3.1), Assert.Single(circuit.Filters));
        var pool = Assert.Single(circuit.Pools);
        Assert.Equal((PoolKind.Therapy, Setting.Outdoor, Disinfectant.StabilisedChlorine, 55.5), (pool.Kind, pool.Setting, pool.Disinfectant, pool.VolumeCubicMetres));
        Assert.Equal(new VolumeConfirmation("A. Moss", new(2026, 3, 3)), pool.VolumeConfirmed);
        Assert.Equal([SecondaryTreatment.Uv, SecondaryTreatment.Ozone], pool.Secondary.AsEnumerable());
        Assert.Equal(new LimitPlan(Measurand.Orp, 680, 820, "the plant's own", "Ag/AgCl 3 M"), Assert.Single(pool.Limits));
    }

    [Fact]
    public void Every_key_of_probes_and_pumps_reaches_the_plan()
    {
        var circuit = Read(EveryKey).Circuits[0];

        var orp = circuit.Probes[0];
        Assert.Equal(("orp", "ORP", "rx", "pool", "main-flow"), (orp.Id, orp.Name, orp.Was, orp.PoolId, orp.FlowSwitchId));
        Assert.Equal((Measurand.Orp, SignalOrigin.PanelScaled, PayloadFormat.SenmlJson), (orp.Measurand, orp.Origin, orp.Format));
        Assert.Equal(("hall/probes", "urn:dev:ops:hall:orp", "V", "Ag/AgCl 3 M"), (orp.Topic, orp.RecordName, orp.Unit, orp.ReferenceElectrode));
        Assert.Equal((new ValueRange(-100, 1000), TimeSpan.FromSeconds(30), TimeSpan.FromMinutes(2)), (orp.Range, orp.Every, orp.SampleDelay));
        Assert.Equal((TimeSpan.FromSeconds(20), TimeSpan.FromMinutes(4)), (orp.FilterLag, orp.DosingCycle));
        var pump = Assert.Single(circuit.Pumps);
        Assert.Equal(("pump", "Pump", "was-pump", "pool", "hypo"), (pump.Id, pump.Name, pump.Was, pump.PoolId, pump.ProductId));
        Assert.Equal(("hall/pump/state", "hall/pump/tank", 200.0, 20.0), (pump.StateTopic, pump.TankTopic, pump.TankLitres, pump.TankLowPercent));
        Assert.Equal((7.5, "hall/pump/strokes", StrokeCount.LastMinute, true, 2.5, 60.0), (pump.LitresPerHour, pump.StrokesTopic, pump.StrokesAre, pump.PulsesTold, pump.MillilitresPerStroke, pump.DailyLimitLitres));
        // What it costs and what people call it change nothing that it does.
        Assert.Equal(Read(EveryKey).Products[0] with { Name = "hypo", PricePerKilogram = null, PricePerLitre = null, DeliveryDays = null, Store = null }, pump.Product);
        Assert.Equal(4, pump.TankFootPercent);
    }

    [Fact]
    public void Times_of_day_are_put_in_order_without_a_word()
    {
        var duty = Assert.Single(Read(EveryKey).Circuits[0].Pools[0].Duties);

        Assert.Equal([Measurand.FreeChlorine, Measurand.Ph], duty.What.AsEnumerable());
        Assert.Equal([new TimeOnly(7, 0), new TimeOnly(20, 30)], duty.At.AsEnumerable());
    }

    [Fact]
    public void What_is_left_out_has_its_documented_value()
    {
        var flow = Read(EveryKey).Circuits[0].Probes[1];

        Assert.Equal((TimeSpan.FromSeconds(10), TimeSpan.Zero, SignalOrigin.Raw), (flow.Every, flow.SampleDelay, flow.Origin));
        Assert.Equal(UnitSystem.Metric, Read(Smallest).Site.Units);
    }

    [Fact]
    public void The_order_of_keys_does_not_matter()
    {
        const string upsideDown = """
            circuits:
              - pools: [{ volume_m3: 5, disinfectant: bromine, setting: indoor, kind: spa, name: Spa, id: spa }]
                name: Spa circuit
                id: spa-circuit
            site: { time_zone: UTC, name: Hall }
            """;

        Assert.Equal("spa", Read(upsideDown).Circuits[0].Pools[0].Id);
    }

    [Fact]
    public void A_file_above_one_mebibyte_is_refused_before_it_is_parsed()
    {
        var result = PlantFileReader.Read(new string('#', PlantFileReader.LargestBytes + 1));

        Assert.Equal("line 1: the file is larger than 1 MiB; expected a description of one plant", Assert.Single(result.Errors).ToString());
    }

    [Fact]
    public void Fifty_complaints_are_enough_and_the_last_counts_the_rest()
    {
        var products = string.Join("\n", Enumerable.Range(0, 80).Select(i => $"  - {{ id: p{i}, name: P, kind: nonsense }}"));

        var errors = PlantFileReader.Read($"products:\n{products}\n{Smallest}").Errors;

        Assert.Equal(50, errors.Count);
        Assert.Equal("line 51: and 31 more from here on; put these right first", errors[^1].ToString());
    }

    private const string Smallest = """
        site: { name: Hall, time_zone: UTC }
        circuits:
          - { id: c, name: C, pools: [{ id: p, name: P, kind: spa, setting: indoor, disinfectant: bromine, volume_m3: 5 }] }
        """;

    private const string EveryKey = """
        site:
          name: Hall
          time_zone: Europe/London
          units: imperial
        products:
          - id: hypo
            name: Hypochlorite
            kind: sodium_hypochlorite
            strength_percent: 12.5
            strength_means: trade
            strength_on: "2026-02-10"
            assay_percent: 11.2
            assayed_on: "2026-03-01"
            density_kg_per_l: 1.19
            stored_at_c: 18
            price_per_l: 0.95
            form: liquid
            added_to: return_line
            added_by: pump
            delivery_days: 5
            store: Bund A
          - { id: bicarb, name: Bicarbonate, kind: sodium_bicarbonate, price_per_kg: 1.1 }
        circuits:
          - id: main
            name: Main circuit
            was: old
            balance_tank_m3: 30
            balance_tank_confirmed: { by: M. Reed, on: "2026-03-02" }
            turnover_hours: 3.5
            filters:
              - { id: f1, name: Filter 1, area_m2: 3.1 }
            pools:
              - id: pool
                name: Pool
                kind: therapy
                setting: outdoor
                disinfectant: stabilised_chlorine
                secondary: [uv, ozone]
                volume_m3: 55.5
                volume_confirmed: { by: A. Moss, on: "2026-03-03" }
                limits:
                  - { measurand: orp, low: 680, high: 820, reference_electrode: Ag/AgCl 3 M, source: the plant's own }
                checks:
                  - { what: [free_chlorine, ph], at: ["20:30", "07:00"] }
            probes:
              - id: orp
                name: ORP
                was: rx
                pool: pool
                measurand: orp
                origin: panel_scaled
                topic: hall/probes
                format: senml_json
                record: "urn:dev:ops:hall:orp"
                unit: V
                range: [-100, 1000]
                every_seconds: 30
                sample_delay_seconds: 120
                filter_lag_seconds: 20
                dosing_cycle_seconds: 240
                reference_electrode: Ag/AgCl 3 M
                flow_switch: main-flow
              - { id: main-flow, name: Flow, measurand: sample_flow, topic: hall/flow, format: number, range: [0, 1] }
            pumps:
              - id: pump
                name: Pump
                was: was-pump
                pool: pool
                product: hypo
                state_topic: hall/pump/state
                tank_topic: hall/pump/tank
                tank_litres: 200
                tank_low_percent: 20
                litres_per_hour: 7.5
                strokes_topic: hall/pump/strokes
                strokes_are: last_minute
                pulses_told: true
                millilitres_per_stroke: 2.5
                daily_limit_litres: 60
                tank_foot_percent: 4
        """;

    private static PlantPlan Read(string yaml)
    {
        var result = PlantFileReader.Read(yaml);
        Assert.Empty(result.Errors);
        return Assert.IsType<PlantPlan>(result.Plan);
    }
}
