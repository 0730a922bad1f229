using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Dosing.Supervision;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>What the plant says by messages is supervised as its recording is.</summary>
public sealed class SupervisionFoldTests
{
    [Fact]
    public void The_fold_and_the_supervisor_alone_say_and_know_the_same_of_a_recorded_stretch()
    {
        var hall = new DosedHall(1);
        hall.Pool.AcidTank = 30;
        PoolSupervisor? alone = null;
        var said = new List<PumpVerdict>();
        var told = new List<PumpVerdict>();
        // The fold lags by the two minutes in which more of a minute may come.
        var waiting = new Queue<PlantMinute>();
        for (var minute = 0; minute < 11 * 1440; minute++)
        {
            if (minute == 10 * 1440) hall.Pool.AcidArrives = _ => 0;
            waiting.Enqueue(hall.Minute());
            // Restarts in between leave no trace.
            if (minute % 997 == 0) hall.Restart();
            alone ??= new PoolSupervisor(hall.State.Dosing[0].Supervisor!.Pool);
            if (waiting.Count > 2) told.AddRange(alone.Take(waiting.Dequeue()));
            foreach (var verdict in hall.State.Dosing[0].Standing)
                if (!said.Contains(verdict)) said.Add(verdict);
        }

        Assert.Equal((DosedProduct.Acid, PumpTrouble.LostPrime), (Assert.Single(said).Pump, said[0].Trouble));
        Assert.Equal(told.Where(v => v.Raised), said);
        while (waiting.Count > 0 && waiting.Peek().At < hall.State.Dosing[0].ClosedTo) alone!.Take(waiting.Dequeue());
        Assert.Equal(alone!.Memory(), hall.State.Dosing[0].Supervisor!.Memory());
    }

    [Fact]
    public void A_state_from_zero_in_other_batches_is_the_same_to_the_byte()
    {
        var events = new List<PlantEvent>();
        var hall = new DosedHall(3);
        hall.Heard = events.AddRange;
        for (var minute = 0; minute < 400; minute++) hall.Minute(running: minute % 2 == 0);

        var state = new DosedHall(3).State;
        for (var at = 0; at < events.Count; at += 37) state = Step.Run(state, events.GetRange(at, Math.Min(37, events.Count - at))).Next;

        Assert.Equal(PlantJson.HashOf(hall.State), PlantJson.HashOf(state));
    }

    [Fact]
    public void A_state_that_was_given_out_does_not_change_by_what_comes_after()
    {
        var hall = new DosedHall(1);
        for (var minute = 0; minute < 30; minute++) hall.Minute();
        var (state, hash) = (hall.State, PlantJson.HashOf(hall.State));

        for (var minute = 0; minute < 30; minute++) hall.Minute();

        Assert.Equal(hash, PlantJson.HashOf(state));
    }

    [Fact, Evidence("R-033")]
    public void Strokes_into_standing_water_count_whatever_the_pump_says_that_it_does()
    {
        var hall = new DosedHall(1);
        Pass(hall, TimeSpan.FromHours(1));
        hall.Pool.Circulates = false;
        Pass(hall, TimeSpan.FromMinutes(30));
        Assert.DoesNotContain(RuleBook.DosesWithoutFlow.KeyFor("acid-pump"), hall.State.Alarms.Keys);
        hall.Pool.Drive(DosedProduct.Acid, 8);
        Pass(hall, TimeSpan.FromMinutes(6));
        Assert.Equal("dosing.without_circulation", hall.State.Alarms[RuleBook.DosesWithoutFlow.KeyFor("acid-pump")].Cause.Code);
        Assert.True(hall.State.Alarms[RuleBook.DosesWithoutFlow.KeyFor("acid-pump")].Active);
    }

    [Fact, Evidence("R-039")]
    public void Hours_flat_out_that_bring_the_value_no_nearer_are_told()
    {
        var hall = new DosedHall(1);
        Pass(hall, TimeSpan.FromHours(2));
        // Before anything is learned, and all the same: what it is asked for is all it has, and pH does not come down.
        hall.Pool.Drive(DosedProduct.Acid, 30);
        hall.Pool.AcidArrives = _ => 0.2;
        Pass(hall, TimeSpan.FromHours(2.8));
        Assert.DoesNotContain(RuleBook.DoesTooLittle.KeyFor("acid-pump"), hall.State.Alarms.Keys);
        Pass(hall, TimeSpan.FromMinutes(30));
        Assert.Equal("pump.acid_saturated", hall.State.Alarms[RuleBook.DoesTooLittle.KeyFor("acid-pump")].Cause.Code);
    }

    [Fact, Evidence("R-035")]
    public void Acid_that_does_not_arrive_is_one_alarm_that_says_how_much_is_missing_and_clears_when_it_arrives_again()
    {
        var hall = Failing(p => p.AcidArrives = _ => 0, TimeSpan.FromHours(18));

        var alarm = hall.State.Alarms[RuleBook.NothingArrives.KeyFor("acid-pump")];
        Assert.True(alarm.Active);
        Assert.Equal("pump.acid_does_not_arrive", alarm.Cause.Code);
        Assert.True(alarm.Cause.Facts[2].Number > 0, "no litres are missing");
        Assert.True(alarm.Cause.Facts[3].Number < alarm.Cause.Facts[4].Number, "pH did not stay above what was expected");
        Assert.InRange(alarm.Cause.Facts[5].Number!.Value, 99, 99.9);
        Assert.Equal([RuleBook.NothingArrives.Number], hall.State.Alarms.Values.Where(a => a.Active && a.ConsequenceOf is null).Select(a => a.Rule));
        hall.Pool.AcidArrives = s => s;
        Pass(hall, TimeSpan.FromHours(24));
        Assert.DoesNotContain(hall.State.Alarms.Values, a => a.Active && a.Rule == RuleBook.NothingArrives.Number);
    }

    [Fact, Evidence("R-036")]
    public void Chlorine_that_comes_unasked_is_told_and_stays_until_somebody_has_seen_to_it()
    {
        var hall = Failing(p => p.ChlorineArrives = s => s + 8, TimeSpan.FromHours(12));

        var alarm = hall.State.Alarms[RuleBook.ComesUnasked.KeyFor("hypo-pump")];
        Assert.Equal(("pump.chlorine_comes_unasked", true, Priority.High), (alarm.Cause.Code, alarm.Active, alarm.Priority));
        Assert.True(alarm.Cause.Facts[2].Number > 0);
        // What it was learned from holds no longer: nothing speaks for it any more, and that makes nothing safe.
        hall.Load(DosedHall.Plan.WithPool("pool", p => p with { VolumeCubicMetres = 130 }));
        Pass(hall, TimeSpan.FromMinutes(5));
        Assert.True(hall.State.Dosing[0].Supervisor!.Insight(DosedProduct.Chlorine).DaysLearned < 0.1);
        alarm = hall.State.Alarms[alarm.Key];
        Assert.Equal((true, true), (alarm.Active, alarm.LatchHeld));
        // Another pump under another name has nothing standing against it; the latch stays with the one that is gone.
        hall.Load(DosedHall.Plan with { Pumps = [DosedHall.Plan.Pumps[0], DosedHall.Plan.Pumps[1] with { Id = "new-pump" }] });
        Pass(hall, TimeSpan.FromMinutes(5));
        Assert.DoesNotContain(hall.State.Dosing[0].Standing, v => v.Pump == DosedProduct.Chlorine);
        Assert.Equal((false, true), (hall.State.Alarms[alarm.Key].Active, hall.State.Alarms[alarm.Key].LatchHeld));
    }

    [Theory, Evidence("R-035")]
    [InlineData("refilled")]
    [InlineData("another rate")]
    [InlineData("another strength")]
    public void Acid_that_does_not_arrive_stands_though_the_pool_is_filled_or_the_plant_file_changed_until_the_pump_was_learned_anew(string change)
    {
        var hall = Failing(p => p.AcidArrives = _ => 0, TimeSpan.FromHours(18));
        var alarm = hall.State.Alarms[RuleBook.NothingArrives.KeyFor("acid-pump")];
        Change(hall, change);
        Pass(hall, TimeSpan.FromHours(1));
        hall.Restart();
        Pass(hall, TimeSpan.FromHours(1));
        Assert.Equal((alarm.Id, true), (hall.State.Alarms[alarm.Key].Id, hall.State.Alarms[alarm.Key].Active));
        Assert.True(hall.State.Dosing[0].Supervisor!.Insight(DosedProduct.Acid).DaysLearned < 0.2);

        hall.Pool.AcidArrives = s => s;
        // Four days of every hour, older ones counting less, each two days later.
        Pass(hall, TimeSpan.FromDays(8));
        Assert.DoesNotContain(hall.State.Alarms.Values, a => a.Active && a.Rule == RuleBook.NothingArrives.Number);
        Assert.Empty(hall.State.Dosing[0].Standing);
    }

    [Theory, Evidence("R-039")]
    [InlineData("refilled")]
    [InlineData("another strength")]
    public void Hours_flat_out_are_not_forgotten_with_the_water(string change)
    {
        var hall = new DosedHall(1);
        Pass(hall, TimeSpan.FromHours(2));
        hall.Pool.Drive(DosedProduct.Acid, 30);
        hall.Pool.AcidArrives = _ => 0.2;
        Pass(hall, TimeSpan.FromHours(3.5));
        var key = RuleBook.DoesTooLittle.KeyFor("acid-pump");
        Assert.True(hall.State.Alarms[key].Active);
        Change(hall, change);
        Pass(hall, TimeSpan.FromMinutes(30));
        Assert.True(hall.State.Alarms[key].Active);
        // The books go on, and what ends it is the pump.
        hall.Pool.Drive(DosedProduct.Acid, 3);
        Pass(hall, TimeSpan.FromMinutes(5));
        Assert.DoesNotContain(hall.State.Alarms.Values, a => a.Active && a.Key == key);
    }

    private static void Change(DosedHall hall, string change)
    {
        if (change == "refilled")
        {
            hall.Run([new PoolStateSet(hall.Now, Guid.NewGuid(), "pool", OperatingState.Drained, "Ann", "works")]);
            hall.Run([new PoolStateSet(hall.Now, Guid.NewGuid(), "pool", OperatingState.Closed, "Ann", "filled", Refilled: true)]);
        }
        else if (change == "another rate") hall.Load(DosedHall.Plan with { Pumps = [DosedHall.Plan.Pumps[0] with { MillilitresPerStroke = 0.41 }, DosedHall.Plan.Pumps[1]] });
        else hall.Load(Stronger(DosedHall.Plan));
        Assert.Null(hall.State.Dosing[0].Supervisor);
    }

    [Theory, Evidence("R-037")]
    [InlineData("refilled")]
    [InlineData("another strength")]
    public void A_pump_that_runs_on_through_a_refill_is_still_told_until_it_leaves_that_rate(string change)
    {
        var hall = Failing(p => p.Drive(DosedProduct.Chlorine, 30), TimeSpan.FromMinutes(15));
        Change(hall, change);
        Pass(hall, TimeSpan.FromMinutes(15));
        var key = RuleBook.DosesTooMuch.KeyFor("hypo-pump");
        Assert.True(hall.State.Alarms[key].Active);
        hall.Pool.Drive(DosedProduct.Chlorine, 2);
        Pass(hall, TimeSpan.FromMinutes(5));
        Assert.Equal((false, true), (hall.State.Alarms[key].Active, hall.State.Alarms[key].LatchHeld));
    }

    [Theory, Evidence("R-037")]
    [InlineData(false)]
    [InlineData(true)]
    public void A_pump_that_runs_on_is_told_within_a_quarter_of_an_hour_whether_it_counts_strokes_or_only_runs(bool running)
    {
        var hall = Failing(p => p.Drive(DosedProduct.Chlorine, 30), TimeSpan.FromMinutes(15), running);

        var alarm = hall.State.Alarms[RuleBook.DosesTooMuch.KeyFor("hypo-pump")];
        Assert.Equal(("pump.runs_on", true), (alarm.Cause.Code, alarm.Active));
    }

    [Fact, Evidence("R-037")]
    public void More_than_is_plausible_in_a_day_is_told_and_a_new_day_begins_from_nil()
    {
        var plan = DosedHall.Plan with { Pumps = [DosedHall.Plan.Pumps[0] with { DailyLimitLitres = 1 }, DosedHall.Plan.Pumps[1]] };
        var hall = new DosedHall(1, plan);
        hall.Pool.Drive(DosedProduct.Acid, 5);
        // Five strokes of 0.4 mL a minute: a litre after 500 minutes.
        Pass(hall, TimeSpan.FromMinutes(495));
        Assert.DoesNotContain(RuleBook.DosesTooMuch.KeyFor("acid-pump"), hall.State.Alarms.Keys);
        Pass(hall, TimeSpan.FromMinutes(10));
        var alarm = hall.State.Alarms[RuleBook.DosesTooMuch.KeyFor("acid-pump")];
        Assert.Equal(("pump.over_daily_limit", true), (alarm.Cause.Code, alarm.Active));
        Pass(hall, TimeSpan.FromDays(1) - TimeSpan.FromMinutes(500));
        alarm = hall.State.Alarms[alarm.Key];
        Assert.Equal((false, true), (alarm.Active, alarm.LatchHeld));
        Assert.InRange(hall.State.Pumps[0].Today.Litres, 0.005, 0.02);
    }

    [Fact, Evidence("R-038")]
    public void Products_at_each_others_pumps_are_one_critical_alarm_of_the_acid_pump()
    {
        // The acid pump draws hypochlorite: caustic comes instead of acid, and chlorine with it.
        var hall = Failing(p => p.Swapped = true, TimeSpan.FromHours(24));

        var alarm = hall.State.Alarms[RuleBook.ProductsSwapped.KeyFor("acid-pump")];
        Assert.Equal(("pump.products_swapped", Priority.Critical), (alarm.Cause.Code, alarm.Priority));
        Assert.Equal(["Acid pump", "Hypochlorite pump"], alarm.Cause.Facts.Take(2).Select(f => f.Text));
        Assert.Single(hall.Alarms.Where(a => a.Alarm.Rule == RuleBook.ProductsSwapped.Number).Select(a => a.Alarm.Key).Distinct());
    }

    [Fact, Evidence("R-039")]
    public void Half_the_strength_is_told_within_days()
    {
        var hall = Failing(p => p.ChlorineArrives = s => 0.5 * s, TimeSpan.FromDays(5));

        Assert.Contains(hall.Alarms, a => a.Alarm.Cause.Code == "pump.product_is_weak" && a.Alarm.Subject == "hypo-pump");
    }

    [Fact]
    public void Pumps_that_only_run_and_stop_are_left_in_peace_too()
    {
        var hall = new DosedHall(2, DosedHall.Running);
        Pass(hall, TimeSpan.FromDays(9), running: true);

        Assert.DoesNotContain(hall.Alarms, a => a.Alarm.Subject.EndsWith("-pump", StringComparison.Ordinal));
        Assert.True(hall.State.Dosing[0].Supervisor!.Insight(DosedProduct.Acid).IsJudged);
    }

    [Fact]
    public void Time_in_which_nobody_listened_is_no_trouble_of_a_pump()
    {
        var hall = new DosedHall(1, DosedHall.Running);
        Pass(hall, TimeSpan.FromDays(6), running: true);
        for (var minute = 0; minute < 300; minute++) hall.Deaf();
        Pass(hall, TimeSpan.FromDays(1), running: true);

        Assert.DoesNotContain(hall.Alarms, a => a.Alarm.Subject.EndsWith("-pump", StringComparison.Ordinal));
    }

    [Fact]
    public void Another_volume_another_product_or_new_water_begin_it_anew_and_another_name_does_not()
    {
        var hall = new DosedHall(1);
        Pass(hall, TimeSpan.FromHours(2));
        var memory = hall.State.Dosing[0].Supervisor!.Memory();
        hall.Load(DosedHall.Plan with { Name = "Great hall", Pumps = [DosedHall.Plan.Pumps[0] with { Id = "acid-1", Was = "acid-pump", Name = "Acid" }, DosedHall.Plan.Pumps[1]] });
        Assert.Equal(memory, hall.State.Dosing[0].Supervisor!.Memory());
        hall.Load(DosedHall.Plan with { Pumps = [DosedHall.Plan.Pumps[0] with { Was = "acid-1" }, DosedHall.Plan.Pumps[1]] });
        Assert.Equal(memory, hall.State.Dosing[0].Supervisor!.Memory());
        foreach (var next in (CircuitPlan[])[DosedHall.Plan.WithPool("pool", p => p with { VolumeCubicMetres = 120 }), Stronger(DosedHall.Plan), DosedHall.Plan.With("ph", p => p with { Origin = SignalOrigin.Raw })])
        {
            hall.Load(next);
            Assert.Null(hall.State.Dosing[0].Supervisor);
            hall.Load(DosedHall.Plan);
            Pass(hall, TimeSpan.FromHours(1));
        }

        hall.Run([new PoolStateSet(hall.Now, Guid.NewGuid(), "pool", OperatingState.Drained, "Ann", "works")]);
        hall.Run([new PoolStateSet(hall.Now, Guid.NewGuid(), "pool", OperatingState.Closed, "Ann", "filled", Refilled: true)]);
        Assert.Null(hall.State.Dosing[0].Supervisor);
    }

    [Fact]
    public void Without_rate_strength_or_pH_there_is_nothing_to_supervise()
    {
        foreach (var plan in (CircuitPlan[])
                 [
                     DosedHall.Plan with { Pumps = [DosedHall.Plan.Pumps[0] with { StrokesTopic = null, LitresPerHour = null }, DosedHall.Plan.Pumps[1]] },
                     DosedHall.Plan with { Pumps = [DosedHall.Plan.Pumps[0] with { Product = DosedHall.Plan.Pumps[0].Product! with { Strength = null } }, DosedHall.Plan.Pumps[1]] },
                     // A state that is asked for now and then: of the pulses in between nothing is known.
                     DosedHall.Running with { Pumps = [DosedHall.Running.Pumps[0] with { PulsesTold = false }, DosedHall.Running.Pumps[1]] },
                     DosedHall.Plan.Without("ph"), DosedHall.Plan.Without("acid-pump"),
                 ])
            Assert.Empty(new DosedHall(1, plan).State.Dosing);
    }

    private static CircuitPlan Stronger(CircuitPlan plan) => plan with { Pumps = [plan.Pumps[0], plan.Pumps[1] with { Product = plan.Pumps[1].Product! with { Strength = 14 } }] };

    private static DosedHall Failing(Action<DosedPool> fail, TimeSpan after, bool running = false)
    {
        var hall = new DosedHall(1, running ? DosedHall.Running : DosedHall.Plan);
        Pass(hall, TimeSpan.FromDays(10), running);
        Assert.DoesNotContain(hall.Alarms, a => a.Alarm.Subject.EndsWith("-pump", StringComparison.Ordinal));
        fail(hall.Pool);
        Pass(hall, after, running);
        return hall;
    }

    private static void Pass(DosedHall hall, TimeSpan span, bool running = false)
    {
        for (var minute = 0; minute < span.TotalMinutes; minute++) hall.Minute(running);
    }
}
